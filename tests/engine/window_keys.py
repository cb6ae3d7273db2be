#!/usr/bin/env python3
"""Works a whole short sitting with the keyboard alone, from the first screen through the worksheet to the marks and back.

Usage: window_keys.py PROGRAM

The pointer is parked in a corner and never moved. A control is reached by the arrow keys, led by where the controls are.
"""

import pathlib
import shutil
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from window_case import Screen, Stuck  # noqa: E402


def reach(screen, name, most=120):
    """Arrow keys until the control has the keyboard."""
    tried = {}
    for _ in range(most):
        here = screen.fact("focus")
        if here == name:
            return
        target = screen.place(name) or screen.place("-" + name)
        at = screen.place(here) or screen.place("-" + here)
        if not target or not at:
            screen.key("Down")
            continue
        away = (target[0] - at[0], target[1] - at[1])
        upright = ["Down"] if away[1] > 8 else ["Up"] if away[1] < -8 else []
        across = ["Right"] if away[0] > 8 else ["Left"] if away[0] < -8 else []
        ways = upright + across + ["Down", "Right", "Up", "Left"]
        # The same key at the same place leads to the same place: try another one.
        way = ways[tried.get(here, 0) % len(ways)]
        screen.key(way)
        if screen.fact("focus") == here or here in tried:
            tried[here] = tried.get(here, 0) + 1
        else:
            tried.setdefault(here, 0)
    raise Stuck(f"the keyboard does not reach {name}; it stands on {screen.fact('focus')}")


def press(screen, name):
    reach(screen, name)
    screen.key("space")


def main():
    for tool in ("Xvfb", "xdotool"):
        if not shutil.which(tool):
            print(f"skipped: {tool} is not installed")
            return 77
    folder = pathlib.Path(tempfile.mkdtemp())
    screen = Screen(sys.argv[1], folder, "1280x800", 100)
    try:
        screen.point_at(1279, 799)
        press(screen, "case.first_case")
        screen.until(lambda: screen.fact("screen") == "bench", "the bench")
        screen.key("d")
        press(screen, "gloves")
        screen.until(lambda: screen.fact("gloves") == "1", "gloves")
        press(screen, "goggles")
        press(screen, "mix.swirl")
        screen.key("s")
        press(screen, "colour=yellow")
        screen.until(lambda: "yellow" in screen.fact("message"), "the colour on the worksheet")
        reach(screen, "sg.zero")
        screen.key("Return")
        screen.until(lambda: screen.fact("typing") == "1", "a field to type in")
        screen.xdo(10, "type", "--delay", 20, "1.002")
        screen.key("Return")
        screen.until(lambda: "1.002" in screen.fact("message"), "the reading on the worksheet")
        screen.key("t")
        press(screen, "hand_in")
        press(screen, "hand_in.yes")
        screen.until(lambda: screen.fact("screen") == "marks", "the marks", 120)
        screen.key("F6")
        press(screen, "marks.worksheet")
        screen.key("F6")
        press(screen, "marks.close")
        screen.until(lambda: screen.fact("screen") == "start", "the first screen")
        print("the keyboard alone is enough")
        return 0
    except Stuck as problem:
        screen.picture(folder / "stuck.png")
        print(f"{problem}\npicture: {folder / 'stuck.png'}", file=sys.stderr)
        return 1
    finally:
        screen.close()


if __name__ == "__main__":
    sys.exit(main())
