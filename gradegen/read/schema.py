"""JSON Schemas of the files a designer writes, from the same tables of keys the reader uses."""

from __future__ import annotations

from typing import Any, Literal

from gradegen.read.pattern.keys import PATTERN_FIELDS
from gradegen.read.size_tables.keys import SIZE_TABLE_FIELDS
from gradegen.read.yaml.fields import block_of

FileKind = Literal["pattern", "size table"]

_FIELDS = {"pattern": PATTERN_FIELDS, "size table": SIZE_TABLE_FIELDS}


def json_schema(kind: FileKind) -> dict[str, Any]:
    """A JSON Schema (2020-12) with descriptions, for an editor to complete and check keys."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"gradegen {kind}",
        **block_of(_FIELDS[kind], f"a {kind}").schema,
    }
