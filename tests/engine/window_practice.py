#!/usr/bin/env python3
"""Works a drill of every skill and a whole quiz in the real window, by keys alone, with a kill in the middle of the quiz.

Usage: window_practice.py PROGRAM [--pictures FOLDER] [--size 1280x800] [--text 100]

What the window wrote into the learner's record and into the quiz's file is compared with what was answered.
"""

import json
import os
import pathlib
import sys
import tempfile

from window_case import Screen, Stuck
from window_hand import Hand, asked, failed

DRILLS = ["turbidity", "copper", "ring", "meniscus", "corrections", "reception"]


class Learner(Hand):
    def type_line(self, text):
        self.screen.until(lambda: self.screen.fact("typing") == "1", "a field to write into")
        for _ in range(5):
            self.screen.xdo(2, "type", "--delay", "60", text)
            if self.screen.fact("text") == text:
                break
            self.screen.xdo(2, "key", "ctrl+a")
        else:
            raise Stuck(f"could not type {text}")
        self.screen.key("Return")

    def answer(self, kind, quiz):
        if kind == "meniscus":
            self.screen.key("F3")
            self.type_line("1.018")
        elif kind == "corrections":
            for line in ["1.020", "1.021", "1.021", "1.020", "1.020"]:
                self.type_line(line)
            self.fact_is("focus", "answer")
            self.screen.key("Return")
        elif kind == "reception":
            self.screen.key("3")
            self.screen.key("2")
        else:
            self.screen.key("b")
            self.screen.key("2")
        if quiz and kind in ("reception", "tube"):
            self.fact_is("focus", "answer")
            self.screen.key("Return")


def kind_on_show(screen):
    places = set(screen.read_map()[0]) | {name.lstrip("-") for name in screen.read_map()[0]}
    for control, kind in (("number", "meniscus"), ("line.1", "corrections"), ("verdict.1", "reception"), ("word.1", "tube")):
        if control in places:
            return kind
    raise Stuck("nothing to answer is on show")


def record(folder):
    file = folder / "sittings" / "learner" / "record.jsonl"
    lines = [json.loads(line) for line in file.read_text().splitlines()] if file.exists() else []
    return [line for line in lines if "unknown" in line]


def work_drills(hand, folder):
    screen = hand.screen
    for number, skill in enumerate(DRILLS):
        hand.press("offer.practice") if number == 0 else None
        screen.until(lambda: screen.place("drill." + skill) or screen.place("-drill." + skill), "the list of skills")
        if number == 0:
            hand.picture("skills")
        hand.press("drill." + skill)
        hand.fact_is("screen", "drill")
        hand.fact_is("ready", "1")
        hand.picture(skill)
        hand.answer(skill, False)
        hand.fact_is("answered", "1")
        if skill in ("turbidity", "copper", "ring"):
            screen.until(lambda: screen.fact("beside") == "1", "the tubes beside it", 120)
        hand.picture(skill + "_answered")
        kept = record(folder)
        if len(kept) != number + 1 or kept[-1]["skill"] != skill or kept[-1]["from"] != "drill":
            raise Stuck(f"the record has {len(kept)} answers, the last {kept[-1:]}")
        first = kept[-1]["unknown"]
        hand.fact_is("focus", "next")
        screen.key("Return")
        screen.until(lambda: screen.fact("right") == "", "the next unknown")
        hand.fact_is("ready", "1")
        hand.answer(skill, False)
        hand.fact_is("answered", "2")
        if record(folder)[-1]["unknown"] == first:
            raise Stuck("the same unknown came twice running")
        # One answer of each skill is enough for the count above.
        file = folder / "sittings" / "learner" / "record.jsonl"
        lines = file.read_text().splitlines()
        file.write_text("\n".join(lines[:-1]) + "\n")
        screen.key("Escape")
        hand.fact_is("screen", "start")


def work_quiz(hand, folder, reopen):
    screen = hand.screen
    hand.press("offer.quizzes")
    screen.until(lambda: screen.place("quiz.whole_bench"), "the list of quizzes")
    hand.picture("quizzes")
    hand.press("quiz.whole_bench")
    hand.fact_is("screen", "quiz")
    hand.fact_is("ready", "1")
    quizzes = folder / "sittings" / "learner" / "quizzes"
    file = next(quizzes.glob("*.jsonl"))
    unknowns = json.loads(file.read_text().splitlines()[0])["unknowns"]
    before = len(record(folder))
    for number in range(len(unknowns)):
        if number == 3:  # Killed without warning.
            screen.close()
            hand = reopen()
            screen = hand.screen
            hand.press("offer.quizzes")
            hand.press("quiz.resume." + file.stem)
            hand.fact_is("screen", "quiz")
            if screen.fact("answered") != "3":
                raise Stuck(f"{screen.fact('answered')} answers are left of 3")
        hand.fact_is("answered", str(number))
        hand.fact_is("ready", "1")
        kind = kind_on_show(screen)
        hand.picture(f"quiz_{number + 1}_{kind}")
        if screen.fact("right") or any(name.startswith("grades") for name in screen.read_map()[0]):
            raise Stuck("a quiz tells what is right before its end")
        hand.answer(kind, True)
    hand.fact_is("answered", str(len(unknowns)))
    hand.fact_is("focus", "quiz.end")
    screen.key("Return")
    hand.fact_is("screen", "results")
    hand.fact_is("marked", "1", 240)
    hand.picture("results")
    replies = [json.loads(line) for line in file.read_text().splitlines()[1:]]
    if sorted(line["answer"] for line in replies if "answer" in line) != list(range(len(unknowns))):
        raise Stuck("the quiz's file does not hold one answer to each unknown")
    if not replies[-1].get("finished"):
        raise Stuck("the quiz's file does not say that it ended")
    kept = record(folder)[before:]
    if [answer["unknown"] for answer in kept] != unknowns or any(answer["from"] != "quiz" for answer in kept):
        raise Stuck("the record does not hold the quiz's answers")
    for number in (2, 5, 9, 12):
        hand.press(f"result.{number}")
        hand.fact_is("place", str(number))
        screen.until(lambda: screen.fact("beside") in ("1", "none"), "the tubes beside it", 120)
        hand.picture(f"result_{number}")
    screen.key("Escape")
    hand.fact_is("screen", "start")
    return hand


def main():
    words = asked()
    os.environ["MATULA_PRACTICE_SEED"] = "7"
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        hand = None

        def reopen():
            nonlocal hand
            taken = hand.taken if hand else 0
            text = 100 if hand else words.text  # The window keeps the size it was given.
            hand = Learner(Screen(words.program, folder, words.size, text), words.pictures)
            hand.taken = taken
            return hand

        try:
            reopen()
            work_drills(hand, folder)
            work_quiz(hand, folder, reopen)
        except Stuck as stuck:
            return failed(hand, stuck)
        finally:
            hand.screen.close()
    print("six drills and a quiz, by keys alone")
    return 0


if __name__ == "__main__":
    sys.exit(main())
