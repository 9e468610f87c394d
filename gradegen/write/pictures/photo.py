"""A photo made ready for print: upright, as many pixels as paper shows, sRGB, and nothing but the picture itself."""

from __future__ import annotations

import io
from contextlib import suppress
from typing import TYPE_CHECKING

from gradegen.read.pictures.photo import lies_on_its_side, opened

if TYPE_CHECKING:
    from PIL.Image import Image

_QUALITY = 86
_PLAIN = 2  # a picture without camera noise stays lossless while that takes no more than so many times a JPEG


def sized_photo(data: bytes, pixels: tuple[int, int]) -> tuple[bytes, str]:
    """The bytes and their kind, at most so many pixels across and up as it is held; raises PictureFault.

    Where and when it was taken, and with what, stays out: the picture is drawn anew and written without it.
    """
    from PIL import ImageOps

    with opened(data) as photo:
        kind, profile = photo.format, photo.info.get("icc_profile")
        held = pixels[::-1] if lies_on_its_side(photo) else pixels
        photo.draft(None, held)  # a JPEG is decoded no larger than it must be
        sized = photo if photo.size == held else _resized(photo, held)
        if "exif" in photo.info:
            sized.info["exif"] = photo.info["exif"]
        flat = _on_paper(_in_srgb(ImageOps.exif_transpose(sized), profile))
    jpeg = _written(flat, "JPEG")
    if kind == "PNG":
        png = _written(flat, "PNG")
        if len(png) <= _PLAIN * len(jpeg):
            return png, "image/png"
    return jpeg, "image/jpeg"


def _resized(photo: Image, size: tuple[int, int]) -> Image:
    """So many pixels; what is no shade of grey or colour is made one first, so that shades can lie between."""
    from PIL import Image

    if photo.mode == "1":
        photo = photo.convert("L")
    elif photo.mode in ("P", "PA"):
        photo = photo.convert("RGBA" if "transparency" in photo.info else "RGB")
    return photo.resize(size, Image.Resampling.LANCZOS, reducing_gap=2.0)


def _on_paper(photo: Image) -> Image:
    """The photo in grey or red, green and blue; where it is see-through, the paper shows."""
    from PIL import Image

    if photo.mode.startswith("I;16") or photo.mode in ("I", "F"):  # sixteen bits of grey
        photo = photo.convert("I").point(lambda value: value / 256).convert("L")
    if photo.mode in ("RGBA", "LA", "PA") or "transparency" in photo.info:
        seen = photo.convert("RGBA")
        paper = Image.new("RGBA", seen.size, (255, 255, 255, 255))
        return Image.alpha_composite(paper, seen).convert("RGB")
    return photo if photo.mode == "L" else photo.convert("RGB")


def _in_srgb(photo: Image, profile: bytes | None) -> Image:
    """The colours as the camera meant them, since its own colour profile is not kept."""
    if profile and photo.mode in ("RGB", "CMYK"):
        from PIL import ImageCms

        with suppress(ImageCms.PyCMSError, OSError, ValueError):
            own, common = ImageCms.ImageCmsProfile(io.BytesIO(profile)), ImageCms.createProfile("sRGB")
            return ImageCms.profileToProfile(photo, own, common, outputMode="RGB") or photo
    return photo


def _written(photo: Image, kind: str) -> bytes:
    """A file of this kind that holds pixels alone."""
    from PIL import Image

    bare = Image.frombytes(photo.mode, photo.size, photo.tobytes())
    out = io.BytesIO()
    options = {"quality": _QUALITY, "subsampling": 0} if kind == "JPEG" else {"compress_level": 9}
    bare.save(out, kind, **options)
    return out.getvalue()
