from gradegen.write.drawing.sketch import Sketch, arc_points, number, path_of, room_for


def test_coordinates_are_written_short_and_alike() -> None:
    assert [number(value) for value in (0.0, -0.04, 3.0, 2.25, -7.96)] == ["0", "-0.04", "3", "2.25", "-7.96"]
    assert path_of([(0, 0), (3, 1.25)], closed=True) == "M0 0 L3 1.25 Z"


def test_half_an_ellipse() -> None:
    points = arc_points((10, 5), 4, 2, 0, 180, steps=2)
    assert [(round(x, 6), round(y, 6)) for x, y in points] == [(14, 5), (10, 7), (6, 5)]


def test_room_for_lettering_grows_with_its_length() -> None:
    assert room_for("AB") == 2 * room_for("A")
    assert room_for("A", 16) == 2 * room_for("A", 8)


def test_the_sheet_holds_all_that_is_drawn() -> None:
    sketch = Sketch()
    sketch.line([(0, -20), (5, 30)])
    sketch.write("A", (0, 50))
    left, top, wide, high = map(float, sketch.drawing("shows", "caption").box.split())
    assert (left, wide) == (0, 470)
    assert top <= -20
    assert top + high >= 50
