#!/usr/bin/env python3
"""An instructor at the window, by keys alone: a folder is taken in, the class looked at, one sitting replayed, a report written.

Usage: window_class.py PROGRAM [--pictures FOLDER] [--size 1280x800] [--text 100] [--store FILE]

What the pages show is compared with what the program's own command says of the same store; the report is compared byte for
byte. With --store the pages of that store are only looked at.
"""

import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

from window_case import Screen, Stuck
from window_hand import Hand, asked, failed
from window_keys import reach
from written_log import log_of, low

ROOT = pathlib.Path(__file__).resolve().parents[2]


def call(program, *words):
    done = subprocess.run([program, *map(str, words)], capture_output=True, text=True, check=False,
                          env=dict(os.environ, MATULA_ASSETS=str(ROOT / "assets")))
    if done.returncode != 0:
        raise Stuck(f"{' '.join(map(str, words))}: {done.stdout}{done.stderr}")
    return done.stdout


SITTINGS = [("red-fox", "first_case", "first_case.steps.jsonl", lambda line: line),
            ("grey-owl", "first_case", "first_case.steps.jsonl", low),
            ("grey-owl", "faint", "steps/faint.jsonl", lambda line: line),
            ("elk-3", "held_water", "steps/held_water.flawed.jsonl", lambda line: line)]


def hand_in(folder):
    for student, case, steps, change in SITTINGS:
        file = folder / "sittings" / "class" / "handed-in" / student / f"{case}-1.jsonl"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(log_of(case, steps, change))


class Teacher(Hand):
    def fact_has(self, name, part, seconds=180):
        self.screen.until(lambda: part in self.screen.fact(name), f"{part} in {name}", seconds)

    def page(self, name):
        self.press("class." + name)
        self.fact_is("page", "class." + name)
        self.fact_is("class.busy", "0")

    def look_through(self, name):
        """A page from its top to its end, a picture a screenful."""
        self.picture(name)
        if self.pictures:
            for part in range(2, 4):
                self.screen.key("Next")
                self.picture(f"{name}_{part}")
            for _ in range(3):
                self.screen.key("Prior")


def differ(what, shown, wanted):
    if shown != wanted:
        raise Stuck(f"{what}: the window shows {shown!r}, the command says {wanted!r}")


def with_interval(figure):
    if figure is None:
        return "too few readings"
    if figure["low"] is None:
        return f"{figure['value']:.2f}"
    return f"{figure['value']:.2f} ({figure['low']:.2f} to {figure['high']:.2f})"


def compare_tests(hand, view):
    hand.page("tests")
    for test in view["tests"]:
        hand.press("test." + test["test"])
        hand.fact_is("figure.test", test["test"])
        fact = hand.screen.fact
        differ("table", fact("figure.table"), " ".join(f"{n:.0f}" for row in test["shown_by_written"] for n in row))
        differ("readings", fact("figure.readings"), f"{test['readings']} by {test['students']} student{'' if test['students'] == 1 else 's'}")
        for key in ("kappa_linear", "kappa_quadratic", "ac2_linear"):
            differ(key, fact("figure." + key), with_interval(test[key]))
        for key in ("missed_findings", "false_alarms", "unwritten"):
            differ(key, fact("figure." + key), str(test[key]))
        if test["bias"] is not None:
            differ("bias", fact("figure.bias"), f"{test['bias']:+.2f} (standard error {test['bias_se']:.2f})")
            differ("exact", fact("figure.exact"), f"{100 * test['exact']:.0f} %")


def compare_class(hand, program, store):
    view = json.loads(call(program, "class", "show", "--store", store, "--json"))
    hand.page("standard")
    standard = view["standard"]
    differ("standard", hand.screen.fact("figure.standard"),
           f"{view['sittings']} sittings, {view['readings']} graded readings, {len(view['students'])} students. "
           f"{standard['passed']} of {standard['sittings']} sittings with graded readings passed at {standard['mark']} "
           "per mille.")
    hand.look_through("standard")
    compare_tests(hand, view)
    hand.look_through("tests")
    hand.page("items")
    hand.look_through("items")
    hand.press("items.bad")
    hand.look_through("all_items")
    hand.page("faults")
    if view["faults"]:
        differ("fault", hand.screen.fact("figure.fault"), f"{view['faults'][0]['lost']} {view['faults'][0]['label']}")
    hand.look_through("faults")
    hand.page("lines")
    if view["lines"]:
        hand.fact_has("figure.shift", f"{view['lines'][0]['readings']} readings")
    hand.look_through("lines")


def replay(hand):
    """The open sitting on the bench: played fast to the end, which is the end that is jumped to; steps and lines."""
    screen = hand.screen
    hand.press("sitting.replay")
    hand.fact_is("screen", "replay")
    hand.fact_is("replay.line", "0")
    hand.picture("replay_begin")
    total = screen.fact("replay.lines")
    screen.key("n")
    hand.fact_is("replay.line", "1")
    first = screen.fact("replay.state")
    screen.key("n")
    screen.key("n")
    screen.key("m")
    screen.key("m")
    hand.fact_is("replay.line", "1")
    differ("the bench after going back", screen.fact("replay.state"), first)
    hand.type_into("replay.speed", "40")
    screen.key("r")
    hand.fact_is("replay.playing", "1")
    time.sleep(1.5)
    hand.picture("replay_plays")
    screen.key("r")
    hand.fact_is("replay.playing", "0")
    hand.press("replay.x600")
    hand.press("replay.play")
    hand.fact_is("replay.line", total, 300)
    hand.fact_is("replay.playing", "0", 300)
    played = screen.fact("replay.state")
    hand.picture("replay_played")
    hand.press("replay.start")
    hand.fact_is("replay.line", "0")
    screen.key("End")
    hand.fact_is("replay.line", total)
    differ("the bench at the end", screen.fact("replay.state"), played)
    screen.key("a")
    hand.picture("replay_lines")
    wrote = [name for name in screen.read_map()[0] if re.fullmatch(r"line\.\d+", name)]
    if not wrote:
        raise Stuck("no line of the log is listed")
    hand.press(wrote[0])
    hand.fact_is("replay.line", wrote[0].split(".")[1])
    screen.key("s")
    hand.picture("replay_worksheet")
    screen.key("t")
    hand.type_into("replay.to", "12")
    hand.fact_is("replay.line", "12")
    screen.key("l")
    screen.key("w")
    screen.key("v")
    hand.picture("replay_line")
    screen.key("End")
    lost_at = None
    while int(screen.fact("replay.line")) > 0 and lost_at is None:
        if int(screen.fact("replay.marks") or 0) > 0:
            lost_at = screen.fact("replay.line")
        else:
            screen.key("m")
    if lost_at is None:
        raise Stuck("no mark stands at any line")
    hand.picture("replay_marks")
    screen.key("t")
    hand.press("replay.leave")
    hand.fact_is("screen", "class")


def drill_down(hand, program, store, student):
    rows = json.loads(call(program, "class", "list", "--store", store, "--student", student, "--json"))
    hand.page("students")
    hand.look_through("students")
    hand.press("student." + student)
    hand.fact_is("page", "class.student")
    hand.look_through("student")
    row = min(rows, key=lambda one: one["mean"])
    number = row["number"]
    hand.press(f"sitting.{number}")
    hand.fact_is("sitting.open", str(number))
    hand.fact_has("sitting.standing", f"mean {row['mean']} of 1000")
    hand.fact_is("sitting.explained", "1")
    hand.look_through("sitting")
    replay(hand)
    hand.press("sitting.back")
    hand.fact_is("page", "class.student")


def write_report(hand, program, store, folder):
    hand.page("export")
    hand.picture("export")
    hand.press("export.report")
    hand.screen.until(lambda: hand.screen.fact("export.written"), "the report", 60)
    report = pathlib.Path(hand.screen.fact("export.written"))
    hand.picture("exported")
    call(program, "class", "export", "report", "--store", store, "-o", folder / "other.html")
    differ("the report", report.read_text(), (folder / "other.html").read_text())


def take_in(hand):
    screen = hand.screen
    hand.press("class.open")
    hand.fact_is("screen", "stores")
    hand.picture("stores")
    hand.type_into("store.address", "spring")
    hand.press("store.open")
    hand.fact_is("screen", "class")
    hand.page("import")
    hand.press("import.folder.from.handed-in")
    hand.type_into("import.label", "spring 2027")
    hand.picture("import")
    hand.press("import.begin")
    hand.page("students")  # The view stays usable meanwhile.
    hand.page("import")
    hand.fact_has("import.end", f"{len(SITTINGS)} new, 0 known already, 0 not taken", 300)
    hand.fact_is("class.sittings", str(len(SITTINGS)))
    hand.picture("imported")
    hand.press("import.begin")
    hand.fact_has("import.end", f"0 new, {len(SITTINGS)} known already", 300)
    return screen.fact("class.store")


def teach(hand, program, folder):
    store = take_in(hand)
    compare_class(hand, program, store)
    drill_down(hand, program, store, "grey-owl")
    write_report(hand, program, store, folder)
    (folder / "names.csv").write_text("pseudonym,name\nred-fox,Ada Example\n")
    call(program, "class", "names", folder / "names.csv", "--store", store)
    hand.press("class.other")
    hand.fact_is("screen", "stores")
    hand.press("store.spring")
    hand.fact_is("screen", "class")
    hand.page("students")
    hand.press("class.names")  # Nobody's name is shown unasked.
    hand.picture("students_named")
    hand.press("class.leave")
    hand.fact_is("screen", "start")


def look_only(hand, program, store):
    hand.press("class.open")
    hand.fact_is("screen", "stores")
    hand.type_into("store.address", str(store))
    hand.press("store.open")
    hand.fact_is("screen", "class")
    compare_class(hand, program, store)
    hand.page("students")
    hand.look_through("students")
    first = json.loads(call(program, "class", "show", "--store", store, "--json"))["students"][0]["student"]
    hand.press("student." + first)
    hand.look_through("student")


def main():
    words = asked("--store")
    program = words.program
    with tempfile.TemporaryDirectory(prefix="matula_class_") as name:
        folder = pathlib.Path(name)
        hand_in(folder)
        hand = Teacher(Screen(program, folder, words.size, words.text), words.pictures)
        try:
            if words.store:
                look_only(hand, program, words.store.resolve())
            else:
                teach(hand, program, folder)
        except Stuck as stuck:
            return failed(hand, stuck)
        finally:
            hand.screen.close()
    print("a folder taken in, the class looked at, a sitting replayed and a report written, by keys alone")
    return 0


if __name__ == "__main__":
    sys.exit(main())
