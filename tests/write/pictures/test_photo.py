"""Photos made ready for print: what is kept is the picture alone."""

import io
from typing import Any

import pytest
from PIL import Image, ImageCms, PngImagePlugin

from gradegen.read.pictures.faults import PictureFault
from gradegen.write.pictures.photo import sized_photo

LEFT, RIGHT = (250, 20, 20), (20, 20, 250)


def two_halves(size: tuple[int, int] = (400, 300), mode: str = "RGB") -> Image.Image:
    """Red on the left, blue on the right."""
    picture = Image.new("RGB", size, RIGHT)
    picture.paste(LEFT, (0, 0, size[0] // 2, size[1]))
    return picture.convert(mode)


def written(picture: Image.Image, kind: str = "JPEG", **options: Any) -> bytes:
    out = io.BytesIO()
    picture.save(out, kind, **options)
    return out.getvalue()


def read(data: bytes) -> Image.Image:
    picture = Image.open(io.BytesIO(data))
    picture.load()
    return picture


def exif(orientation: int = 1) -> Image.Exif:
    """What a telephone writes: a maker, a time, a place (Exif 2.3, GPS IFD: 1 to 4 are latitude, longitude)."""
    facts = Image.Exif()
    facts[0x0112], facts[0x010F], facts[0x0132] = orientation, "Lanternworks", "2026:05:04 10:00:00"
    facts.get_ifd(0x8825).update({1: "N", 2: (47.0, 30.0, 12.0), 3: "E", 4: (8.0, 15.0, 3.0)})
    return facts


def test_where_and_when_it_was_taken_is_not_kept() -> None:
    xmp = b'<x:xmpmeta xmlns:x="adobe:ns:meta/"><secret/></x:xmpmeta>'
    data = written(two_halves(), exif=exif(), comment=b"from home", xmp=xmp, dpi=(72, 72))
    assert b"Lanternworks" in data
    assert read(data).getexif().get_ifd(0x8825)
    ready, kind = sized_photo(data, (200, 150))
    assert kind == "image/jpeg"
    picture = read(ready)
    assert dict(picture.getexif()) == {}
    assert set(picture.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density", "dpi"}
    assert not any(word in ready for word in (b"Lanternworks", b"Exif", b"from home", b"xmpmeta", b"2026"))


def test_words_in_a_png_are_not_kept() -> None:
    facts = PngImagePlugin.PngInfo()
    facts.add_text("Author", "Lanternworks")
    facts.add_itxt("Comment", "at home")
    ready, kind = sized_photo(written(two_halves(), "PNG", pnginfo=facts, exif=exif()), (200, 150))
    assert kind == "image/png"
    assert read(ready).info == {}


# Exif 2.3, tag Orientation: where the first row and the first column of the picture are
TURNS = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}


@pytest.mark.parametrize("orientation", TURNS)
def test_held_upright(orientation: int) -> None:
    turn = TURNS[orientation]
    held = two_halves() if turn is None else two_halves().transpose(turn)
    ready, _ = sized_photo(written(held, exif=exif(orientation), quality=95), (200, 150))
    picture = read(ready)
    assert picture.size == (200, 150)
    for at, colour in ((20, LEFT), (180, RIGHT)):
        assert all(abs(a - b) < 30 for a, b in zip(picture.getpixel((at, 75)), colour, strict=True))  # type: ignore[arg-type]


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_as_many_pixels_as_asked_and_never_more_than_there_are(kind: str) -> None:
    data = written(two_halves(), kind)
    assert read(sized_photo(data, (120, 90))[0]).size == (120, 90)
    assert read(sized_photo(data, (400, 300))[0]).size == (400, 300)


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGB", "RGBA", "I;16"])
def test_every_mode_of_a_png(mode: str) -> None:
    if mode == "I;16":
        picture = Image.new("I", (40, 30), 65_535 // 2).convert("I;16")
    else:
        picture = two_halves((40, 30), mode if mode != "P" else "RGB").convert(mode)
    ready, _ = sized_photo(written(picture, "PNG"), (40, 30))
    shown = read(ready)
    assert shown.mode in ("L", "RGB")
    if mode == "I;16":
        assert abs(shown.convert("L").getpixel((20, 15)) - 127) < 3  # type: ignore[operator]


def test_the_paper_shows_through() -> None:
    ready, _ = sized_photo(written(Image.new("RGBA", (40, 30), (0, 0, 0, 0)), "PNG"), (40, 30))
    assert read(ready).convert("RGB").getpixel((20, 15)) == (255, 255, 255)
    half, _ = sized_photo(written(Image.new("RGBA", (40, 30), (0, 0, 0, 128)), "PNG"), (40, 30))
    assert read(half).convert("RGB").getpixel((20, 15)) == (127, 127, 127)


def test_four_inks_become_three_colours() -> None:
    ready, kind = sized_photo(written(two_halves(mode="CMYK")), (200, 150))
    assert (read(ready).mode, kind) == ("RGB", "image/jpeg")


def test_another_colour_profile_is_worked_in() -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    same, _ = sized_photo(written(two_halves(), "PNG", icc_profile=profile), (400, 300))
    assert read(same).convert("RGB").getpixel((50, 50)) == LEFT
    assert "icc_profile" not in read(same).info
    broken, _ = sized_photo(written(two_halves(), "PNG", icc_profile=b"no profile"), (400, 300))
    assert read(broken).convert("RGB").getpixel((50, 50)) == LEFT


def test_noise_becomes_a_jpeg_and_lines_stay_sharp() -> None:
    noise = Image.effect_noise((400, 300), 80).convert("RGB")
    assert sized_photo(written(noise, "PNG"), (400, 300))[1] == "image/jpeg"
    assert sized_photo(written(two_halves(), "PNG"), (400, 300))[1] == "image/png"


def test_same_photo_same_bytes() -> None:
    data = written(Image.effect_noise((400, 300), 80).convert("RGB"))
    assert sized_photo(data, (200, 150)) == sized_photo(data, (200, 150))


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_photo_that_ends_too_early(kind: str) -> None:
    data = written(Image.effect_noise((400, 300), 80).convert("RGB"), kind)
    with pytest.raises(PictureFault) as raised:
        sized_photo(data[: len(data) // 2], (200, 150))
    assert raised.value.rule.id == "picture-not-readable"
