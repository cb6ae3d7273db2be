#!/usr/bin/env python3
"""Sits an examination in the real window, by keys alone, with a kill in the middle; then its result is opened.

Usage: window_exam.py PROGRAM [--pictures FOLDER] [--size 1280x800] [--text 100]

Keys, pack and register are made with the program's own commands. What the window shows is compared with what they say.
"""

import json
import pathlib
import shutil
import subprocess
import sys
import tempfile

from window_case import Screen, Stuck
from window_hand import Hand, asked, failed
from window_keys import press

ROOT = pathlib.Path(__file__).resolve().parents[2]


def call(program, folder, *words):
    done = subprocess.run([program, *map(str, words)], cwd=folder, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        raise Stuck(f"{' '.join(map(str, words))}: {done.stdout}{done.stderr}")
    return done.stdout


def prepare(program, folder):
    """The instructor's side: keys, a learner's device, a pack; returns the words of the room."""
    for name in ("cards", "returned", "sittings/examination"):
        (folder / name).mkdir(parents=True)
    (folder / "own.words").write_text("a quiet heron stood by 7 willows!\n")
    call(program, folder, "keys", "new", "own.keys", "--name", "A. Instructor", "--effort", "light",
         "--passphrase-file", "own.words")
    call(program, folder, "keys", "device", "heron-07.device", "--pseudonym", "heron-07")
    shutil.move(folder / "heron-07.card.toml", folder / "cards")
    shutil.copy(ROOT / "scenarios" / "first_case.toml", folder / "one.toml")
    (folder / "spring.toml").write_text(
        'title = "Spring practical"\nminutes = 90\ndelete_after = "2099-07-31"\n\n[[case]]\nscenario = "one.toml"\n')
    words = json.loads(call(program, folder, "seal", "spring.toml", "--key", "own.keys", "--cards", "cards", "-o",
                            "spring.pack", "--effort", "light", "--passphrase-file", "own.words", "--json"))
    shutil.copy(folder / "spring.pack", folder / "sittings" / "examination")
    shutil.copy(folder / "heron-07.device", folder / "sittings" / "examination")
    return words


class Learner(Hand):
    def enter(self, words, passphrase):
        press(self.screen, "offer.exam")
        self.screen.until(lambda: self.screen.place("exam.open"), "the pack and the key")
        self.type_into("exam.passphrase", passphrase)
        self.type_into("exam.session", words["session_code"])
        self.picture("entry")
        press(self.screen, "exam.open")

    def write_colour(self, word):
        self.screen.key("s")
        press(self.screen, "colour=" + word)
        self.screen.until(lambda: word in self.screen.fact("message"), "the colour on the worksheet")


def work(hand, words, reopen):
    hand.enter(words, "ABCD-EFGH-JKLM")
    hand.screen.until(lambda: "passphrase" in hand.screen.fact("exam.refused"), "a refusal of a wrong passphrase")
    hand.picture("refused")
    hand.screen.close()
    hand = reopen()
    hand.enter(words, words["class_passphrase"])
    hand.screen.until(lambda: hand.screen.place("exam.case.unknown-1"), "the cases", 120)
    hand.picture("cases")
    hand.fact_is("time_left", "")
    if hand.screen.place("class.open") or hand.screen.place("offer.practice"):
        raise Stuck("something else is offered beside an opened pack")
    press(hand.screen, "exam.case.unknown-1")
    hand.fact_is("screen", "bench")
    hand.fact_is("tab", "Request")  # Nobody has been here before.
    hand.fact_is("time_left", "90 of 90 min left")
    hand.screen.key("d")
    press(hand.screen, "gloves")
    hand.fact_is("gloves", "1")
    hand.write_colour("straw")
    hand.picture("bench")
    hand.screen.close()  # Killed without warning.
    hand = reopen()
    hand.enter(words, words["class_passphrase"])
    hand.screen.until(lambda: hand.screen.place("exam.case.unknown-1"), "the cases", 120)
    press(hand.screen, "exam.case.unknown-1")
    hand.fact_is("screen", "bench")
    hand.fact_is("tab", "Worksheet")
    hand.fact_is("gloves", "1")
    hand.write_colour("yellow")
    hand.screen.key("h")
    hand.picture("help")
    hand.screen.key("t")
    press(hand.screen, "hand_in")
    press(hand.screen, "hand_in.yes")
    hand.fact_is("screen", "closed")
    code = hand.screen.fact("closing_code")
    hand.picture("closed")
    press(hand.screen, "closed.back")
    hand.fact_is("screen", "start")
    press(hand.screen, "exam.case.unknown-1")  # The code can be seen again.
    hand.fact_is("screen", "closed")
    if not code or hand.screen.fact("closing_code") != code:
        raise Stuck(f"the closing code was {code} and is {hand.screen.fact('closing_code')}")
    press(hand.screen, "closed.back")
    hand.picture("done")
    return code


def judge(program, folder, code):
    """The instructor's side again: the result passes every check, and with a changed code it does not."""
    results = list((folder / "sittings" / "examination").glob("*.result"))
    if len(results) != 1 or list((folder / "sittings" / "examination").glob("*.marks*")):
        raise Stuck("there is not one result without marks")
    shutil.copy(results[0], folder / "returned")
    asked = ("open-results", "returned", "--pack", "spring.pack", "--key", "own.keys", "--cards", "cards", "--codes",
             "codes.csv", "--passphrase-file", "own.words", "--json")
    (folder / "codes.csv").write_text(f"pseudonym,case,code\nheron-07,unknown-1,{code}\n")
    good = call(program, folder, *asked)
    other = ("B" if code[0] == "A" else "A") + code[1:]
    (folder / "codes.csv").write_text(f"pseudonym,case,code\nheron-07,unknown-1,{other}\n")
    bad = call(program, folder, *asked)
    return json.loads(good), json.loads(bad)


def main():
    called = asked()
    program = called.program
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        hand = None

        def reopen():
            nonlocal hand
            text = 100 if hand else called.text  # The window keeps the size it was given.
            taken = hand.taken if hand else 0
            hand = Learner(Screen(program, folder, called.size, text), called.pictures)
            hand.taken = taken
            return hand

        try:
            words = prepare(program, folder)
            reopen()
            code = work(hand, words, reopen)
            good, bad = judge(program, folder, code)
            if good["sittings"][0]["to_be_reviewed"] or not bad["sittings"][0]["to_be_reviewed"]:
                raise Stuck(f"the checks say {json.dumps(good)[:2000]} and {json.dumps(bad)[:2000]}")
        except Stuck as stuck:
            return failed(hand, stuck)
        finally:
            if hand:
                hand.screen.close()
    print("an examination by keys alone, closed and opened again")
    return 0


if __name__ == "__main__":
    sys.exit(main())
