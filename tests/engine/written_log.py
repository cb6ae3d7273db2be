"""Logs of sittings as the program writes them, made from steps files."""

import json
import pathlib
import re

ROOT = pathlib.Path(__file__).resolve().parents[2]


def fingerprint(text):
    """FNV-1a, 64 bits (G. Fowler, L. C. Noll and K.-P. Vo 1991; constants from memory), as a log names the scenario it belongs to."""
    number = 14695981039346656037
    for byte in text:
        number = ((number ^ byte) * 1099511628211) % 2**64
    return f"{number:016x}"


def log_of(case, steps, change=lambda line: line):
    """The log of a shipped case worked as `steps`, a file below scenarios/, says; `change` may alter a line."""
    text = (ROOT / "scenarios" / f"{case}.toml").read_bytes()
    seed = int(re.search(rb"^seed *= *(\d+)", text, re.M).group(1))
    lines = [json.dumps({"matula_sitting": 1, "scenario": case, "scenario_file": f"scenarios/{case}.toml",
                         "scenario_hash": fingerprint(text), "seed": seed, "program": "0.1.0"})]
    moment = 0.0
    for line in (ROOT / "scenarios" / steps).read_text().splitlines():
        if not line.strip() or line.startswith("#"):
            continue
        event = change(json.loads(line))
        if "wait" in event:
            event = {"do": "wait", "seconds": event["wait"]}
        moment = max(moment, event.pop("t", moment))
        lines.append(json.dumps({"t": moment, **event}))
    return "\n".join(lines) + "\n"


def low(line):
    """A learner who sees no cloud in the heat test."""
    return {**line, "value": "negative"} if line.get("item") == "heat.grade" else line
