from pathlib import Path

import pytest

LINES = 18  # of the small pattern


def test_a_look_in_the_pattern(read_with) -> None:
    pattern, findings = read_with(
        'look: {accent: "#2D5A57", headings: source serif 4, paper: letter, logo: {file: mat.svg, alt: A mat}}\n'
    )
    assert findings == []
    look = pattern.look
    assert (look.accent.lines, look.accent.words) == ("#2d5a57", "#2d5a57")
    assert (look.headings, look.text, look.paper) == ("Source Serif 4", None, "Letter")
    assert (look.logo.alt.text, look.logo.file.kind) == ("A mat", "SVG")


def test_a_look_in_a_file_of_its_own(read_with, folder: Path) -> None:
    (folder / "house").mkdir()
    (folder / "house" / "ours.yaml").write_text(
        "accent: 8a2b4d\ntext: Atkinson Hyperlegible\nlogo: {file: l.svg, alt: L}\n"
    )
    (folder / "house" / "l.svg").write_bytes((folder / "mat.svg").read_bytes())
    pattern, findings = read_with("look: house/ours.yaml\n")
    assert findings == []
    assert pattern.look.accent.words == "#8a2b4d"
    assert pattern.look.text == "Atkinson Hyperlegible"
    assert pattern.look.logo.file.path.name == "l.svg"


def test_faults_of_that_file_stand_in_it(read_with, folder: Path) -> None:
    (folder / "ours.yaml").write_text("accent: teal\nheadings: Comic\nfont: Inter\n")
    pattern, findings = read_with("look: ours.yaml\n")
    found = {(finding.rule, Path(finding.place.file).name, finding.place.line) for finding in findings}
    assert found == {
        ("accent-unreadable", "ours.yaml", 1),
        ("unknown-typeface", "ours.yaml", 2),
        ("unknown-key", "ours.yaml", 3),
    }
    assert {str(folder / "ours.yaml"), str(folder / "mat.yaml")} <= set(pattern.sources)


@pytest.mark.parametrize("name", ["nowhere.yaml", "../outside.svg", "/etc/passwd", "house"])
def test_a_file_that_is_not_there_or_out_of_reach(read_with, name) -> None:
    pattern, (finding,) = read_with(f"look: {name}\n")
    assert (finding.rule, finding.place.line) == ("look-missing", LINES + 1)
    assert pattern.look is None


@pytest.mark.parametrize("colour", ["teal", "#12", "#12345g", "rgb(1,2,3)", "12345678"])
def test_what_is_no_colour(read_with, colour) -> None:
    pattern, (finding,) = read_with(f'look: {{accent: "{colour}"}}\n')
    assert (finding.rule, finding.place.line) == ("accent-unreadable", LINES + 1)
    assert pattern.look.accent is None


def test_a_hash_that_begins_a_remark_is_told(read_with) -> None:
    _, findings = read_with("look:\n  accent: #2d5a57\n")
    assert [(finding.rule, finding.place.line) for finding in findings] == [("value-missing", LINES + 2)]


@pytest.mark.parametrize(
    ("colour", "lines_kept"),
    [("#00a0a0", True), ("#777777", True), ("#ffd500", False), ("#ffffff", False), ("#7fc", False)],
)
def test_a_pale_accent_is_darkened_and_told(read_with, colour, lines_kept) -> None:
    from gradegen.trade.contrast import on_paper, rgb_of

    pattern, (finding,) = read_with(f'look: {{accent: "{colour}"}}\n')
    assert (finding.rule, finding.severity, finding.place.line) == ("accent-too-pale", "warning", LINES + 1)
    assert finding.expected
    assert finding.found
    accent = pattern.look.accent
    assert on_paper(rgb_of(accent.words)) >= 4.5
    assert on_paper(rgb_of(accent.lines)) >= 3
    assert (accent.lines == colour) is lines_kept
    assert accent.words in finding.hint


def test_an_unknown_typeface_is_answered_with_those_there_are(read_with) -> None:
    _, (finding,) = read_with("look: {text: Intre}\n")
    assert finding.rule == "unknown-typeface"
    assert all(name in finding.hint for name in ("Inter", "Source Serif 4", "Atkinson Hyperlegible"))


@pytest.mark.parametrize("file", ["nowhere.svg", "../outside.svg"])
def test_a_logo_is_held_to_the_rules_of_pictures(read_with, file) -> None:
    pattern, (finding,) = read_with(f"look: {{logo: {{file: {file}, alt: A mat}}}}\n")
    assert finding.rule in ("picture-missing", "picture-out-of-reach")
    assert pattern.look.logo.file is None


def test_a_logo_needs_words(read_with) -> None:
    _, (finding,) = read_with("look: {logo: {file: mat.svg}}\n")
    assert (finding.rule, finding.place.line) == ("missing-key", LINES + 1)
