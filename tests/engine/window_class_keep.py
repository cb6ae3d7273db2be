#!/usr/bin/env python3
"""An instructor's desk work at the window, by keys alone: sealed results taken in, students put in order, sittings marked anew, a
student forgotten, a copy and a check.

Usage: window_class_keep.py PROGRAM [--pictures FOLDER] [--size 1280x800] [--text 100]

What the pages say is compared with what the program's own commands say of the same files.
"""

import json
import pathlib
import re
import shutil
import sys
import tempfile

from window_case import Screen, Stuck
from window_class import ROOT, Teacher, call, differ
from window_hand import asked, failed
from window_keys import reach
from written_log import log_of, low

WORDS = "a quiet heron stood by 7 willows!"
LEARNERS = ("elk-3", "heron-07", "otter-12")
STEPS = '{"do": "protect", "gloves": true, "goggles": true}\n{"do": "record", "item": "colour", "value": "yellow"}\n{"do": "finish"}\n'


def seal_and_sit(program, desk):
    """An examination of three beside the stores: one honest, one whose code was copied wrongly, one who handed nothing in."""
    for name in ("returned", "cards"):
        (desk / name).mkdir(parents=True)
    (desk / "own.words").write_text(WORDS + "\n")
    call(program, "keys", "new", desk / "own.keys", "--name", "A", "--effort", "light", "--passphrase-file", desk / "own.words")
    for who in LEARNERS:
        call(program, "keys", "device", desk / f"{who}.device", "--pseudonym", who)
        shutil.move(desk / f"{who}.card.toml", desk / "cards")
    (desk / "exam.toml").write_text(f'title = "Spring practical"\nminutes = 90\ndelete_after = "2027-07-31"\n\n[[case]]\n'
                                    f'scenario = "{ROOT / "scenarios" / "first_case.toml"}"\n')
    sealed = json.loads(call(program, "seal", desk / "exam.toml", "--key", desk / "own.keys", "--cards", desk / "cards", "-o",
                             desk / "spring.pack", "--effort", "light", "--passphrase-file", desk / "own.words", "--json"))
    (desk / "class.words").write_text(sealed["class_passphrase"] + "\n")
    (desk / "steps.jsonl").write_text(STEPS)
    codes = "pseudonym,case,code\n"
    for who in LEARNERS[1:]:
        closed = json.loads(call(program, "sit", desk / "spring.pack", desk / "steps.jsonl", "--device", desk / f"{who}.device",
                                 "--session", sealed["session_code"], "--case", "unknown-1", "-o", desk / "returned",
                                 "--passphrase-file", desk / "class.words", "--json"))
        code = closed["closing_code"]
        codes += f"{who},unknown-1,{code if who == 'heron-07' else code[:-1] + ('B' if code[-1] == 'A' else 'A')}\n"
    (desk / "codes.csv").write_text(codes)


def prepare(program, desk):
    seal_and_sit(program, desk)
    for student, change in (("red-fox", lambda line: line), ("grey-owl", low)):
        file = desk / "handed-in" / student / "first_case-1.jsonl"
        file.parent.mkdir(parents=True)
        file.write_text(log_of("first_case", "first_case.steps.jsonl", change))
    call(program, "class", "import", desk / "handed-in", "--store", desk / "spring.db", "--keep-until", "2026-01-31")
    (desk / "first_case.toml").write_text((ROOT / "scenarios" / "first_case.toml").read_text() +
                                          "\n[marking]\nmissed_findings = 1\npass_mark = 100\n")
    (desk / "names.csv").write_text("pseudonym,name\nred-fox,Ada Example\ngrey-owl,Bo Example\n")


class Instructor(Teacher):
    def type_secret(self, name, words):
        reach(self.screen, name)
        self.screen.key("Return")
        self.fact_is("typing", "1")
        self.screen.xdo(2 * len(words), "type", "--delay", 20, words)
        self.fact_is("text_length", str(len(words)))
        if words in self.screen.map.read_text():
            raise Stuck("the passphrase can be read in the list of controls")
        self.picture("passphrase")
        self.screen.key("Return")
        self.fact_is("typing", "0")


def take_sealed(hand, program, desk):
    hand.page("import")
    hand.press("import.sealed")
    hand.press("sealed.folder.from.returned")
    hand.press("sealed.pack.from.spring.pack")
    hand.press("sealed.keys.from.own.keys")
    hand.press("sealed.cards.from.cards")
    hand.press("sealed.codes.from.codes.csv")
    hand.type_into("sealed.label", "spring exam")
    hand.type_secret("sealed.passphrase", "not these words at all")
    hand.picture("sealed")
    hand.press("sealed.begin")
    hand.fact_has("sealed.end", "another passphrase")
    hand.type_secret("sealed.passphrase", WORDS)
    hand.press("sealed.begin")
    hand.fact_has("sealed.end", "2 results opened, 1 of them to be reviewed, 0 files that could not be opened. 2 new")
    hand.fact_is("class.sittings", "4")
    opened = json.loads(call(program, "open-results", desk / "returned", "--pack", desk / "spring.pack", "--key", desk / "own.keys",
                             "--cards", desk / "cards", "--codes", desk / "codes.csv", "--passphrase-file", desk / "own.words",
                             "--json"))
    for one in opened["sittings"]:
        told = hand.screen.fact("sealed." + pathlib.Path(one["file"]).name)
        differ("the outcome", told.split("; ")[0], "to be reviewed" if one["to_be_reviewed"] else "in order")
        for check in one["checks"]:
            if check["state"] != "good" and check["words"] not in told:
                raise Stuck(f"{check['words']!r} is not told: {told!r}")
    hand.look_through("sealed_taken")
    button = next(name.lstrip("-") for name in hand.screen.read_map()[0] if "sealed.open.otter" in name)
    hand.press(button)
    hand.fact_is("page", "class.sitting")
    hand.screen.until(lambda: hand.screen.fact("sitting.open") != "0", "the sitting")
    hand.picture("sealed_sitting")


def put_in_order(hand, program, store):
    hand.page("students")
    reviewed = [name for name in hand.screen.read_map()[0] if "review." in name]
    differ("the sittings to be reviewed", len(reviewed), 1)
    students = json.loads(call(program, "class", "show", "--store", store, "--json"))["students"]
    hand.page("students")
    for column, key in (("mean", "mean"), ("missed", "missed_findings"), ("sittings", "sittings")):
        hand.press("order." + column)
        hand.fact_is("students.order", column + " down")
        value = {one["student"]: one[key] for one in students}
        differ("the first", value[hand.screen.fact("students.first")], max(value.values()))
        hand.press("order." + column)
        hand.fact_is("students.order", column + " up")
        differ("the first", value[hand.screen.fact("students.first")], min(value.values()))
    hand.press("order.name")
    differ("the first", hand.screen.fact("students.first"), "grey-owl" if not hand.screen.place("class.names") else "red-fox")
    hand.picture("ordered")


def mark_anew(hand, program, store):
    hand.page("rescore")
    hand.press("rescore.scenario.from.first_case.toml")
    hand.picture("rescore")
    hand.press("rescore.try")
    hand.fact_has("rescore.end", "nothing was stored")
    hand.fact_has("rescore.end", "2 sittings marked anew: 1 passed before, 2 pass now;")
    hand.look_through("tried")
    rows = json.loads(call(program, "class", "list", "--store", store, "--all-scores", "--json"))
    differ("scores after the trial", len(rows), 4)
    hand.press("rescore.begin")
    hand.fact_has("rescore.end", "Both marks of each are kept")
    hand.fact_has("version.2", "2/2 counting 2")
    hand.look_through("marked_anew")
    hand.press("version.1")
    hand.fact_has("version.2", "2/2 counting 0")
    versions = json.loads(call(program, "class", "versions", "--store", store, "--json"))
    differ("versions", [(one["sittings"], one["counting"]) for one in versions], [(4, 4), (2, 0)])
    hand.press("rescore.only")
    hand.fact_is("rescore.rows", "1")


def keep(hand, program, desk, store):
    hand.page("keeping")
    hand.picture("keeping")
    hand.press("keeping.names.from.names.csv")
    hand.press("keeping.names.read")
    hand.fact_has("keeping.done", "2 names from")
    hand.type_into("keeping.copy", "copy.db")
    hand.press("keeping.back_up")
    hand.fact_has("keeping.done", "copies/copy.db")
    hand.press("keeping.check")
    hand.fact_has("keeping.done", "Nothing wrong was found.")
    hand.page("students")
    hand.press("student.grey-owl")
    hand.fact_is("page", "class.student")
    hand.press("student.forget")
    hand.fact_is("page", "class.keeping")
    hand.fact_has("keeping.would_forget", "1 sitting(s) with their logs, 2 score(s)")
    hand.picture("forgetting")
    would = re.search(r"removed: (.*)\.", hand.screen.fact("keeping.would_forget")).group(1)
    hand.type_into("keeping.again", "grey-owl")
    hand.picture("meant")
    hand.press("keeping.forget")
    hand.fact_has("keeping.done", "Removed: " + would)
    hand.fact_is("class.sittings", "3")
    hand.picture("forgotten")
    said = call(program, "class", "forget", "grey-owl", "--store", desk / "copies" / "copy.db")
    differ("what was removed", said.splitlines()[0], f"Removed: {would}.")
    hand.type_into("keeping.today", "2026-02-01")
    hand.press("keeping.past")
    hand.fact_has("keeping.would_expire", "1 sittings")
    hand.picture("past")
    hand.press("keeping.expire")
    hand.fact_is("class.sittings", "2")
    hand.picture("expired")
    differ("students left", sorted(row["student"] for row in json.loads(call(program, "class", "list", "--store", store, "--json"))),
           ["heron-07", "otter-12"])


def work(hand, program, desk):
    store = desk / "spring.db"
    hand.press("class.open")
    hand.fact_is("screen", "stores")
    hand.press("store.spring")
    hand.fact_is("screen", "class")
    take_sealed(hand, program, desk)
    put_in_order(hand, program, store)
    mark_anew(hand, program, store)
    keep(hand, program, desk, store)


def main():
    words = asked()
    with tempfile.TemporaryDirectory(prefix="matula_keep_") as name:
        folder = pathlib.Path(name)
        desk = folder / "sittings" / "class"
        hand = None
        try:
            prepare(words.program, desk)
            hand = Instructor(Screen(words.program, folder, words.size, words.text), words.pictures)
            work(hand, words.program, desk)
        except Stuck as stuck:
            return failed(hand, stuck)
        finally:
            if hand:
                hand.screen.close()
    print("sealed results, an order of students, marking anew and keeping, by keys alone")
    return 0


if __name__ == "__main__":
    sys.exit(main())
