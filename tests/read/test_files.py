"""Input comes in by one door: every way a file can be unreadable is one located finding."""

import os
import time

import pytest

from gradegen.read.files import MOST_BYTES, open_text


def spots(findings):
    return [(finding.rule, finding.place.line, finding.place.column) for finding in findings]


def test_a_mark_at_the_start_and_line_ends_of_other_systems_go(tmp_path):
    path = tmp_path / "a.yaml"
    path.write_bytes(b"\xef\xbb\xbfone\r\ntwo\rthree\n")
    written, findings = open_text(path)
    assert written.text == "one\ntwo\nthree\n"
    assert findings == ()
    assert [(written.place(at).line, written.place(at).column) for at in (0, 2, 4, 8)] == [
        (1, 1),
        (1, 3),
        (2, 1),
        (3, 1),
    ]


def test_columns_count_characters_not_bytes(tmp_path):
    path = tmp_path / "a.yaml"
    path.write_text("é½𝕏x\n", "utf-8")
    written, _ = open_text(path)
    assert written.place(3).column == 4


@pytest.mark.parametrize(
    ("content", "rule", "line", "column"),
    [
        (b"title: x\nabout: caf\xe9\n", "file-not-utf8", 2, 11),
        (b"\xef\xbb\xbfab\xff\n", "file-not-utf8", 1, 3),
        (b"a\r\nb\r\n\xc3\xa9\xe9\n", "file-not-utf8", 3, 2),
        ("title: x\n".encode("utf-16"), "file-not-utf8", 1, 1),
        (b"", "file-empty", 1, 1),
        (b"\xef\xbb\xbf \n\n", "file-empty", 1, 1),
    ],
)
def test_text_that_can_not_be_read(tmp_path, content, rule, line, column):
    path = tmp_path / "a.yaml"
    path.write_bytes(content)
    written, findings = open_text(path)
    assert written is None
    assert spots(findings) == [(rule, line, column)]
    assert findings[0].hint


def test_the_byte_is_named_with_what_it_meant(tmp_path):
    path = tmp_path / "a.yaml"
    path.write_bytes(b"caf\xe9")
    _, (finding,) = open_text(path)
    assert "0xE9" in finding.message
    assert "é" in finding.message


def test_a_huge_file_is_refused_before_it_is_read(tmp_path):
    path = tmp_path / "huge.yaml"
    with path.open("wb") as stream:
        os.truncate(stream.fileno(), 50_000_000)
    begin = time.process_time()
    written, findings = open_text(path)
    assert written is None
    assert spots(findings) == [("file-too-large", 1, 1)]
    assert time.process_time() - begin < 0.1
    assert MOST_BYTES < 50_000_000


def test_more_lines_than_any_pattern(tmp_path):
    path = tmp_path / "long.yaml"
    path.write_text("x\n" * 30_000, "utf-8")
    written, findings = open_text(path)
    assert written is None
    assert spots(findings) == [("file-too-large", 1, 1)]


@pytest.mark.parametrize("name", ["nothing.yaml", "no/such/folder.yaml", "a\0b"])
def test_a_missing_file(tmp_path, name):
    _, findings = open_text(tmp_path / name)
    assert spots(findings) == [("file-missing", 1, 1)]
    assert findings[0].place.file == str(tmp_path / name)


@pytest.mark.parametrize("name", [".", "x" * 5000])
def test_names_that_are_no_files(tmp_path, name):
    _, findings = open_text(tmp_path / name)
    assert [finding.rule for finding in findings] == ["file-not-readable"]


def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    _, findings = open_text(tmp_path / "pipe")
    assert spots(findings) == [("file-not-readable", 1, 1)]
