"""The product's own data is found in a checkout and in an installed package alike."""

import importlib.util
import sys
from pathlib import Path

import pytest

from gradegen.trade.folders import data_folder


@pytest.mark.parametrize("name", ["sizes", "templates", "shared"])
def test_the_folder_is_there(name):
    assert data_folder(name).is_dir()


def test_an_installed_package_uses_what_it_carries(tmp_path):
    home = tmp_path / "gradegen" / "trade"
    home.mkdir(parents=True)
    source = Path(sys.modules["gradegen.trade.folders"].__file__).read_text("utf-8")
    (home / "folders.py").write_text(source, "utf-8")
    (tmp_path / "gradegen" / "_data" / "sizes").mkdir(parents=True)
    spec = importlib.util.spec_from_file_location("packed_folders", home / "folders.py")
    packed = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(packed)
    assert packed.data_folder("sizes") == tmp_path.resolve() / "gradegen" / "_data" / "sizes"
    assert packed.data_folder("templates") == tmp_path.resolve() / "templates"
