#!/usr/bin/env python3
"""Makes a case in the real window: by mouse from a pattern, then by keys alone from a plain urine.

Usage: window_author.py PROGRAM [--pictures FOLDER] [--size 1280x800] [--text 100]

What the window showed is held against what the command line makes of the saved files: `check`, and the tests done by the book
when a steps file is played on them.
"""

import json
import pathlib
import subprocess
import sys
import tempfile

from window_case import Screen, Stuck
from window_hand import Hand, asked, failed
from window_keys import press

ROOT = pathlib.Path(__file__).resolve().parents[2]


class Author(Hand):
    def pick(self, name, option):
        self.screen.click(name)
        entry = f"{name}={option}".replace(" ", "_")
        self.screen.until(lambda: any(p.lstrip("-").startswith(name + "=") for p in self.screen.read_map()[0]),
                          "the list of " + name)
        at = [place for key, place in self.screen.read_map()[0].items() if key.startswith(name + "=")][0]
        self.screen.click(entry, over=at)

    def saved(self, file):
        self.screen.until(lambda: self.screen.fact("unsaved") == "0", f"{file} to be saved")
        if not file.exists():
            raise Stuck(f"{file} is not there; the window says: {self.screen.fact('message')}")


def call(program, *words):
    done = subprocess.run([program, *map(str, words)], capture_output=True, text=True, check=False)
    return done.returncode, done.stdout, done.stderr


def check(program, file):
    code, out, err = call(program, "check", file)
    if code != 0 or ": good: " not in out:
        raise Stuck(f"check says of {file}: {out}{err}")


def played(program, file, folder):
    """What the command line makes of a sitting in which nothing is done."""
    steps = folder / "nothing.jsonl"
    steps.write_text('{"do": "finish"}\n')
    code, out, err = call(program, "play", file, steps, "--json")
    if code != 0:
        raise Stuck(f"play says: {out}{err}")
    return json.loads(out)


def by_the_book(report):
    """The word of every asked test as the command line finds it by the book."""
    return {tube["test"]: tube["by_the_book"] for tube in report["tubes"]}


def counter_expects(report):
    """The verdict as the command line marks it, in the window's words."""
    said = [mark["expected"] for mark in report["marks"] if mark["item"] == "reception"]
    words = {"accepted without remark": "accept", "accepted with a qualification": "qualify", "refused": "refuse"}
    return words.get(said[0]) if said else None


def is_worth(report):
    return sum(mark["possible"] for mark in report["marks"] if mark["ledger"] != "safety")


def compare(program, file, folder, told):
    """Holds the counter's answer and the sum of the marks as the window told them against the command line."""
    check(program, file)
    report = played(program, file, folder)
    found = {"answer": counter_expects(report), "worth": str(is_worth(report))}
    if found != told:
        raise Stuck(f"the window said {told} of {file.name}, the command line {found}")
    return report


def begin(hand, button, over=None):
    hand.screen.click("author")
    hand.fact_is("screen", "author.begin")
    if over:
        hand.screen.click(over)
        hand.screen.until(lambda: hand.screen.place(button) or hand.screen.place("-" + button), "the list")
    hand.screen.click(button)
    hand.fact_is("screen", "author")
    hand.fact_is("bench", "done")


def make_by_mouse(hand, folder):
    """A pattern, more protein, a wish, a file."""
    begin(hand, "author.pattern.frothy_ankles", "author.patterns")
    hand.picture("from_a_pattern")
    tests = [name for name in hand.screen.read_map()[1] if name.startswith("test.")]
    if "test.heat" not in tests:
        raise Stuck(f"the pattern asks for {tests}")
    before = hand.screen.fact("test.heat")
    hand.screen.type_into("row.specimen.dissolved.albumin", "20")
    hand.screen.until(lambda: hand.screen.fact("test.heat") not in (before, before + " (old)"), "another word for heat")
    hand.fact_is("bench", "done")
    if hand.screen.fact("test.heat") != "trace":
        raise Stuck(f"20 mg/dL of albumin shows {hand.screen.fact('test.heat')}")
    hand.picture("less_protein")
    hand.screen.type_into("row.specimen.ph", "6,5")
    hand.fact_is("problems", "1")
    hand.picture("problem")
    hand.screen.click("author.undo")
    hand.fact_is("problems", "0")
    if not hand.screen.place("ask.benedict") and "test.benedict" not in tests:
        hand.screen.click("page.asked")
        hand.screen.click("ask.benedict")
        hand.screen.until(lambda: hand.screen.fact("test.benedict"), "Benedict on the bench")
    hand.picture("asked")
    hand.screen.click("page.wish")
    hand.pick("wish.heat", "2+")
    hand.pick("wish.benedict", "3+")
    hand.screen.type_into("wish.sg", "1.018")
    hand.pick("wish.amount", "creatinine")
    hand.screen.type_into("wish.amount.dissolved.creatinine", "9 mmol/L")
    hand.picture("wished")
    hand.screen.click("wish.go")
    hand.fact_is("proposal", "1")
    hand.picture("proposal")
    hand.screen.click("wish.take")
    hand.fact_is("bench", "done")
    hand.fact_is("test.heat", "2+")
    hand.fact_is("test.benedict", "3+")
    gravity = float(hand.screen.fact("figure.specific_gravity,_true_float_at_20_°C"))
    if abs(gravity - 1.018) > 0.0002:
        raise Stuck(f"the gravity is {gravity}")
    hand.picture("taken")
    hand.screen.click("page.counter")
    hand.picture("counter")
    hand.fact_is("answer", "accept")
    hand.pick("row.collection.label", "lid")
    hand.screen.until(lambda: hand.screen.fact("answer") in ("qualify", "refuse"), "another answer")
    hand.screen.click("request.blood")
    hand.picture("label_on_the_lid")
    hand.screen.click("page.marks")
    hand.screen.type_into("row.weights.each_grade", "30")
    hand.fact_is("bench", "done")
    hand.picture("marks")
    told = {name: hand.screen.fact(name) for name in ("answer", "worth")}
    for page in ("way", "request", "bench", "questions", "file"):
        hand.screen.click("page." + page)
        hand.picture("page_" + page)
    hand.screen.type_into("author.name", "sweet_and_frothy")
    hand.screen.click("author.save")
    file = folder / "sittings" / "cases" / "sweet_and_frothy.toml"
    hand.saved(file)
    hand.screen.click("author.leave")
    hand.fact_is("screen", "author.begin")
    hand.picture("begin")
    hand.screen.click("author.away")
    hand.fact_is("screen", "start")
    if 'creatinine = "9 mmol/L"' not in file.read_text():
        raise Stuck("the amount that was wished does not stand in the file")
    return file, told


def make_by_keys(hand, folder):
    """A plain urine, a substance more, saved; then opened again, changed, and left without saving."""
    screen = hand.screen
    screen.point_at(1279, 799)
    press(screen, "author")
    hand.fact_is("screen", "author.begin")
    press(screen, "author.plain")
    hand.fact_is("screen", "author")
    hand.fact_is("bench", "done")
    hand.type_into("row.specimen.ph", "5.5")
    hand.fact_is("bench", "done")
    screen.key("F6")
    press(screen, "card.black")
    screen.key("F6")
    screen.key("a")
    hand.fact_is("page", "Asked")
    press(screen, "ask.ssa")
    screen.until(lambda: screen.fact("test.ssa"), "the acid test on the bench")
    hand.fact_is("bench", "done")
    screen.key("s")
    hand.fact_is("page", "Specimen")
    screen.key("ctrl+z")
    screen.until(lambda: not screen.fact("test.ssa"), "the way back")
    screen.key("ctrl+y")
    screen.until(lambda: screen.fact("test.ssa"), "the way on")
    screen.key("c")
    hand.fact_is("page", "Counter")
    press(screen, "add.counter")
    hand.fact_is("answer", "accept")
    hand.type_into("row.collection.label_name", "Ann Other")
    screen.until(lambda: screen.fact("answer") != "accept", "another answer")
    screen.key("o")
    hand.type_into("row.bench.bottle_age.benedict", "400")
    screen.key("k")
    hand.fact_is("page", "Marks")
    hand.type_into("row.weights.procedure", "25")
    hand.fact_is("bench", "done")
    if hand.screen.fact("float") != hand.screen.fact("figure.the_case's_float,_at_22.0_°C"):
        raise Stuck(f"the float shows {hand.screen.fact('float')}")
    hand.picture("by_keys")
    told = {name: screen.fact(name) for name in ("answer", "worth")}
    screen.key("t")
    hand.type_into("author.name", "by_keys")
    screen.key("ctrl+s")
    file = folder / "sittings" / "cases" / "by_keys.toml"
    hand.saved(file)
    saved = file.read_text()
    screen.key("s")  # From the strip back into the form.
    press(screen, "more.specimen.ph")
    hand.fact_is("unsaved", "1")
    screen.key("t")
    press(screen, "author.leave")
    screen.until(lambda: "not saved" in screen.fact("message"), "a question before leaving")
    hand.picture("leaving")
    press(screen, "author.leave.yes")
    hand.fact_is("screen", "author.begin")
    press(screen, "author.away")
    hand.fact_is("screen", "start")
    if file.read_text() != saved or "ph = 5.5" not in saved:
        raise Stuck("the file is not as it was saved")
    if 'benedict = "400 d"' not in saved:
        raise Stuck("the bottle's age does not stand in the file")
    return file, told


def sit_it(hand):
    """From the author's screen to the bench, and from the learner's screen to what was begun there."""
    begin(hand, "author.own.sweet_and_frothy")
    hand.screen.click("author.try")
    hand.fact_is("screen", "bench")
    hand.screen.key("d")
    hand.screen.click("gloves")
    hand.fact_is("gloves", "1")
    hand.screen.click("leave")
    hand.fact_is("screen", "start")
    hand.screen.click("resume.sweet_and_frothy-1")
    hand.fact_is("screen", "bench")
    hand.fact_is("gloves", "1")
    hand.screen.click("leave")
    hand.fact_is("screen", "start")
    hand.screen.click("author")
    hand.fact_is("screen", "author")  # The draft waited.
    hand.screen.click("author.leave")
    hand.fact_is("screen", "author.begin")
    hand.screen.click("author.away")
    hand.fact_is("screen", "start")
    hand.screen.click("case.sweet_and_frothy")
    hand.fact_is("screen", "bench")


def main():
    words = asked()
    program = words.program
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        hand = Author(Screen(program, folder, words.size, words.text), words.pictures)
        try:
            file, told = make_by_mouse(hand, folder)
            found = by_the_book(compare(program, file, folder, told))
            if found.get("heat") != "2+" or found.get("benedict") != "3+":
                raise Stuck(f"by the book the command line finds {found}")
            file, told = make_by_keys(hand, folder)
            compare(program, file, folder, told)
            sit_it(hand)
        except Stuck as stuck:
            return failed(hand, stuck)
        finally:
            hand.screen.close()
    print("a case by mouse and one by keys, as the command line finds them")
    return 0


if __name__ == "__main__":
    sys.exit(main())
