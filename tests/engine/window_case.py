#!/usr/bin/env python3
"""Works a case in the real window, by mouse and keys, as its steps file says, from the first screen to the marks.

Usage: window_case.py PROGRAM STEPS.jsonl [--pictures FOLDER] [--size 1280x800] [--text 100] [--times]

A line of the steps file becomes what a learner would press. Then the log the window kept is marked by the command line, and
both marks must be the same, byte for byte. The last line printed says how many marks of each ledger were earned.
"""

import argparse
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

OVERNIGHT_S = 72000
WAITS = [600, 300, 120, 60, 30, 10]
WHEEL_AT = [0.55, 0.3, 0.75]  # Heights at which a pane may scroll as a whole and not a part of it.
COUNTER = ("reception", "day.")


class Stuck(Exception):
    """The window does not do what it should."""


class Screen:
    """A display of its own, the window on it, and a hand on mouse and keys."""

    def __init__(self, program, folder, size, text):
        self.map = folder / "map"
        self.map.unlink(missing_ok=True)  # What a killed window left says nothing of the new one.
        self.height = int(size.split("x")[1])
        self.pointer = None  # where we put it last
        self.notch = 65.0  # dots that one notch of the wheel scrolls
        read, write = os.pipe()
        self.display = subprocess.Popen(
            ["Xvfb", "-displayfd", str(write), "-screen", "0", size + "x24", "-noreset"],
            pass_fds=[write], stderr=subprocess.DEVNULL)
        os.close(write)
        number = os.read(read, 16).decode().strip()
        self.program = None
        self.env = dict(os.environ, DISPLAY=":" + number, MATULA_WIDGET_MAP=str(self.map),
                        MATULA_SITTINGS=str(folder / "sittings"))
        self.env.setdefault("MATULA_WAIT_WALL_S", "0.4")
        self.env.setdefault("LP_NUM_THREADS", "0")  # On a busy machine Mesa's own threads wait for one another.
        self.output = open(folder / "output", "w")
        try:
            self.program = subprocess.Popen([program], env=self.env, stdout=self.output, stderr=self.output)
            self.until(lambda: self.fact("screen") == "start" and self.fact("settled") == "1", "the first screen")
            self.point_at(self.height, self.height // 2)
        except BaseException:
            self.close()
            raise
        for _ in range((text - 100) // 25):
            self.click("text.larger")

    def close(self):
        for process in filter(None, (self.program, self.display)):
            process.kill()
            process.wait()

    def read_map(self):
        try:
            lines = self.map.read_text().splitlines()
        except OSError:
            lines = []
        places, facts = {}, {}
        for line in lines:
            if line.startswith("="):
                name, _, value = line[1:].partition(" ")
                facts[name] = value
            else:
                words = line.split()
                if len(words) == 3:
                    places[words[0]] = (int(words[1]), int(words[2]))
        return places, facts

    def fact(self, name):
        return self.read_map()[1].get(name, "")

    def place(self, name):
        return self.read_map()[0].get(name)

    def until(self, holds, what, seconds=60):
        end = time.time() + seconds
        while not holds():
            if time.time() > end or self.program.poll() is not None:
                raise Stuck(f"waited in vain for {what}; the window says: {self.fact('message')}")
            time.sleep(0.01)

    def xdo(self, events, *words):
        """Sends so many events at least, and waits until the window has drawn what came of them."""
        then = int(self.fact("events") or 0) + events
        subprocess.run(["xdotool", *map(str, words)], env=self.env, check=True)
        self.until(lambda: self.has_settled(then), "an answer to " + " ".join(map(str, words)), 120)

    def has_settled(self, events):
        facts = self.read_map()[1]
        return int(facts.get("events", 0)) >= events and facts.get("settled") == "1"

    def key(self, name):
        self.xdo(2, "key", name)

    def point_at(self, x, y):
        if (x, y) != self.pointer:
            self.xdo(1, "mousemove", x, y)
            self.pointer = (x, y)

    def bring(self, name, over=None):
        """Turns the wheel until the control shows; `over`: where, if not above the control's own place."""
        stood_still = 0
        while not self.place(name):
            hidden = self.place("-" + name)
            if not hidden:
                raise Stuck(f"no control named {name}")
            if stood_still == len(WHEEL_AT):
                raise Stuck(f"{name} cannot be scrolled to")
            self.point_at(*(over or (hidden[0], int(self.height * WHEEL_AT[stood_still]))))
            hidden = self.place("-" + name) or hidden
            away = hidden[1] - self.pointer[1]
            turns = max(1, min(30, round(abs(away) / self.notch)))
            self.xdo(turns, "click", "--repeat", turns, "--delay", 5, 5 if away > 0 else 4)
            now = self.place(name) or self.place("-" + name) or hidden
            if now[1] != hidden[1]:
                self.notch = max(20, abs(now[1] - hidden[1]) / turns) if not self.place(name) else self.notch
                stood_still = 0
            else:
                stood_still += 1

    def tap(self, name):
        """Moves and clicks in one go; only where the caller sees whether it had its effect."""
        self.bring(name)
        at = self.place(name)
        self.xdo(2, "mousemove", *at, "click", 1)
        self.pointer = at

    def click(self, name, over=None):
        for _ in range(8):
            self.bring(name, over)
            at = self.place(name)
            self.point_at(*at)
            if self.fact("hovered").replace(" ", "_") == name and self.place(name) == at:
                self.xdo(2, "click", 1)
                return
            self.xdo(1, "mousemove_relative", 1, 0)
            self.pointer = None
        raise Stuck(f"the pointer does not come to rest on {name}")

    def type_into(self, name, text):
        for _ in range(6):
            self.click(name)
            self.until(lambda: self.fact("typing") == "1", "a field to type in", 10)
            self.xdo(4, "key", "ctrl+a")
            self.xdo(2 * len(text), "type", "--delay", 12, text)
            if same(self.fact("text"), text):
                self.xdo(2, "key", "Return")
                self.until(lambda: self.fact("typing") == "0", "the end of typing")
                return
            self.key("Escape")
        raise Stuck(f"could not type {text} into {name}")

    def picture(self, file):
        subprocess.run(["import", "-window", "root", "-quality", "10", str(file)], env=self.env, check=True)


def same(shown, wanted):
    try:
        return float(shown) == float(wanted)
    except ValueError:
        return shown == wanted


class Learner:
    """Turns lines of a steps file into what a learner presses."""

    def __init__(self, screen, pictures):
        self.screen = screen
        self.pictures = pictures
        self.set_to = {}  # ticks and fields as they were left
        self.shot = 0

    def log_lines(self):
        return len(pathlib.Path(self.screen.fact("log")).read_text().splitlines())

    def does(self, name):
        """Clicks, and waits until the log has grown."""
        before = self.log_lines()
        self.screen.tap(name)
        if self.log_lines() == before:
            self.screen.click(name)
        self.screen.until(lambda: self.log_lines() > before, name + " to be written into the log")

    def tab(self, key):
        fact = {"c": "Reception", "d": "Do", "l": "Papers", "s": "Worksheet"}[key]
        if self.screen.fact("tab") == fact:
            return
        if self.screen.fact("typing") == "1":
            self.screen.key("Escape")
        self.screen.key(key)
        self.screen.until(lambda: self.screen.fact("tab") == fact, "the tab " + fact)

    def take(self, vessel):
        self.tab("d")
        if self.screen.fact("vessel") == vessel:
            return
        if self.screen.place("bench." + vessel):
            self.screen.click("bench." + vessel)
            if self.screen.fact("vessel") == vessel:
                return
        for _ in range(40):
            self.screen.key("n")
            if self.screen.fact("vessel") == vessel:
                return
        raise Stuck(f"{vessel} cannot be taken in hand")

    def tick(self, name, wanted, first, button=None):
        """`first`: how it stands before anybody touched it; `button`: what to click when that is not `name`."""
        if self.set_to.setdefault(name, first) != wanted:
            self.screen.click(button or name)
            self.set_to[name] = wanted

    def number(self, name, value):
        text = f"{value:g}"
        if self.set_to.get(name) != text:
            self.screen.type_into(name, text)
            self.set_to[name] = text

    def pick(self, name, option):
        if self.set_to.get(name) == option:
            return
        self.screen.click(name)
        entry = f"{name}={option}"
        self.screen.until(lambda: any(p.startswith(name + "=") for p in self.screen.read_map()[0]), "the list")
        places = self.screen.read_map()[0]
        at = [place for key, place in places.items() if key.startswith(name + "=")][0]
        self.screen.click(entry, over=at)
        self.set_to[name] = option

    def wait(self, seconds):
        while seconds >= OVERNIGHT_S:
            self.tab("d")
            self.wait_by("wait.overnight", OVERNIGHT_S)
            seconds -= OVERNIGHT_S
        seconds = (seconds + 5) // 10 * 10  # The shortest button is ten seconds.
        for length in WAITS:
            while seconds >= length:
                self.wait_by(f"wait.{length}", length)
                seconds -= length

    def wait_by(self, button, length):
        then = float(self.screen.fact("time_s")) + length
        self.screen.tap(button)
        if self.screen.fact("waiting") == "0" and float(self.screen.fact("time_s")) < then - 0.001:
            self.screen.click(button)
        self.screen.until(lambda: float(self.screen.fact("time_s")) >= then - 0.001, "the wait", 180)
        self.screen.until(lambda: self.screen.fact("waiting") == "0", "the end of the wait")

    def mix(self, step):
        self.take(step["vessel"])
        if step["manner"] == "swirl":
            button, length = "mix.swirl", 5
        elif step["seconds"] < 8:
            button, length = "mix.turn", 3
        else:
            button, length = "mix.invert", 10
        for _ in range(max(1, round(step["seconds"] / length))):
            self.does(button)

    def heat_or_put_back(self, step):
        self.take(step["vessel"])
        if step["place"] == "flame":
            height = step.get("height", 0.5)
            part = "heat.upper" if height > 0.7 else "heat.middle" if height > 0.3 else "heat.lower"
            self.tick("heat.part", part, "heat.upper", button=part)
            self.tick("heat.moving", step.get("moving", True), True)
            towards = step.get("towards_person", False)
            self.tick("towards", towards, False, button="heat.towards" if towards else "heat.away")
            self.does("heat.flame")
        else:
            self.does({"rack": "heat.rack", "bath": "bath.in"}[step["place"]])

    def protect(self, step):
        self.tab("d")
        for name in ("gloves", "goggles"):
            if self.set_to.setdefault(name, False) != step[name]:
                self.does(name)
                self.set_to[name] = step[name]

    def record(self, step):
        item, value = step["item"], step["value"]
        if item.startswith(COUNTER):
            self.tab("c")
        else:
            self.tab("s")
        if item.startswith("reception.fault."):
            self.does(item)
            return
        button = f"{item}={value}".replace(" ", "_")
        if not self.screen.place(button) and not self.screen.place("-" + button):
            button = item
        if button == item:
            before = self.log_lines()
            self.screen.type_into(item, value)
            self.screen.until(lambda: self.log_lines() > before, item)
        else:
            self.does(button)

    def dispense(self, step):
        self.take(step["to"])
        self.tick("pour.gently", step.get("gently", False), False)
        shelf = "bench.shelf:" + step["reagent"]
        if self.screen.fact("bottle") != step["reagent"]:
            self.screen.click(shelf)
            self.screen.until(lambda: self.screen.fact("bottle") == step["reagent"], "the bottle")
        self.number("bottle.amount", step["volume_ml"])
        self.does("add")

    def pour(self, step):
        self.take(step["to"])
        self.pick("pour.from", "from:_" + say_vessel(step["from"]))
        self.tick("pour.gently", step.get("gently", False), False)
        self.number("pour.ml", step["volume_ml"])
        self.does("pour")

    def look(self, step):
        self.take(step["vessel"])
        before = self.log_lines()
        self.screen.key({"white": "w", "black": "b", "printed": "p"}[step.get("card", "white")])
        self.screen.until(lambda: self.log_lines() > before, "the card")

    def float_in(self, step):
        self.take(step["vessel"])
        self.tick("float.wipe", step.get("wiped", True), True)
        self.tick("float.spin", step.get("spun", True), True)
        self.does("float.in")
        self.screen.until(lambda: self.screen.fact("waiting") == "0", "the float", 60)

    def bath(self, step):
        self.tab("d")
        self.number("bath.c", step["temperature_c"])
        if "warming_c_per_min" in step:
            self.number("bath.rate", step["warming_c_per_min"])
        self.does("bath.set")

    def flame(self, step):
        self.tab("d")
        if self.set_to.get("flame", False) != step["on"]:
            self.does("burner")
            self.set_to["flame"] = step["on"]

    def hood(self, step):
        self.tab("d")
        if self.set_to.get("hood", False) != step["on"]:
            self.does("hood")
            self.set_to["hood"] = step["on"]

    def dip(self, step):
        self.take(step["vessel"])
        self.tab("l")
        self.screen.click("paper.kind=" + step["paper"])
        self.number("paper.seconds", step["seconds"])
        self.does("paper.dip")

    def on_papers(self, button):
        def do(_step):
            self.tab("l")
            self.does(button)
        return do

    def in_hand(self, button):
        def do(step):
            self.take(step["vessel"])
            self.does(button)
        return do

    def drop_on(self, step):
        self.take(self.screen.fact("vessel"))
        if self.screen.fact("bottle") != step["reagent"]:
            self.screen.click("bench.shelf:" + step["reagent"])
        self.tab("l")
        self.number("paper.drops", step["drops"])
        self.does("paper.drop")

    def filter(self, step):
        self.take(step["to"])
        self.pick("filter.from", "filter_from:_" + say_vessel(step["from"]))
        self.number("filter.ml", step["volume_ml"])
        self.does("filter")

    def refract(self, step):
        self.take(step["vessel"])
        self.tick("refract.wipe", step.get("wiped", True), True)
        self.does("refract")

    def measure(self, step):
        self.take(step["vessel"])
        self.number("photometer.nm", step["wavelength_nm"])
        self.does("photometer.zero" if step.get("blank") else "photometer.read")

    def hand_in(self, _step):
        self.screen.click("hand_in")
        self.screen.click("hand_in.yes")
        self.screen.until(lambda: self.screen.fact("screen") == "marks", "the marks", 120)

    def act(self, step):
        if "wait" in step:
            self.wait(step["wait"])
            return
        hands = {
            "protect": self.protect, "mix": self.mix, "record": self.record, "dispense": self.dispense,
            "pour": self.pour, "look": self.look, "float": self.float_in, "bath": self.bath, "flame": self.flame,
            "hood": self.hood, "move": self.heat_or_put_back, "dip": self.dip, "blot": self.on_papers("paper.blot"),
            "look_at_paper": self.on_papers("paper.look"), "drop_on": self.drop_on, "filter": self.filter,
            "lay_paper": self.lay, "refractometer": self.refract, "photometer": self.measure,
            "smell": self.in_hand("smell"), "thermometer": self.in_hand("thermometer"),
            "sulphur": self.in_hand("sulphur"), "tap": self.in_hand("tap"), "finish": self.hand_in,
            "lift_float": self.lift, "discard_paper": self.on_papers("paper.discard"),
        }
        if step["do"] not in hands:
            raise Stuck(f"no hand for {step['do']}")
        hands[step["do"]](step)

    def lift(self, _step):
        self.tab("d")
        self.does("float.out")

    def lay(self, _step):
        self.tab("d")
        self.does("filter.lay")

    def keep_picture(self, name):
        if self.pictures:
            self.shot += 1
            self.screen.picture(self.pictures / f"{self.shot:03d}_{name}.png")


def say_vessel(name):
    words = name.replace("-", "_")
    return words[0].upper() + words[1:]


def work_case(program, steps_file, pictures, size, text, times):
    case = steps_file.name.split(".")[0]
    steps = [json.loads(line) for line in steps_file.read_text().splitlines()
             if line.strip() and not line.startswith("#")]
    folder = pathlib.Path(tempfile.mkdtemp())
    screen = Screen(program, folder, size, text)
    try:
        screen.click("case." + case)
        screen.until(lambda: screen.fact("screen") == "bench", "the bench")
        learner = Learner(screen, pictures)
        learner.keep_picture("begun")
        for number, step in enumerate(steps, 1):
            begun = time.time()
            try:
                learner.act(step)
            except Stuck as why:
                learner.keep_picture("stuck")
                raise Stuck(f"step {number}, {json.dumps(step)}: {why}") from None
            learner.keep_picture(step.get("do", "wait"))
            if times:
                print(f"{time.time() - begun:7.1f} s  {json.dumps(step)}", flush=True)
        log = pathlib.Path(screen.fact("log"))
        return compare_marks(program, log)
    finally:
        screen.close()
        shutil.rmtree(folder, ignore_errors=True)


def compare_marks(program, log):
    kept = pathlib.Path(str(log) + ".marks.json").read_bytes()
    scored = subprocess.run([program, "score", str(log), "--json"], capture_output=True, check=True).stdout
    if kept != scored:
        raise Stuck("the window's marks are not those of the command line")
    return json.loads(kept)


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("program")
    arguments.add_argument("steps", type=pathlib.Path)
    arguments.add_argument("--pictures", type=pathlib.Path)
    arguments.add_argument("--size", default="1280x800")
    arguments.add_argument("--text", type=int, default=100)
    arguments.add_argument("--times", action="store_true", help="say how long each step took")
    given = arguments.parse_args()
    for tool in ("Xvfb", "xdotool"):
        if not shutil.which(tool):
            print(f"skipped: {tool} is not installed")
            return 77
    if given.pictures:
        given.pictures.mkdir(parents=True, exist_ok=True)
    try:
        marks = work_case(given.program, given.steps, given.pictures, given.size, given.text, given.times)
    except Stuck as why:
        print(f"FAILED: {given.steps.name}: {why}", file=sys.stderr)
        return 1
    print(given.steps.name, summary(marks))
    return 0


def summary(marks):
    sums = {}
    for mark in marks["marks"]:
        earned, possible = sums.get(mark["ledger"], (0, 0))
        sums[mark["ledger"]] = (earned + mark["earned"], possible + mark["possible"])
    return ", ".join(f"{ledger} {earned}/{possible}" for ledger, (earned, possible) in sums.items())


if __name__ == "__main__":
    sys.exit(main())
