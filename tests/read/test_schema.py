"""JSON Schemas say the same as the reader, since both come from one table of keys."""

from pathlib import Path

import jsonschema
import pytest
import yaml

from gradegen.read.pattern.keys import PATTERN_FIELDS
from gradegen.read.schema import json_schema
from gradegen.read.size_tables.keys import SIZE_TABLE_FIELDS
from gradegen.read.size_tables.ready import ready_tables
from gradegen.trade.folders import data_folder


def faults(kind, text):
    """Key paths of what the schema refuses."""
    found = jsonschema.Draft202012Validator(json_schema(kind)).iter_errors(yaml.safe_load(text))
    return sorted(".".join(str(part) for part in fault.absolute_path) for fault in found)


@pytest.mark.parametrize(("kind", "fields"), [("pattern", PATTERN_FIELDS), ("size table", SIZE_TABLE_FIELDS)])
def test_a_schema_knows_the_keys_of_the_reader_with_a_description(kind, fields):
    schema = json_schema(kind)
    jsonschema.Draft202012Validator.check_schema(schema)
    assert set(schema["properties"]) == {field.key for field in fields}
    assert schema["required"] == [field.key for field in fields if field.required]
    assert all(part["description"] for part in schema["properties"].values())


@pytest.mark.parametrize("name", ready_tables())
def test_ready_tables_hold_to_the_schema(name):
    assert faults("size table", (data_folder("sizes") / f"{name}.yaml").read_text("utf-8")) == []


TABLE = "title: T\nwearer: adult\nby: bust\nsizes: [S, 2X]\ncolumns: {bust: {in: [1, [2, 3]], cm: [null, 4]}}\n"


@pytest.mark.parametrize(
    ("change", "where"),
    [
        (("wearer: adult", "wearer: {S: adult, 2X: adult}"), []),
        (("wearer: adult", "wearer: cat"), ["wearer"]),
        (("in: [1", "inch: [1"), ["columns.bust"]),
        (("[2, 3]", "[2, 3, 4]"), ["columns.bust.in.1"]),
        (("title: T\n", ""), [""]),
        (("title: T\n", "title: T\nextra: 1\n"), [""]),
    ],
)
def test_what_the_table_schema_refuses(change, where):
    assert faults("size table", TABLE.replace(*change)) == where


def test_the_pattern_schema_takes_the_guide_example():
    """The pattern file shown to contributors."""
    guide = Path(__file__).parents[2] / "DEVELOPERS.md"
    example = guide.read_text("utf-8").split("```yaml\n")[1].split("```")[0].replace("[...]", "[x]")
    assert faults("pattern", example) == []
    assert faults("pattern", example.replace("terms: US", "terms: USA")) == ["terms"]
    assert faults("pattern", example.replace("multiple: 4", "multiple: 0")) == ["counts.band.multiple"]
    assert faults("pattern", example.replace("    shape: half", "    shpe: half")) == ["pieces.0", "pieces.0"]
