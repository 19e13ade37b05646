"""The report of a pattern: where it comes from, what was estimated, what came out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from draft.fitting.worth import most_useful
from draft.table import Table
from draft.units import fmt

if TYPE_CHECKING:
    from draft.pattern import Pattern


def report_text(pattern: Pattern) -> str:
    """Text of the report."""
    method = pattern.method
    parts = [
        pattern.name,
        f"Method: {method.title} ({method.source}).",
        _fit_lines(pattern),
        _ease_line(pattern),
        _shares_line(pattern),
        _alterations(pattern),
        str(_estimates(pattern)),
        str(pattern.measure()),
        str(seam_table(pattern)),
        str(pattern.check()),
        str(cutting_table(pattern)),
        *pattern.garment.notes,
        CAUTION,
    ]
    return "\n\n".join(part for part in parts if part)


CAUTION = (
    "Cutters, irons and needles hurt: cut away from the body, close the blade's guard after every cut, stand the iron "
    "on its heel. Clothes for children carry no loose cords and only firmly sewn buttons, and nightwear has rules "
    "about flammability: the rules of your country come first."
)


def _ease_line(pattern: Pattern) -> str:
    words = []
    for name in ("waist", "hip"):
        asked = getattr(pattern.style.ease, name)
        whose = "as asked" if asked is not None else "the method's own"
        words.append(f"{name} {fmt(pattern.block.ease[name], 1)} mm ({whose})")
    drop = pattern.style.waist_drop
    if drop:
        at_seam = pattern.measure()["waist"] - pattern.body.girth_at(drop)
        where = f"{fmt(drop, 0)} below the waist"
        if drop < 0:
            where = f"{fmt(-drop, 0)} above the waist, where the body's girth is an estimate: measure it"
        words.append(f"waist seam {fmt(at_seam, 1)} mm ({where})")
    thigh = pattern.style.ease.thigh
    own = pattern.measure()["thigh"] - pattern.body.known("thigh")
    whose = "as asked" if thigh is not None else "the method's own"
    if "thigh" in pattern.fit.aims and "thigh" in pattern.shell.floors:
        whose = f"fitted, at least {fmt(pattern.shell.floors['thigh'] - pattern.body.known('thigh'), 0)}"
    words.append(f"thigh {fmt(own, 1)} mm ({whose})")
    return "Ease in cloth: " + ", ".join(words) + "."


def _alterations(pattern: Pattern) -> str:
    if not pattern.alterations:
        return ""
    rows = tuple((str(one), one.spec.cures, one.spec.promise) for one in pattern.alterations)
    return str(Table("Alterations, in this order", ("what", "cures", "promise"), rows))


def _shares_line(pattern: Pattern) -> str:
    shares = pattern.waist_shares()
    if not shares:
        return "Hip and waist are alike: nothing is taken in between them."
    told = ", ".join(f"{name.replace('_', ' ')} {100 * share:.0f} %" for name, share in shares.items())
    return f"The difference between hip and waist goes into: {told}."


def _estimates(pattern: Pattern) -> str:
    rows = tuple((e.field.replace("_", " "), str(e), e.method) for e in pattern.body.estimates)
    if not rows:
        return "No measure was estimated."
    told = [str(Table("Not given, estimated (not used for the draft unless said)", ("measure", "likely", "how"), rows))]
    useful = most_useful(pattern.body)
    if useful is not None:
        told.append(f"Measure next: {useful}.")
    return "\n\n".join(told)


def _fit_lines(pattern: Pattern) -> str:
    sizes, aims = pattern.measure(), pattern.targets()
    if not pattern.measured:
        told = [
            f"{name.replace('_', ' ')}: body {fmt(given, 1)}, pattern {fmt(sizes[name], 1)} mm (not fitted)"
            for name in ("front_crotch", "back_crotch")
            if (given := getattr(pattern.body, name)) is not None
        ]
        return "\n".join(["Fit: formula, the method's own shape.", *told])
    rows = tuple((name.replace("_", " "), fmt(aims[name], 1), fmt(sizes[name], 1)) for name in aims)
    least = "Fit: measured, by the least change of the method's own shape."
    missing = [f for f in ("front_crotch", "back_crotch") if getattr(pattern.body, f) is None]
    if missing:
        least += f" Not measured and left to the formula: {', '.join(missing)}."
    return "\n\n".join([least, str(pattern.fit.change), str(Table("Fitted lengths", ("where", "asked", "got"), rows))])


def seam_table(pattern: Pattern) -> Table:
    """Every seam with its two lengths, the planned ease and what is left over."""
    rows = tuple(
        (s.name, str(s.a), str(s.b), fmt(s.length_a, 1), fmt(s.length_b, 1), fmt(s.ease, 1), fmt(s.difference, 2))
        for s in pattern.seams
    )
    return Table("Seams", ("seam", "a", "b", "a mm", "b mm", "ease", "left over"), rows)


def cutting_table(pattern: Pattern) -> Table:
    """What to cut."""
    rows = tuple((piece.title, str(piece.cut), piece.allowances) for piece in pattern.pieces.values())
    return Table("Cutting list", ("piece", "cut", "allowances"), rows)
