import pytest

from gradegen.write.page.typeset import hyphened_words, plain_again, typeset

GAP = "\N{NO-BREAK SPACE}"


@pytest.mark.parametrize(
    ("written", "kept"),
    [
        ("work 24 sc around", f"work 24{GAP}sc around"),
        ("ch 3, turn", f"ch{GAP}3, turn"),
        ("Rnds 5-13", f"Rnds{GAP}5–13"),
        ("(90, 96) sts", f"(90, 96){GAP}sts"),
        ("2 FPdc in next 3 sts", f"2{GAP}FPdc in next{GAP}3{GAP}sts"),
        ("join with sl st in first ch", f"join with sl{GAP}st in first ch"),
        ("in ch-2 sp", f"in ch-2{GAP}sp"),
        ("the designer's own", "the designer’s own"),
        ("a 6-dc cluster", "a 6-dc cluster"),
        ("one - two", "one – two"),
    ],
)
def test_what_belongs_together(written: str, kept: str) -> None:
    assert typeset(written) == kept


@pytest.mark.parametrize("text", ["Rnds 5-13: ch 3, sk 2 sts - don't turn.", "24 sc (25, 26) sc", ""])
def test_nothing_changes_its_length(text: str) -> None:
    assert len(typeset(text)) == len(text)


def test_read_back_text_is_comparable() -> None:
    assert plain_again(typeset("Rnds 5-13: don't  turn")) == "Rnds5-13:don'tturn"


def test_words_with_a_hyphen() -> None:
    text = "V-st in next ch-1 sp, 3-dc cluster"
    assert [text[start:end] for start, end in hyphened_words(text)] == ["V-st", "ch-1", "3-dc"]
