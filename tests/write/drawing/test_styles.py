"""Drawings in the styles of an edition."""

from gradegen.write.drawing.sketch import Sketch
from gradegen.write.drawing.styles import drawings_for


def test_arrows_keep_their_heads_where_fills_are_left_out() -> None:
    """A caption says that the arrows meet; on paper of little ink they had lost their heads."""
    sketch = Sketch()
    sketch.arrow((10, 40), (10, 10))
    sketch.outline([(0, 0), (20, 0), (20, 20)], fill="#dde8e6")
    (drawing,) = drawings_for("low-ink", [sketch.drawing("An arrow", "")])
    line, head, ground = drawing.strokes
    assert (head.fill, head.colour) == ("#000000", "#000000")
    assert line.fill == "none"
    assert ground.fill == "#ffffff"
