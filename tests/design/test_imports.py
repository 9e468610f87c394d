"""The nouns import each other one way only, so that each can be read after those it is made of."""

import ast
from graphlib import TopologicalSorter
from pathlib import Path

DESIGN = Path(__file__).resolve().parents[2] / "gradegen" / "design"


def imported(module: Path) -> set[str]:
    nodes = [node for node in ast.walk(ast.parse(module.read_text("utf-8"))) if isinstance(node, ast.ImportFrom)]
    names = [node.module for node in nodes if node.module and node.module.startswith("gradegen.design.")]
    return {name.rpartition(".")[2] for name in names}


def test_nouns_import_each_other_one_way() -> None:
    graph = {module.stem: imported(module) for module in DESIGN.glob("*.py") if module.stem != "__init__"}
    order = list(TopologicalSorter(graph).static_order())  # raises CycleError where two lean on each other
    assert order.index("number") < order.index("passages") < order.index("rows") < order.index("pattern")
