"""Opens the package that lies here as a stranger would, and holds every cell against its schema."""
import json
import sys

import pandas

package = json.load(open("datapackage.json"))
table = next(r for r in package["resources"] if r["path"] == "trials.csv")
fields = table["schema"]["fields"]
cells = pandas.read_csv("trials.csv", dtype=str, keep_default_na=False)
assert list(cells.columns) == [f["name"] for f in fields], "other columns than described"

for field in fields:
    column = cells[field["name"]]
    given = column[~column.isin(table["schema"]["missingValues"])]
    rules = field.get("constraints", {})
    if rules.get("required"):
        assert len(given) == len(column), field["name"] + " is missing in some rows"
    if "enum" in rules:
        assert set(given) <= set(rules["enum"]), field["name"] + ": " + str(set(given))
    if field["type"] == "number":
        pandas.to_numeric(given)
    if field["type"] == "integer":
        given.map(int)
    if field["type"] == "boolean":
        assert set(given) <= {"true", "false"}, field["name"]
    if field["type"] == "datetime":
        pandas.to_datetime(given, format="%Y-%m-%dT%H:%M:%S.%fZ")
assert not cells.duplicated(table["schema"]["primaryKey"]).any(), "the same trial twice"

reports = [json.loads(line) for line in open("reports.ndjson", encoding="utf-8")]
assert len(reports) == cells["report"].nunique(), "other reports in the lines than in the table"
words = json.load(open("words.jsonld", encoding="utf-8"))["@graph"]
concepts = {c["skos:notation"] for c in words if c["@type"] == "skos:Concept"}
for column in ("material", "coating", "colour", "resultColour", "process", "source", "effect"):
    unknown = set(cells[column]) - concepts - {""}
    assert not unknown, column + " has words that are no concepts: " + str(unknown)
print(len(cells), "trials,", len(reports), "reports,", len(concepts), "concepts")
sys.exit(0)
