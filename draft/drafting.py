"""From a body and a style to a pattern: the functions a user calls."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from draft.alter.base import Alteration
from draft.altered import altered, checked, on_style, with_length
from draft.assemble import assemble
from draft.block import Block
from draft.body import Body
from draft.errors import DraftError
from draft.fitting.change import Change, changed
from draft.fitting.fit import Fit, checked_fit, fitted, formula_block
from draft.methods.base import Measures, Method, Recipe
from draft.methods.catalogue import method_of
from draft.pattern import Pattern
from draft.shape.build import Garment, shell_of
from draft.shape.shell import Shell
from draft.shape.thigh import thigh_of
from draft.sides import two_sided
from draft.style import Style
from draft.units import at_least, at_most

WIDEST_FORK_CHANGE = 45.0  # how far either fork may be moved out for an asked thigh, mm
NARROWEST_FORK_SHARE = 0.35  # and in, as a share of the front fork's width
THIGH_TOL_MM = 0.05
MOST_THIGH_ROUNDS, MOST_THIGH_MORE_MM = 4, 120.0  # for a leg whose narrow hem takes from the thigh
CROTCH_PARTS = ("front_crotch", "back_crotch")
TIGHT_TOL_MM = 0.2  # how much narrower than asked a fitted thigh may come out


def trousers(
    body: Body,
    style: Style | None = None,
    *,
    method: str | Method | Recipe = "centre_line",
    fit: str = "measured",
    alterations: Sequence[Alteration] = (),
) -> Pattern:
    """Draft trousers.

    Parameters
    ----------
    body : Body
    style : Style, optional
        Choices; all have defaults. Without an inside leg the hem ends 20 mm above the floor.
    method : str, Method or function
        Name of a drafting method (:func:`draft.methods` lists them), or a function ``(measures) -> block`` of your own.
    fit : str
        ``"measured"`` moves the block by the least change until its lengths equal the body's plus ease, as far as they
        were measured; ``"formula"`` leaves the method's own shape.
    alterations : sequence of Alteration
        What was learned from mock-ups, in the order of application (:func:`draft.alterations` lists them). Those of the
        style come first, then the fit, then those of the block.

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
    method: str | Method | Recipe = "centre_line",
    fit: str = "measured",
    alterations: Sequence[Alteration] = (),
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
    garment: Garment,
    body: Body,
    style: Style | None,
    method: str | Method | Recipe,
    fit: str,
    alterations: Sequence[Alteration],
) -> Pattern:
    if not isinstance(body, Body):
        raise DraftError("body", body, "a draft.Body", "write draft.Body(waist=..., hip=..., ...)")
    style = checked_style(style)
    asked = checked(alterations)
    if asked:
        style = on_style(with_length(style, body, garment), asked)
    recipe = method_of(method)
    measured = checked_fit(fit) == "measured"
    found, shell = (_fitted if measured else _by_formula)(recipe, garment, body, style)
    done = altered(found.block, shell, body, style, garment, asked)
    names = (style.name or garment.capitalize(), body.name)
    made_for = " / ".join(name for name in names if name)
    made = assemble(body, style, done.shell, made_for)
    if done.left is not None:
        over = style.closing.lap.partition("_")[0]
        made = two_sided(assemble(body, style, done.left, made_for), made, over, done.why)
    for piece in made.pieces.values():
        piece.cut_line  # noqa: B018 - drawn now, so that an allowance without room is told now
    return Pattern(garment, body, style, recipe, found, measured, done.shell, made, asked, done.block)


def checked_style(style: Style | None) -> Style:
    """Style given, or the default one."""
    style = Style() if style is None else style
    if not isinstance(style, Style):
        raise DraftError("style", style, "a draft.Style", "write draft.Style(...)")
    return style


def _fitted(method: Method, garment: Garment, body: Body, style: Style) -> tuple[Fit, Shell]:
    """Fit and shell; where the leg's seams take from the thigh, the block is fitted to that much more."""
    more = 0.0
    for _ in range(MOST_THIGH_ROUNDS):
        found = fitted(method, [body], style.ease, more)[0]
        shell = shell_of(found.block, body, style, garment)
        wanted = found.aims.get("thigh", 0.0) - more
        short = wanted - thigh_of(shell)
        if short <= TIGHT_TOL_MM or found.reached["thigh"] + short - wanted > MOST_THIGH_MORE_MM:
            break
        more = found.reached["thigh"] + short - wanted
    return found, _aimed(found, shell, style, more)


def _aimed(found: Fit, shell: Shell, style: Style, more_thigh: float) -> Shell:
    """Shell with the aims of the fit among its targets, at the level of the waist seam."""
    aims = {name: aim - style.waist_drop for name, aim in found.aims.items() if name.endswith("_crotch")}
    if len(aims) == len(CROTCH_PARTS):
        aims["crotch"] = sum(aims.values())
    floors = {name: aim - more_thigh for name, aim in found.aims.items() if name == "thigh"}
    return replace(shell, targets={**shell.targets, **aims}, floors=floors)


def _by_formula(method: Method, garment: Garment, body: Body, style: Style) -> tuple[Fit, Shell]:
    """Block of the method; where the style asks for a thigh, with the forks moved until the thigh is met."""
    formula = formula_block(method, Measures.of(body), style.ease)

    def at(fork: float) -> tuple[Fit, Shell]:
        change = Change(front_fork=fork, back_fork=fork)
        block = changed(formula, change) if fork else formula
        return Fit(formula, block, change, {}, {}), shell_of(block, body, style, garment)

    if style.ease.thigh is None:
        return at(0.0)
    wanted = body.known("thigh") + style.ease.thigh
    found, shell = _with_thigh(at, wanted, body, style.ease.thigh)
    return found, replace(shell, targets={**shell.targets, "thigh": wanted})


def _with_thigh(at: Callable[[float], tuple[Fit, Shell]], wanted: float, body: Body, ease: float) -> tuple[Fit, Shell]:
    found = at(0.0)
    block, own = found[0].formula, thigh_of(found[1])
    furthest = WIDEST_FORK_CHANGE if wanted > own else -NARROWEST_FORK_SHARE * _fork_width(block)
    reached, body_thigh = thigh_of(at(furthest)[1]), body.known("thigh")
    if not min(own, reached) <= wanted <= max(own, reached):
        limit = reached - body_thigh
        word = f"at most {at_most(limit, 1)}" if wanted > own else f"at least {at_least(limit, 1)}"
        raise DraftError(
            "style.ease.thigh",
            ease,
            f"{word} mm on this body (the method's own is {own - body_thigh:.0f})",
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
