"""What a picture's file is by its content; files come from Pillow, or byte by byte after the published formats."""

import io
import struct
import zlib
from fractions import Fraction
from pathlib import Path

import pytest
from PIL import Image

from gradegen.read.files import open_bytes
from gradegen.read.pictures import file
from gradegen.read.pictures.faults import PictureFault
from gradegen.read.pictures.file import MOST_BYTES, look_at
from gradegen.read.pictures.photo import MOST_PIXELS, photo_size


def written(kind: str, size: tuple[int, int] = (30, 20), **options: object) -> bytes:
    out = io.BytesIO()
    Image.new("RGB", size, "teal").save(out, kind, **options)
    return out.getvalue()


def chunk(name: bytes, body: bytes) -> bytes:
    return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))


def png(wide: int, high: int, *more: bytes) -> bytes:
    """A PNG (ISO/IEC 15948) that says it has so many pixels."""
    head = chunk(b"IHDR", struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0))
    body = chunk(b"IDAT", zlib.compress(bytes(1000)))
    return b"\x89PNG\r\n\x1a\n" + head + b"".join(more) + body + chunk(b"IEND", b"")


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_kind_and_size(kind: str) -> None:
    assert photo_size(written(kind)) == (kind, Fraction(30), Fraction(20))


@pytest.mark.parametrize("orientation", range(1, 9))
def test_held_upright(orientation: int) -> None:
    """Exif 2.3, tag 0x0112: 5 to 8 lie on their side."""
    exif = Image.Exif()
    exif[0x0112] = orientation
    assert photo_size(written("JPEG", exif=exif))[1:] == ((20, 30) if orientation > 4 else (30, 20))


def fault(path: Path) -> str:
    with pytest.raises(PictureFault) as raised:
        look_at(path)
    assert raised.value.hint
    return raised.value.rule.id


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        (b"", "picture-not-readable"),
        (b"hello", "picture-not-readable"),
        (b"\xff\xd8\xff\xe0 and no more", "picture-not-readable"),
        (b"\x89PNG\r\n\x1a\n", "picture-not-readable"),
        (b"RIFF\x10\0\0\0WEBPVP8 ", "picture-not-readable"),
        (written("GIF"), "picture-not-readable"),
        (written("TIFF"), "picture-not-readable"),
        (b"%PDF-1.7", "picture-not-readable"),
        (b"\0\0\0\x18ftypheic\0\0\0\0", "picture-not-readable"),
        (png(60_000, 60_000), "picture-too-large"),
        (png(9_500, 9_500), "picture-too-large"),
        (png(0, 10), "picture-not-readable"),
    ],
)
def test_what_is_no_picture_or_too_much(tmp_path: Path, data: bytes, rule: str) -> None:
    path = tmp_path / "picture.jpg"  # the name says nothing: the content does
    path.write_bytes(data)
    assert fault(path) == rule


def test_a_picture_of_the_wrong_name_is_taken(tmp_path: Path) -> None:
    (tmp_path / "x.jpg").write_bytes(written("PNG"))
    assert look_at(tmp_path / "x.jpg").kind == "PNG"


def test_files_that_are_too_large(tmp_path: Path) -> None:
    with (tmp_path / "x.jpg").open("wb") as file:
        file.write(b"\xff\xd8\xff")
        file.truncate(MOST_BYTES + 1)
    assert fault(tmp_path / "x.jpg") == "picture-too-large"


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_of_a_large_photo_no_more_is_read_than_need_be(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kind: str
) -> None:
    out = io.BytesIO()
    Image.effect_noise((1500, 1500), 90).convert("RGB").save(out, kind, quality=95, lossless=True)
    (tmp_path / "x").write_bytes(out.getvalue())
    asked = []
    monkeypatch.setattr(file, "open_bytes", lambda path, most: asked.append(most) or open_bytes(path, most))
    found = look_at(tmp_path / "x")
    assert (found.kind, found.across, found.up) == (kind, 1500, 1500)
    assert (tmp_path / "x").stat().st_size > 1_000_000
    assert sum(asked) < 1_000_000 or kind == "WEBP"  # which is read as a whole or not at all


def test_a_jpeg_with_much_before_its_size(tmp_path: Path) -> None:
    """Telephones put maps of depth and second pictures there, in segments of 64 KB (ITU-T T.81, APPn)."""
    data = written("JPEG")
    segment = b"\xff\xe5" + struct.pack(">H", 65_535) + bytes(65_533)
    (tmp_path / "x").write_bytes(data[:2] + 12 * segment + data[2:])
    assert look_at(tmp_path / "x").across == 30


def test_a_large_photo_of_today_is_taken() -> None:
    # 48 million pixels: what a telephone of 2026 takes at most as a rule (common knowledge, no source)
    assert MOST_PIXELS > 48_000_000
    assert photo_size(png(8_000, 6_000))[1:] == (8000, 6000)
