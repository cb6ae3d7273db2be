"""The JSON Schema against the reader: every shipped case and every case made from a pattern passes both, and files broken on
purpose are refused by both.

author_schema.py MATULA SOURCE_FOLDER
"""
import json
import pathlib
import subprocess
import sys
import tempfile
import tomllib

import jsonschema

matula, source = sys.argv[1], pathlib.Path(sys.argv[2])
schema = json.loads((source / "scenarios/scenario.schema.json").read_text())
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)

BASE = (source / "scenarios/frothy_ankles.toml").read_text()
WAY = (source / "scenarios/burning_cystitis.toml").read_text()
DAY = (source / "scenarios/day_protein.toml").read_text()

# (text it is made from, what stands there, what is put in its place)
BROKEN = [
    (BASE, 'title = "Froth that stays"\n', ""),
    (BASE, 'title = "Froth that stays"', "title = 3"),
    (BASE, 'title = "Froth that stays"', 'title = ""'),
    (BASE, 'level = "first"', 'level = "second"'),
    (BASE, "seed = 207", "seed = 0"),
    (BASE, "seed = 207", "seed = 2.5"),
    (BASE, "seed = 207", 'seed = "207"'),
    (BASE, "seed = 207", "seed = 207\nsead = 1"),
    (BASE, 'ward = "Medical ward"\n', ""),
    (BASE, 'ward = "Medical ward"', 'ward = "Medical ward"\nhospital = "x"'),
    (BASE, 'volume = "60 mL"', 'volume = "60 ml"'),
    (BASE, 'volume = "60 mL"', 'volume = "600 mL"'),
    (BASE, 'volume = "60 mL"', 'volume = "4 mL"'),
    (BASE, 'volume = "60 mL"', "volume = 60"),
    (BASE, 'temperature = "22 C"\n', ""),
    (BASE, 'temperature = "22 C"', 'temperature = "72 F"'),
    (BASE, 'temperature = "22 C"', 'temperature = "-4 C"'),
    (BASE, "ph = 6\n", "ph = 60\n"),
    (BASE, "ph = 6\n", 'ph = "6"\n'),
    (BASE, "ph = 6\n", ""),
    (BASE, "yellow = 0.3 ", "yellow = -0.3 "),
    (BASE, 'stood = "30 min"', 'stood = "60 h"'),
    (BASE, 'albumin = "800 mg/dL"', 'albumen = "800 mg/dL"'),
    (BASE, 'albumin = "800 mg/dL"', 'albumin = "800 mmol/L"'),
    (BASE, 'albumin = "800 mg/dL"', 'albumin = "8000 mg/dL"'),
    (BASE, 'urea = "430 mmol/L"', 'urea = "lots"'),
    (BASE, 'sodium = "20 mmol/L"', 'sodium = "4.1 g/L"'),
    (BASE, 'sodium = "20 mmol/L"', 'chloride = "20 mmol/L"'),
    (BASE, 'room = "22 C"\n', ""),
    (BASE, "urinometer_zero_error = -0.001", "urinometer_zero_error = -0.01"),
    (BASE, 'reagents = ["water"', 'reagents = ["holy_water"'),
    (BASE, 'reagents = ["water"', 'reagents = ["water", "water"'),
    (BASE, '"heat", "ssa"', '"heat", "sss"'),
    (BASE, '"heat", "ssa"', '"heat", "heat"'),
    (BASE, 'right = "heavy"\n', ""),
    (BASE, 'key = "meaning"', 'key = "The meaning"'),
    (BASE, 'key = "meaning"', 'key = "meaning"\nweight = 200'),
    (BASE, 'key = "meaning"', 'key = "meaning"\nwieght = 10'),
    (BASE, 'kind = "first_morning"', 'kind = "last_evening"'),
    (BASE, 'container = "clean_cup"', 'container = "teapot"'),
    (BASE, 'container = "clean_cup"\n', ""),
    (BASE, 'passed = "06:30"', 'passed = "6.30"'),
    (BASE, 'passed = "06:30"', 'passed = "26:30"'),
    (BASE, 'request = ["appearance", "specific_gravity", "protein", "sugar"]', "request = []"),
    (BASE, "[bench]", "[weights]\neach_grade = 101\n[bench]"),
    (BASE, "[bench]", "[weights]\neach_test = 10\n[bench]"),
    (BASE, "[bench]", "[tolerances]\nspecific_gravity_full = 0.5\n[bench]"),
    (BASE, "[bench]", '[tolerances]\ntemperature_full = "20 C"\n[bench]'),
    (BASE, "[bench]", "[marking]\nloss = [0, 1, 2]\n[bench]"),
    (BASE, "[bench]", "[marking]\nreader_spread = 5\n[bench]"),
    (BASE, "[bench]", "[laboratory_rules]\nprotein_per_g_dl = 0.03\n[bench]"),
    (BASE, "[bench]", '[review]\nauthor = "A"\n[bench]'),
    (BASE, "[bench]", '[review]\nauthor = "A"\nversion = "1"\n[[review.change]]\nversion = "1"\ndate = "27.11.26"\nwords = "x"\n[bench]'),
    (BASE, "[bench]", '[review]\nauthor = "A"\nversion = "1"\n[[review.worked]]\nsteps = "x"\nmarks = { honour = 3 }\n[bench]'),
    (BASE, "[bench]\n", '[bench]\nbottle_age = { gold = "3 d" }\n'),
    (BASE, "[bench]\n", '[bench]\nbottle_age = { benedict = "30 years" }\n'),
    (BASE, "[bench]", '[specimen.solids]\nsand = "3 mg/L"\n[bench]'),
    (BASE, "[bench]", '[specimen.cells]\nleucocytes = "3 mg/L"\n[bench]'),
    (WAY, "[[specimen.leg]]\n", "[[specimen.leg]]\nglow = 3\n"),
    (WAY, "[[specimen.leg]]\nhours = ", "[[specimen.leg]]\nhuors = "),
    (DAY, 'protein_by = "turbidity"', 'protein_by = "heat"'),
    (DAY, "kept = false", 'kept = "no"'),
]


def run(*arguments):
    return subprocess.run([matula, *map(str, arguments)], capture_output=True, text=True, check=False)


def reader_takes(files):
    said = json.loads(run("check", "--quick", "--json", *files).stdout)
    return {one["file"]: not one["problems"] for one in said}


def complaint(file):
    errors = list(validator.iter_errors(tomllib.loads(pathlib.Path(file).read_text())))
    return "" if not errors else f"{list(errors[0].path)}: {errors[0].message[:200]}"


failed = []
with tempfile.TemporaryDirectory() as folder:
    folder = pathlib.Path(folder)
    good = sorted((source / "scenarios").glob("*.toml"))
    for pattern in sorted((source / "assets/patterns").glob("*.toml")):
        run("generate", pattern.stem, "--seed", 11, "--count", 3, "-o", folder / "made")
    good += sorted((folder / "made").glob("*.toml"))
    for file, takes in reader_takes(good).items():
        words = complaint(file)
        if words or not takes:
            failed.append(f"{file}: reader {'takes' if takes else 'refuses'} it, schema: {words or 'takes it'}")
    broken = []
    for number, (text, there, instead) in enumerate(BROKEN):
        if text.count(there) < 1:
            failed.append(f"broken file {number}: the case no longer says {there!r}")
            continue
        file = folder / f"broken_{number}.toml"
        file.write_text(text.replace(there, instead, 1))
        broken.append(file)
    for file, takes in reader_takes(broken).items():
        number = int(pathlib.Path(file).stem.split("_")[1])
        refused = bool(complaint(file))
        if takes == refused:
            failed.append(f"{BROKEN[number][1]!r} -> {BROKEN[number][2]!r}: reader {'takes' if takes else 'refuses'} it, "
                          f"schema {'refuses' if refused else 'takes'} it")
        elif takes:
            failed.append(f"{BROKEN[number][1]!r} -> {BROKEN[number][2]!r}: neither refuses it")
    print(f"{len(good)} good files, {len(broken)} broken ones")
if failed:
    print("\n".join(failed))
    sys.exit(1)
