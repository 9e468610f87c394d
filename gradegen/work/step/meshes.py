"""Filet: spaces and blocks, each over one mesh of the row before, open or solid.

A mesh lies between two posts; neighbours share a post, so `3 sp, 4 dc, 2 sp` is three open meshes, a solid one and two
open ones. The chain that begins a row and the stitch behind it are its first open mesh.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from gradegen.design.edge import Target
from gradegen.design.rows import Chain, Definition, Make, Skip, Step, Work, worked
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import space
from gradegen.work.edge.kinds import ANY_SPACE, ANY_STITCH
from gradegen.work.edge.site import Site
from gradegen.work.step.reach import how_many


@dataclass(frozen=True, slots=True)
class Mesh:
    """`chain`: of an open mesh (0: solid). `width`: stitches between the posts. `post`: what is made."""

    chain: int
    width: int
    post: tuple[Make, ...]


def mesh_of(makes: Sequence[Make], site: Site) -> Mesh | None:
    """The mesh that an own stitch such as `sp = ch 2, skip 2, dc in next` stands for; None for any other stitch."""
    definition = site.definitions.get(makes[0].stitch) if len(makes) == 1 else None
    return _explained(definition, site) if definition is not None and not definition.makes else None


def _explained(definition: Definition, site: Site) -> Mesh | None:
    steps = definition.steps
    match steps:
        case (Chain() as chain, Skip() as skip, Work() as work) if len(work.makes) == 1:
            return Mesh(site.number(chain.number), site.number(skip.into.number), work.makes)
        case (Work() as work,) if len(work.makes) == 1 and work.into.which == "each" and work.into.number is not None:
            return Mesh(0, site.number(work.into.number) - 1, work.makes)
    return None


def is_filet(steps: Sequence[Step], site: Site) -> bool:
    """True for a row that counts off open meshes."""
    return any((mesh := mesh_of(work.makes, site)) is not None and mesh.chain for work in worked(steps))


def work_meshes(walk: Walk, step: Work, mesh: Mesh) -> None:
    """So many meshes, or one over each mesh that is left."""
    into = step.into
    each = into.which == "each" and into.number is None
    number = how_many(walk, ANY_SPACE, into.bound, step) if each else walk.site.number(into.number)
    if mesh.chain and number and _begun_by_chain(walk):
        number -= 1
        if len(walk.out) == 2:
            _to_post(walk, mesh, step)
            walk.make(mesh.post)
    for _ in range(number):
        _one(walk, mesh, step)


def _one(walk: Walk, mesh: Mesh, step: Work) -> None:
    _to_post(walk, mesh, step)
    if mesh.chain:
        walk.out.append(space(mesh.chain))
    else:
        walk.make(mesh.post, mesh.width)
    walk.make(mesh.post)


def _to_post(walk: Walk, mesh: Mesh, step: Work) -> None:
    """Over the mesh below, open or solid, to its far post."""
    if walk.site.blind:
        return
    one = walk.cursor.peek()
    is_open = one is not None and ANY_SPACE.fits(one)
    walk.take(ANY_SPACE if is_open else ANY_STITCH, 1 if is_open else mesh.width, step.into.place)
    walk.take(ANY_STITCH, 1, step.into.place)


def _begun_by_chain(walk: Walk) -> bool:
    """True while nothing stands there but the starting chain's own mesh, or one added at a corner."""
    first = walk.out[0] if walk.out else None
    if not isinstance(first, Target) or not first.chain or not 2 <= len(walk.out) <= 3:
        return False
    second = walk.out[1]
    in_corner = len(walk.out) == 3 and any(
        isinstance(step, Work) and any(thing.name == "corner" for thing in step.into.things) for step in walk.ahead[:3]
    )
    return isinstance(second, Target) and second.kind == "sp" and (len(walk.out) == 2 or in_corner)


def work_block(walk: Walk, step: Work) -> bool:
    """`7 dc` in a filet row: two solid meshes behind the post they share; False where it is no such block."""
    number = step.into.number
    if not step.bare or number is None or not walk.out or not is_filet(walk.ahead, walk.site):
        return False
    mesh = next(m for work in worked(walk.ahead) if (m := mesh_of(work.makes, walk.site)) is not None and m.chain)
    count, each = walk.site.number(number), mesh.width + 1
    if len(step.makes) != 1 or step.makes[0].stitch != mesh.post[0].stitch or count < each or count % each > 1:
        return False
    solid = Mesh(0, mesh.width, mesh.post)
    for _ in range(count // each):
        _one(walk, solid, step)
    return True
