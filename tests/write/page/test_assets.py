from pathlib import Path

import pytest

from gradegen.write.page.assets import BASE, KINDS, OURS, PageFiles, Refused, fonts

SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="9" height="9"/></svg>'


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    inside = tmp_path / "pattern"
    inside.mkdir()
    (inside / "swatch.svg").write_text(SVG)
    (inside / "swatch one.svg").write_text(SVG)
    (inside / "notes.txt").write_text("private")
    (tmp_path / "secret.svg").write_text(SVG)
    (inside / "link.svg").symlink_to(tmp_path / "secret.svg")
    return inside


@pytest.mark.parametrize("name", ["swatch.svg", "swatch%20one.svg", "./swatch.svg"])
def test_files_beside_the_pattern_are_served(folder: Path, name: str) -> None:
    assert PageFiles(folder).open(BASE + name) == (SVG.encode(), "image/svg+xml")


@pytest.mark.parametrize(
    "address",
    [
        BASE + "../secret.svg",
        BASE + "%2e%2e/secret.svg",
        BASE + "..%2fsecret.svg",
        BASE + "link.svg",
        BASE + "notes.txt",
        BASE + "missing.svg",
        BASE + "",
        BASE + "%00.svg",
        "file:///etc/passwd",
        "file:///pattern",
        "http://127.0.0.1:9/x.svg",
        "ftp://127.0.0.1/x.svg",
        OURS + "fonts/../../secret.svg",
        OURS + "pattern.css",
        "",
    ],
)
def test_everything_else_is_refused(folder: Path, address: str) -> None:
    files = PageFiles(folder)
    with pytest.raises(Refused):
        files.open(address)
    assert len(files.refused) == 1
    assert str(folder) not in files.refused[0]


def test_a_file_outside_by_its_real_path_is_refused(folder: Path) -> None:
    with pytest.raises(Refused):
        PageFiles(folder).open((folder / "swatch.svg").as_uri())


def test_large_files_are_refused(folder: Path) -> None:
    with (folder / "large.png").open("wb") as large:
        large.truncate(20_000_001)
    with pytest.raises(Refused, match="20 MB"):
        PageFiles(folder).open(BASE + "large.png")


def test_our_fonts_are_served(folder: Path) -> None:
    for name in fonts():
        data, kind = PageFiles(folder).open(OURS + name)
        assert data[:4] == b"\x00\x01\x00\x00"  # TrueType outlines: OpenType specification, table directory
        assert kind == "font/ttf"


def test_no_kind_can_hold_a_page_or_a_script() -> None:
    assert not {".html", ".htm", ".js", ".pdf", ".xml", ".yaml"} & set(KINDS)
