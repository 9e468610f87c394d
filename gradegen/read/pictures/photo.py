"""Photos and other pictures made of pixels: kind and size from the head of the file, nothing decoded."""

from __future__ import annotations

import io
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from gradegen.read.pictures.faults import NO_PICTURE, TOO_LARGE, PictureFault

if TYPE_CHECKING:
    from PIL.Image import Image

PhotoKind = Literal["JPEG", "PNG", "WEBP"]
MOST_PIXELS = 80_000_000
KINDS: tuple[PhotoKind, ...] = ("JPEG", "PNG", "WEBP")
_ORIENTATION, _TURNED = 0x0112, (5, 6, 7, 8)  # Exif 2.3, tag Orientation: values that exchange width and height


def photo_size(data: bytes) -> tuple[PhotoKind, Fraction, Fraction]:
    """The kind, and width and height in pixels as the photo is held; raises PictureFault."""
    with opened(data) as photo:
        wide, high = photo.size
        turned = lies_on_its_side(photo)
        kind = next(each for each in KINDS if each == _plain_kind(photo.format))
    return (kind, Fraction(high), Fraction(wide)) if turned else (kind, Fraction(wide), Fraction(high))


def lies_on_its_side(photo: Image) -> bool:
    """True where the camera was held upright, so that width and height are exchanged."""
    exif = photo.getexif() if "exif" in photo.info else {}  # else a PNG would be decoded to look for it
    return exif.get(_ORIENTATION) in _TURNED


def _plain_kind(kind: str | None) -> str:
    return "JPEG" if kind == "MPO" else kind or ""  # a JPEG with a second one behind it, as telephones write


@contextmanager
def opened(data: bytes) -> Iterator[Image]:
    """The photo for as long as the block lasts; whatever goes wrong with it there is a PictureFault."""
    from PIL import Image, ImageFile

    lenient, ImageFile.LOAD_TRUNCATED_IMAGES = ImageFile.LOAD_TRUNCATED_IMAGES, False  # the typesetter wants it on
    hint = "Save a smaller copy; 2000 pixels are plenty for a page."
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            with Image.open(io.BytesIO(data), formats=(*KINDS, "MPO")) as photo:
                if photo.width * photo.height > MOST_PIXELS:
                    raise PictureFault(TOO_LARGE, f"has more than {MOST_PIXELS // 1_000_000} million pixels", hint)
                if min(photo.size) < 1:
                    raise PictureFault(NO_PICTURE, "has no pixels", "Save it anew.")
                yield photo
    except PictureFault:
        raise
    except (Image.DecompressionBombError, Image.DecompressionBombWarning, MemoryError):
        raise PictureFault(TOO_LARGE, f"has more than {MOST_PIXELS // 1_000_000} million pixels", hint) from None
    except Exception:  # a damaged file makes the reader of its kind fail in many ways
        raise PictureFault(NO_PICTURE, "is damaged and can't be read to its end", "Save or copy it anew.") from None
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = lenient
