"""Looks at exported files with programs that know nothing of ours: Python's csv, a JSON Schema validator with schemas
written from the published specifications, an XML parser, a renderer of SVG and one of printed pages. Spoils each file in
many ways, too: the checks must notice."""
import copy
import csv
import html.parser
import json
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree as xml

import jsonschema

folder = pathlib.Path(sys.argv[1])
small_class = len(sys.argv) > 2  # Written by the program for a class of three: fewer pictures, and names of its own.
schemas = pathlib.Path(__file__).parent / "schemas"
wrong = []


def check(good, words):
    if not good:
        wrong.append(words)


def rows_of(name):
    raw = (folder / name).read_bytes()
    check(raw.endswith(b"\r\n"), f"{name}: no CRLF at the end")
    check(not re.search(rb"[^\r]\n", re.sub(rb'"(?:[^"]|"")*"', b"", raw)), f"{name}: a line without CRLF")
    with open(folder / name, newline="", encoding="utf-8") as file:
        rows = list(csv.reader(file, strict=True))
    check(len({len(row) for row in rows}) == 1, f"{name}: rows of different lengths")
    for row in rows:
        for cell in row:
            tempting = cell[:1] in "=+-@\t\r" and cell != ""
            check(not tempting or re.fullmatch(r"-?\d*\.?\d+", cell), f"{name}: a cell like a formula: {cell!r}")
    return rows


def check_csv():
    if not small_class:
        rows = rows_of("evil.csv")
        check(rows[1] == ["'=SUM(A1:A9)", 'said "no"', "two\r\nlines", "'+1", "-0.25", "'@home", "'\tTab", "a,b"], f"evil.csv came back as {rows[1]!r}")
    for name in ("sittings.csv", "marks.csv", "items.csv", "confusion.csv", "sittings-students.csv", "marks-students.csv"):
        check(len(rows_of(name)) > 3, f"{name}: next to nothing in it")
    for name in ("sittings-students.csv", "marks-students.csv"):
        head = rows_of(name)[0]
        told = {"expected", "earned", "possible", "passed", "mean_per_mille", "charged_to", "missed_findings", "why_not"} & set(head)
        check(not told, f"{name} tells {told}")


def faults(validator, document, more=lambda document: []):
    return [error.message for error in validator.iter_errors(document)] + more(document)


def more_of_xapi(statements):
    """What a schema cannot say: a raw score lies between its ends, ids are there once."""
    found = []
    for one in statements:
        score = one.get("result", {}).get("score", {}) if isinstance(one.get("result"), dict) else {}
        if "raw" in score and not score.get("min", score["raw"]) <= score["raw"] <= score.get("max", score["raw"]):
            found.append("raw beyond its ends")
    ids = [one.get("id") for one in statements]
    return found + (["an id twice"] if len(ids) != len(set(ids)) else [])


def spoil(validator, good, ways, name, more=lambda document: []):
    check(not faults(validator, good, more), f"{name}: {faults(validator, good, more)[:3]}")
    for words, way in ways.items():
        bad = copy.deepcopy(good)
        way(bad)
        check(faults(validator, bad, more), f"{name}: nobody noticed {words}")


def check_xapi():
    validator = jsonschema.Draft202012Validator(json.loads((schemas / "xapi.schema.json").read_text()))
    jsonschema.Draft202012Validator.check_schema(validator.schema)
    good = json.loads((folder / "xapi.json").read_text())
    first = next(i for i, one in enumerate(good) if one["verb"]["id"].endswith("answered") and "score" in one["result"])

    def at(way):
        return lambda document: way(document[first])

    ways = {
        "a missing verb": at(lambda s: s.pop("verb")),
        "a missing actor": at(lambda s: s.pop("actor")),
        "a missing object": at(lambda s: s.pop("object")),
        "scaled above 1": at(lambda s: s["result"]["score"].update(scaled=1.2)),
        "raw above max": at(lambda s: s["result"]["score"].update(raw=1001)),
        "a bad timestamp": at(lambda s: s.update(timestamp="30.9.2027")),
        "month 13": at(lambda s: s.update(timestamp="2027-13-01T00:00:00Z")),
        "an extra key": at(lambda s: s.update(mood="good")),
        "an extra key in a result": at(lambda s: s["result"].update(grade=2)),
        "a verb that is no IRI": at(lambda s: s["verb"].update(id="answered")),
        "an activity that is no IRI": at(lambda s: s["object"].update(id="case one")),
        "an unknown interaction": at(lambda s: s["object"]["definition"].update(interactionType="looking")),
        "a number as a response": at(lambda s: s["result"].update(response=2)),
        "a mail address for an actor": at(lambda s: s.update(actor={"mbox": "mailto:a@b.c"})),
        "a bad id": at(lambda s: s.update(id="1")),
        "the same id twice": lambda d: d[first].update(id=d[first - 1]["id"] if first else d[1]["id"]),
    }
    spoil(validator, good, ways, "xapi.json", more_of_xapi)
    verbs = {one["verb"]["id"].rsplit("/", 1)[1] for one in good}
    check({"answered", "completed", "passed", "failed"} <= verbs, f"xapi.json: only {verbs}")
    students = json.loads((folder / "xapi-students.json").read_text())
    check(not faults(validator, students, more_of_xapi), "xapi-students.json does not hold")
    text = json.dumps(students)
    check("score" not in text and "success" not in text, "xapi-students.json holds marks")
    check({one["verb"]["id"].rsplit("/", 1)[1] for one in students} == {"answered", "completed"}, "xapi-students.json tells who passed")
    for name in ("xapi.json", "xapi-students.json"):
        check("correctResponsesPattern" not in (folder / name).read_text(), f"{name} holds the key")


def more_of_fhir(bundle):
    entries = bundle.get("entry", [])
    there = {f"{e['resource'].get('resourceType')}/{e['resource'].get('id')}" for e in entries if isinstance(e.get("resource"), dict)}
    asked = re.findall(r'"reference": "([^"]+)"', json.dumps(bundle))
    kinds = [e.get("resource", {}).get("resourceType") for e in entries]
    return [f"no {one}" for one in asked if one not in there] + ([] if kinds.count("DiagnosticReport") == 1 else ["not one report"])


def check_fhir():
    validator = jsonschema.Draft202012Validator(json.loads((schemas / "fhir.schema.json").read_text()))
    jsonschema.Draft202012Validator.check_schema(validator.schema)
    files = sorted((folder / "fhir").glob("*.json"))
    check(len(files) >= 2, "hardly any bundles")
    for file in files:
        good = json.loads(file.read_text())
        kinds = [e["resource"]["resourceType"] for e in good["entry"]]
        at = kinds.index("Observation")

        def observed(way):
            return lambda document: way(document["entry"][at]["resource"])

        def reported(way):
            return lambda document: way(document["entry"][0]["resource"])

        ways = {
            "an observation without code": observed(lambda o: o.pop("code")),
            "an observation without status": observed(lambda o: o.pop("status")),
            "a bad status": observed(lambda o: o.update(status="done")),
            "a report without status": reported(lambda r: r.pop("status")),
            "a report without code": reported(lambda r: r.pop("code")),
            "a missing label HTEST": observed(lambda o: o["meta"].update(security=[])),
            "no word of training": observed(lambda o: o.pop("note")),
            "an unknown key": observed(lambda o: o.update(marks=3)),
            "an empty code": observed(lambda o: o["code"]["coding"][0].update(code="")),
            "two values": observed(lambda o: o.update(valueQuantity={"value": 1, "system": "http://unitsofmeasure.org", "code": "1"}, valueCodeableConcept={"text": "x"})),
            "a unit UCUM does not have": observed(lambda o: (o.pop("valueCodeableConcept", None), o.update(valueQuantity={"value": 1, "system": "http://unitsofmeasure.org", "code": "[sp_gr]"}))),
            "a result nobody made": reported(lambda r: r["result"].append({"reference": "Observation/none"})),
        }
        spoil(validator, good, ways, file.name, more_of_fhir)
        text = file.read_text()
        check("http://loinc.org" in text and "24356-8" in text, f"{file.name}: no LOINC")
        check("copyright Regenstrief" in text, f"{file.name}: no licence notice")
        check('"expected"' not in text and "earned" not in text, f"{file.name} holds marks")


class Tags(html.parser.HTMLParser):
    def __init__(self):
        super().__init__()
        self.open = []
        self.seen = []

    def handle_starttag(self, tag, attributes):
        self.seen.append((tag, dict(attributes)))
        if tag not in ("meta", "br"):
            self.open.append(tag)

    def handle_startendtag(self, tag, attributes):
        self.seen.append((tag, dict(attributes)))

    def handle_endtag(self, tag):
        check(self.open and self.open[-1] == tag, f"report.html: </{tag}> closes nothing")
        if self.open:
            self.open.pop()


def check_report():
    text = (folder / "report.html").read_text()
    tags = Tags()
    tags.feed(text)
    check(not tags.open, f"report.html: {tags.open} stay open")
    names = {tag for tag, _ in tags.seen}
    check(not names & {"script", "img", "link", "iframe", "object"}, "report.html fetches something or runs something")
    check(small_class or "&lt;b&gt;Bobby&lt;/b&gt;" in text and "<b>Bobby</b>" not in text, "report.html takes a title for tags")
    pictures = re.findall(r"<svg.*?</svg>", text, re.S)
    check(len(pictures) > (4 if small_class else 6), f"only {len(pictures)} pictures")
    for number, picture in enumerate(pictures):
        xml.fromstring(picture)
        for red, green, blue in re.findall(r"rgb\((\d+),(\d+),(\d+)\)", picture):
            check(red == green == blue, "a picture is not in greys")
        for colour in re.findall(r"#[0-9a-fA-F]{3,6}", picture):
            letters = colour[1:] if len(colour) == 4 else colour[1::2] + colour[2::2]
            check(len(set(colour[1:4])) == 1 if len(colour) == 4 else len({colour[1:3], colour[3:5], colour[5:7]}) == 1, f"a picture is not in greys: {colour} {letters}")
        file = folder / f"picture-{number}.svg"
        file.write_text(picture)
        drawn = subprocess.run(["rsvg-convert", "-o", str(file.with_suffix(".png")), str(file)], capture_output=True)
        check(drawn.returncode == 0 and file.with_suffix(".png").stat().st_size > 500, f"picture {number} cannot be drawn: {drawn.stderr[:200]}")
    printed = subprocess.run(["weasyprint", str(folder / "report.html"), str(folder / "report.pdf")], capture_output=True, text=True)
    check(printed.returncode == 0, f"report.html does not print: {printed.stderr[:300]}")
    pages = subprocess.run(["pdfinfo", str(folder / "report.pdf")], capture_output=True, text=True).stdout
    check(int(re.search(r"Pages:\s+(\d+)", pages).group(1)) >= 2, "report.pdf has hardly a page")
    words = subprocess.run(["pdftotext", str(folder / "report.pdf"), "-"], capture_output=True, text=True).stdout
    check("How the class read" in words and "The standard" in words, "report.pdf lacks its words")


check_csv()
check_xapi()
check_fhir()
check_report()
for words in wrong[:40]:
    print(words)
print(f"{len(wrong)} faults")
sys.exit(1 if wrong else 0)
