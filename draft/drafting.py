"""From a body and a style to a pattern: the functions a user calls."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from draft.assemble import assemble
from draft.block import Block
from draft.body import Body
from draft.errors import DraftError
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.measure import THIGH_BELOW_CROTCH
from draft.methods import method_named
from draft.methods.base import Measures, MethodEase
from draft.pattern import Pattern
from draft.shape.build import Garment, shell_of
from draft.shape.shell import Shell
from draft.style import Style

Fit = Literal["formula", "measured"]
WIDEST_FORK_CHANGE = 45.0  # how far either fork may be moved out for the thigh, mm
NARROWEST_FORK_SHARE = 0.35  # and in, as a share of the front fork's width
THIGH_TOL_MM = 0.05


def trousers(
    body: Body,
    style: Style | None = None,
    *,
    method: str = "centre_line",
    fit: str = "formula",
    alterations: Sequence[object] = (),
) -> Pattern:
    """Draft trousers.

    Parameters
    ----------
    body : Body
    style : Style, optional
        Choices; all have defaults. Without an inside leg the hem ends 20 mm above the floor.
    method : str
        Drafting method; ``"centre_line"``.
    fit : str
        ``"formula"`` leaves the method's own shape. ``"measured"`` is not available in this version.
    alterations : sequence
        None are available in this version.

    Raises
    ------
    DraftError
        For a wrong input, or a choice for which this body has no room.

    Examples
    --------
    >>> import draft
    >>> body = draft.Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
    >>> pattern = draft.trousers(body)
    >>> pattern.check()
    []
    """
    return _draft("trousers", body, style, method, fit, alterations)


def shorts(
    body: Body,
    style: Style | None = None,
    *,
    method: str = "centre_line",
    fit: str = "formula",
    alterations: Sequence[object] = (),
) -> Pattern:
    """Draft shorts: as :func:`trousers`, but without an inside leg in the style it is 160 mm.

    Examples
    --------
    >>> import draft
    >>> body = draft.Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
    >>> round(draft.shorts(body).measure()["waist"])
    750
    """
    return _draft("shorts", body, style, method, fit, alterations)


def _draft(
    garment: Garment, body: Body, style: Style | None, method: str, fit: str, alterations: Sequence[object]
) -> Pattern:
    if not isinstance(body, Body):
        raise DraftError("body", body, "a draft.Body", "write draft.Body(waist=..., hip=..., ...)")
    style = Style() if style is None else style
    if not isinstance(style, Style):
        raise DraftError("style", style, "a draft.Style", "write draft.Style(...)")
    if fit not in ("formula", "measured"):
        raise DraftError("fit", fit, "'formula' or 'measured'", "choose 'formula'")
    if fit == "measured":
        raise DraftError(
            "fit",
            fit,
            "'formula'",
            "this version keeps the method's own shape and does not yet move it to the measured crotch lengths",
        )
    if alterations:
        raise DraftError("alterations", alterations, "none", "this version has no alterations yet")
    block, shell = _block_and_shell(garment, body, style, method)
    names = (style.name or garment.capitalize(), body.name)
    made_for = " / ".join(name for name in names if name)
    made = assemble(body, style, shell, made_for)
    for piece in made.pieces.values():
        piece.cut_line  # noqa: B018 - drawn now, so that an allowance without room is told now
    return Pattern(garment, body, style, block, shell, made)


def _block_and_shell(garment: Garment, body: Body, style: Style, method: str) -> tuple[Block, Shell]:
    """Block of the method; where the style asks for a thigh, with the fork moved until the thigh is met."""
    recipe, measures = method_named(method), Measures.of(body)

    def at(fork: float) -> tuple[Block, Shell]:
        block = recipe.draft(measures, MethodEase(style.ease.waist, style.ease.hip, fork))
        return block, shell_of(block, body, style, garment)

    found = block, shell = at(0.0)
    if style.ease.thigh is None:
        return found
    body_thigh = body.known("thigh")
    wanted = body_thigh + style.ease.thigh
    own = thigh_of(shell)
    furthest = WIDEST_FORK_CHANGE if wanted > own else -NARROWEST_FORK_SHARE * _fork_width(block)
    reached = thigh_of(at(furthest)[1])
    if not min(own, reached) <= wanted <= max(own, reached):
        word = "at most" if wanted > own else "at least"
        raise DraftError(
            "style.ease.thigh",
            style.ease.thigh,
            f"{word} {reached - body_thigh:.1f} mm on this body (the method's own is {own - body_thigh:.0f})",
            "choose another ease, or another hip ease first",
        )
    # Between the method's fork and the furthest one the thigh grows almost evenly: regula falsi.
    near, near_thigh, far, far_thigh = 0.0, own, furthest, reached
    for _ in range(12):
        fork = near + (far - near) * (wanted - near_thigh) / (far_thigh - near_thigh or 1.0)
        found = at(fork)
        thigh = thigh_of(found[1])
        if abs(thigh - wanted) < THIGH_TOL_MM:
            break
        if (thigh < wanted) == (near_thigh < wanted):
            near, near_thigh = fork, thigh
        else:
            far, far_thigh = fork, thigh
    return found


def _fork_width(block: Block) -> float:
    return block.front.fork.real - block.front.hip_centre.real


def thigh_of(shell: Shell) -> float:
    """Thigh girth of a shell, 25 mm below the crotch line."""
    y = shell.levels["crotch"] - THIGH_BELOW_CROTCH
    return sum(_x_at(panel.inseam, y) - _x_at(panel.side, y) for panel in (shell.front, shell.back))


def _x_at(path: Path, y: float) -> float:
    return float(path.point_at(meet_line(path, 1j * y, 1 + 0j)[0]).real)
