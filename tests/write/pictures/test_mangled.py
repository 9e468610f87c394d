"""Whatever stands in a file called a picture: it is read, or there is one fault, and never anything else."""

import io
from contextlib import suppress
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from gradegen.design.pictures import PictureFile
from gradegen.read.pictures.faults import PictureFault
from gradegen.read.pictures.file import look_at
from gradegen.write.pictures.drawing import clean_drawing
from gradegen.write.pictures.photo import sized_photo

SVG = (
    b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><style>p{fill:url(#g)}</style><g id="a">'
    b'<path d="M0 0h40" style="font-family:x"/></g><use href="#a"/><text x="1">R</text></svg>'
)


def photo(kind: str) -> bytes:
    out = io.BytesIO()
    exif = Image.Exif()
    exif[0x0112] = 6
    Image.linear_gradient("L").resize((40, 30)).save(out, kind, exif=exif)
    return out.getvalue()


WHOLE = st.sampled_from([SVG, photo("JPEG"), photo("PNG"), photo("WEBP")])
CHANGES = st.lists(st.tuples(st.integers(0, 5000), st.binary(max_size=3)), min_size=1, max_size=5)


@settings(
    derandomize=True, max_examples=300, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(WHOLE, CHANGES)
def test_mangled_pictures(tmp_path: Path, data: bytes, changes: list[tuple[int, bytes]]) -> None:
    for at, other in changes:
        at %= len(data)
        data = data[:at] + other + data[at + 2 :]
    path = tmp_path / "picture"
    path.write_bytes(data)
    with suppress(PictureFault):
        file = look_at(path)
        assert isinstance(file, PictureFile)
        assert min(file.across, file.up) > 0
        ready = clean_drawing(data) if file.is_scalable else sized_photo(data, (20, 15))[0]
        assert ready
