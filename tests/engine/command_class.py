"""A class's records from the command line alone, as docs/class-records.md has it: import, look, mark anew, export, forget."""
import csv
import json
import os
import pathlib
import sqlite3
import subprocess
import sys
import tempfile

from written_log import log_of, low

program = pathlib.Path(sys.argv[1]).resolve()
source = pathlib.Path(__file__).resolve().parents[2]
environment = dict(os.environ, MATULA_ASSETS=str(source / "assets"), DISPLAY="")


def call(*words, code=0):
    run = subprocess.run([program, *map(str, words)], capture_output=True, text=True, env=environment, stdin=subprocess.DEVNULL)
    assert run.returncode == code, f"{words}: {run.returncode}\n{run.stdout}\n{run.stderr}"
    return run


with tempfile.TemporaryDirectory(prefix="matula_class_") as scratch:
    folder = pathlib.Path(scratch)
    store = folder / "class.db"
    for student, change in (("red-fox", lambda line: line), ("grey-owl", low)):
        (folder / "in" / student).mkdir(parents=True)
        (folder / "in" / student / "first_case-1.jsonl").write_text(log_of("first_case", "first_case.steps.jsonl", change))

    help_words = call("class", "--help").stdout
    for verb in ("import", "list", "show", "sitting", "rescore", "versions", "export", "names", "forget", "expire", "backup", "check"):
        assert verb in help_words, verb
        assert "Usage" in call("class", verb, "--help").stdout
    for words in (["class"], ["class", "import"], ["class", "import", "x", "--keep-until", "soon"], ["class", "export", "gossip", "-o", "x"], ["class", "import", "x", "--threads", "0"]):
        assert call(*words, code=2).stderr
    assert "no folder" in call("class", "import", folder / "none", "--store", store, code=1).stderr

    first = call("class", "import", folder / "in", "--store", store, "--label", "spring", "--keep-until", "2027-09-30", "--json")
    assert json.loads(first.stdout)["new"] == 2, first.stdout
    assert "2/2" in first.stderr, first.stderr
    assert json.loads(call("class", "import", folder / "in", "--store", store, "--json").stdout) == {"new": 0, "known": 2, "go_on": 0, "refused": [], "warnings": []}
    (folder / "in" / "stray").mkdir()
    (folder / "in" / "stray" / "a.jsonl").write_text('{"matula_sitting": 1}\nnonsense\n')
    stray = call("class", "import", folder / "in", "--store", store, code=1)
    assert "not taken" in stray.stderr and "0 new, 2 known already, 1 not taken" in stray.stdout

    rows = json.loads(call("class", "list", "--store", store, "--json").stdout)
    by_student = {row["student"]: row for row in rows}
    assert set(by_student) == {"red-fox", "grey-owl"} and all(row["label"] == "spring" for row in rows)
    assert by_student["red-fox"]["passed"] and not by_student["grey-owl"]["passed"]
    assert by_student["grey-owl"]["missed_findings"] == 1
    number = by_student["grey-owl"]["number"]

    # The marks are those of the verb "score" on the same log.
    scored = call("score", folder / "in" / "grey-owl" / "first_case-1.jsonl", "--json").stdout
    stored = call("class", "sitting", number, "--store", store, "--json").stdout
    assert json.loads(scored)["marks"] == json.loads(stored)["marks"]
    written = call("class", "sitting", number, "--store", store, "-o", folder / "out").stdout.strip()
    assert pathlib.Path(written).read_text() == (folder / "in" / "grey-owl" / "first_case-1.jsonl").read_text()

    view = json.loads(call("class", "show", "--store", store, "--json").stdout)
    heat = next(test for test in view["tests"] if test["test"] == "heat")
    assert heat["readings"] == 2 and heat["missed_findings"] == 1
    assert view["standard"]["passed"] == 1 and view["standard"]["sittings"] == 2
    assert "The standard: 1 of 2 passed" in call("class", "show", "--store", store).stdout
    assert json.loads(call("class", "show", "--store", store, "--student", "red-fox", "--json").stdout)["sittings"] == 1

    other = folder / "corrected" / "first_case.toml"
    other.parent.mkdir()
    other.write_text((source / "scenarios" / "first_case.toml").read_text() + "\n[marking]\nmissed_findings = 1\npass_mark = 100\n")
    tried = json.loads(call("class", "rescore", "--store", store, "--scenario", other, "--trial", "--json").stdout)
    assert (tried["passed_before"], tried["passed_now"]) == (1, 2), tried
    assert len(json.loads(call("class", "list", "--store", store, "--all-scores", "--json").stdout)) == 2
    again = json.loads(call("class", "rescore", "--store", store, "--scenario", other, "--json").stdout)
    assert again == tried
    assert again["sittings"] == 2
    changed = next(one for one in again["changed"] if one["student"] == "grey-owl")
    assert not changed["before"]["passed"] and changed["now"]["passed"]
    assert len(json.loads(call("class", "list", "--store", store, "--all-scores", "--json").stdout)) == 4
    versions = json.loads(call("class", "versions", "--store", store, "--json").stdout)
    assert [(one["sittings"], one["counting"], one["passed"]) for one in versions] == [(2, 0, 1), (2, 2, 2)], versions
    assert "2 sittings of first_case" in call("class", "versions", "--store", store, "--choose", "1").stdout
    assert "1 of 2 passed" in call("class", "show", "--store", store).stdout
    assert "no version 3" in call("class", "versions", "--store", store, "--choose", "3", code=1).stderr
    assert "both scores of each are kept" in call("class", "rescore", "--store", store).stdout

    (folder / "names.csv").write_text("pseudonym,name\r\nred-fox,Ada Example\r\ngrey-owl,\"Bo Example, junior\"\r\n")
    call("class", "names", folder / "names.csv", "--store", store)
    assert "grey-owl" in call("class", "names", "--store", store).stdout
    (folder / "bad.csv").write_text("just a line\n")
    assert ":1:" in call("class", "names", folder / "bad.csv", "--store", store, code=1).stderr

    for what in ("sittings", "marks", "items", "confusion"):
        call("class", "export", what, "-o", folder / f"{what}.csv", "--store", store)
        with open(folder / f"{what}.csv", newline="") as file:
            assert len(list(csv.reader(file, strict=True))) > 2
    call("class", "export", "xapi", "-o", folder / "xapi.json", "--store", store, "--home", "https://school.invalid/x")
    assert any(one["verb"]["id"].endswith("failed") for one in json.loads((folder / "xapi.json").read_text()))
    call("class", "export", "xapi", "-o", folder / "told.json", "--store", store, "--for-students")
    assert "score" not in (folder / "told.json").read_text()
    call("class", "export", "fhir", "-o", folder / "fhir", "--store", store)
    assert len(list((folder / "fhir").glob("*.json"))) == 2
    call("class", "export", "report", "-o", folder / "report.html", "--store", store, "--names")
    assert "Ada Example" in (folder / "report.html").read_text()
    assert "students get" in call("class", "export", "report", "-o", folder / "r.html", "--store", store, "--for-students", code=1).stderr
    call("class", "backup", folder / "copy.db", "--store", store)
    assert "is there already" in call("class", "backup", folder / "copy.db", "--store", store, code=1).stderr

    assert "nothing wrong was found" in call("class", "check", "--store", store).stdout
    with sqlite3.connect(folder / "copy.db") as careless:
        careless.execute("DELETE FROM mark WHERE score = 1")
    assert "1 score(s) without marks" in call("class", "check", "--store", folder / "copy.db", code=1).stderr

    said = call("class", "forget", "grey-owl", "--store", store).stdout
    assert "1 student(s), 1 name(s), 1 sitting(s)" in said and "2 score(s)" in said, said
    assert b"grey-owl" not in store.read_bytes() and b"junior" not in store.read_bytes()
    assert "Nobody is called" in call("class", "forget", "grey-owl", "--store", store, code=1).stderr
    assert "0 sitting(s)" in call("class", "expire", "--store", store, "--today", "2027-09-30").stdout
    assert "1 sitting(s)" in call("class", "expire", "--store", store, "--today", "2027-10-01").stdout
    assert json.loads(call("class", "list", "--store", store, "--json").stdout) == []
    assert len(json.loads(call("class", "list", "--store", folder / "copy.db", "--json").stdout)) == 2
print("The class was taken in, judged, exported and forgotten.")
