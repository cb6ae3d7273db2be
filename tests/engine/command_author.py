"""The verbs that make cases, from the command line alone: compose a specimen, into a new file and into a file with remarks; make
forms of a plan. What they write is checked by the other verbs."""
import json
import os
import pathlib
import subprocess
import sys
import tempfile

program = pathlib.Path(sys.argv[1]).resolve()
source = pathlib.Path(__file__).resolve().parents[2]
environment = dict(os.environ, MATULA_ASSETS=str(source / "assets"), DISPLAY="")


def call(*words, code=0):
    run = subprocess.run([program, *map(str, words)], capture_output=True, text=True, env=environment, stdin=subprocess.DEVNULL,
                         check=False)
    assert run.returncode == code, f"{words}: {run.returncode}\n{run.stdout}\n{run.stderr}"
    return run


def by_the_book(case, folder):
    """The words of the asked tests, done on the file by another way than the search took."""
    steps = folder / "nothing.jsonl"
    steps.write_text('{"do": "finish"}\n')
    played = json.loads(call("play", case, steps, "--json").stdout)
    return {tube["test"]: tube["by_the_book"] for tube in played["tubes"]}


def compose_anew(folder):
    case = folder / "new" / "made.toml"
    made = json.loads(call("compose", "heat=2+", "benedict=1+", "sg=1.020", "-o", case, "--json").stdout)
    assert abs(made["shows"]["specific_gravity"] - 1.020) < 0.0001, made["shows"]
    assert {test["test"]: test["word"] for test in made["tests"]} == {"heat": "2+", "benedict": "1+"}
    call("check", case)
    assert by_the_book(case, folder) == {"heat": "2+", "benedict": "1+"}


def compose_in_place(folder):
    before = (source / "scenarios" / "first_case.toml").read_text()
    before = before[: before.index("[[review.worked]]")]  # Its marks are those of the specimen it was worked on.
    case = folder / "first.toml"
    case.write_text(before)
    call("compose", "heat=1+", "--from", case, "-o", case)
    after = case.read_text()
    assert by_the_book(case, folder)["heat"] == "1+"
    differ = [pair for pair in zip(before.splitlines(), after.splitlines()) if pair[0] != pair[1]]
    assert len(before.splitlines()) == len(after.splitlines()) and len(differ) == 1, differ
    assert differ[0][1].startswith("albumin = "), differ
    call("check", case)


def refusals(folder):
    said = call("compose", "heat=7+", code=2).stderr
    assert "its words are negative, trace, 1+" in said, said
    said = call("compose", "benedict=4+", "sg=1.002", "-o", folder / "none.toml", code=1).stderr
    assert said.strip() and not (folder / "none.toml").exists(), said
    said = call("compose", "heat=1+", "--from", folder / "not_there.toml", code=1).stderr
    assert "not_there.toml" in said, said


def forms(folder):
    plan = folder / "small.toml"
    plan.write_text(
        'title = "Two students, one unknown"\nabout = "Write down what you see."\n'
        '[[unknown]]\nheat = "1+"\nbenedict = "negative"\nspecific_gravity_between = [1.014, 1.020]\n')
    call("forms", plan, "-o", folder / "forms", "--students", "heron,../wren", code=2)
    made = json.loads(call("forms", plan, "-o", folder / "forms", "--students", "heron,wren", "--seed", 5, "--json").stdout)
    again = json.loads(call("forms", plan, "-o", folder / "again", "--students", "heron,wren", "--seed", 5, "--json").stdout)
    assert made == again, "the same seed gives the same forms"
    texts = []
    for form in made["forms"]:
        unknown = form["unknowns"][0]
        case = folder / "forms" / form["student"] / (unknown["unknown"] + ".toml")
        call("check", case)
        assert by_the_book(case, folder)["heat"] == "1+", form
        assert 1.0135 <= unknown["specific_gravity"] <= 1.0205, unknown
        texts.append(case.read_text())
    assert texts[0] != texts[1], "everybody has a specimen of their own"
    hard = [form["difficulty"] for form in made["forms"]]
    assert abs(hard[0] - hard[1]) <= made["tolerance"], hard
    sheet = (folder / "forms" / "forms.html").read_text()
    assert made["forms"][0]["unknowns"][0]["number"] in sheet and "1+" not in sheet, "the sheet gives nothing away"
    key = (folder / "forms" / "key.html").read_text()
    for form in made["forms"]:
        assert form["unknowns"][0]["number"] in key and "<b>1+</b>" in key, "the key tells everything"


with tempfile.TemporaryDirectory() as name:
    here = pathlib.Path(name)
    compose_anew(here)
    compose_in_place(here)
    refusals(here)
    forms(here)
print("compose and forms write what check and play find")
