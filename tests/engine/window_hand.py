"""What the driven tests of the window share: a hand that works by keys, the words they are called with, how they end."""

import argparse
import pathlib
import shutil
import sys

from window_case import Stuck
from window_keys import press, reach


class Hand:
    """Goes about a window by keys alone, and takes numbered pictures when a folder for them is named."""

    def __init__(self, screen, pictures):
        self.screen = screen
        self.pictures = pictures
        self.taken = 0

    def picture(self, name):
        if self.pictures:
            self.taken += 1
            self.screen.picture(self.pictures / f"{self.taken:02d}_{name}.png")

    def fact_is(self, name, value, seconds=180):
        try:
            self.screen.until(lambda: self.screen.fact(name) == value, f"{name} {value}", seconds)
        except Stuck as why:
            raise Stuck(f"{why}; {name} is {self.screen.fact(name)}") from None

    def press(self, name):
        press(self.screen, name)

    def type_into(self, name, text):
        reach(self.screen, name)
        self.screen.key("Return")
        self.fact_is("typing", "1")
        self.screen.xdo(4, "key", "ctrl+a")
        self.screen.xdo(2 * len(text), "type", "--delay", 20, text)
        self.fact_is("text", text)
        self.screen.key("Return")
        self.fact_is("typing", "0")


def asked(*more):
    """The words of the command line. Ends as skipped where there is no display to drive; `more` are paths by option."""
    arguments = argparse.ArgumentParser()
    arguments.add_argument("program", type=lambda word: str(pathlib.Path(word).resolve()))
    arguments.add_argument("--pictures", type=pathlib.Path)
    arguments.add_argument("--size", default="1280x800")
    arguments.add_argument("--text", type=int, default=100)
    for option in more:
        arguments.add_argument(option, type=pathlib.Path)
    words = arguments.parse_args()
    for tool in ("Xvfb", "xdotool"):
        if not shutil.which(tool):
            print(f"skipped: {tool} is not installed")
            sys.exit(77)
    if words.pictures:
        words.pictures.mkdir(parents=True, exist_ok=True)
    return words


def failed(hand, stuck):
    """Says where the window stood; the program's exit code."""
    if hand:
        hand.picture("stuck")
        print("\n".join(f"={name} {value}" for name, value in hand.screen.read_map()[1].items()), file=sys.stderr)
    print(f"FAILED: {stuck}", file=sys.stderr)
    return 1
