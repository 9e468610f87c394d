import pytest

from gradegen.write.voice.aloud import aloud, lists_aloud


@pytest.mark.parametrize(
    ("terms", "written", "said"),
    [
        ("US", "Ch 1, sc in next st.", "Chain 1, single crochet in next stitch."),
        ("UK", "Ch 1, dc in next st.", "Chain 1, double crochet in next stitch."),
        (
            "US",
            "*Sc in next 2 sts, inc in next st; rep from * around.",
            "star: Single crochet in next 2 stitches, increase in next stitch; repeat from the star around.",
        ),
        (
            "US",
            "Ch 3 (counts as dc), (dc, ch 2, dc) in next ch-2 sp.",
            "Chain 3, counts as double crochet, begin group: double crochet, chain 2, double crochet, end group, "
            "in next chain-2 space.",
        ),
        ("US", "Rnds 5–13", "Rounds 5 to 13"),
        ("US", "FPdc around next st", "front post double crochet around next stitch"),
    ],
)
def test_a_row(terms: str, written: str, said: str) -> None:
    assert aloud(written, "UK" if terms == "UK" else "US", is_row=True) == said


def test_lengths() -> None:
    assert aloud("about 1 in (2.5 cm) smaller", "US") == "about 1 inch (2.5 centimetres) smaller"
    assert aloud("each 2¼ in (6 cm)", "US") == "each 2 and a quarter inches (6 centimetres)"


def test_a_part_of_an_inch() -> None:
    assert aloud("flat button, 5/8 in (15 mm)", "US") == "flat button, five eighths of an inch (15 millimetres)"
    assert aloud("½ in (1.5 cm)", "US") == "half an inch (1.5 centimetres)"


def test_in_is_no_inch_where_a_stitch_goes() -> None:
    assert aloud("Ch 1 in next st", "US") == "Chain 1 in next stitch"


def test_a_printed_list_names_its_sizes() -> None:
    said = lists_aloud("You need 315 (343, 371) yd", ("S", "M", "L"))
    assert said == "You need size S: 315; size M: 343; size L: 371 yd"
    assert lists_aloud("2 (2, 3) skeins", ("S", "M", "L")) == "sizes S and M: 2; size L: 3 skeins"
