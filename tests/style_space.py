"""Table of options for pairwise coverage, and rows that hold every allowed pair of options.

A parameter has named options. An option is a value of the style, or a function of the body where it has to suit its
lengths. The first option of a parameter is the plain one, which goes with nearly everything. Parameters that rules hold
stand first: then fewer rows run into a dead end. To try a new kind on all
others, add one line to `OPTIONS`; where it contradicts another kind by design, add a `Rule` with the reason.

The rows are a 2-way covering array: each pair of options of two parameters that no rule forbids stands in one row at
least. The library allpairspy makes the first rows; where rules lead it into a dead end it leaves pairs out, which
`filled` adds. `coverage` counts the pairs from the table alone, without either.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import combinations, product
from random import Random
from typing import Any

from allpairspy import AllPairs
from zoo import SMALL, STOUT, TALL, TODDLER, VERY_LARGE, WOMAN

import draft

BODIES = (WOMAN, TALL, TODDLER, VERY_LARGE, STOUT, SMALL)
"""Six builds far apart: average, tall, a child of two, very large, a waist larger than the hip, short and slight."""

GARMENTS = {"shorts": draft.shorts, "trousers": draft.trousers}
Option = Any  # a value of the style, or a function of the body that gives one
Row = dict[str, str]
Pair = frozenset[tuple[str, str]]


def _below_knee(body: draft.Body) -> float:
    return body.inside_leg - 0.95 * body.known("knee_height")


def _passes_hip(body: draft.Body) -> draft.Ease:
    return draft.Ease(waist=min(300.0, max(0.0, body.hip - body.waist) + 20), hip=60)


OPTIONS: dict[str, dict[str, Option]] = {
    "hem": {
        "plain": draft.PlainHem(),
        "cuff": draft.TurnedCuff(depth=30),
        "turn-up": draft.CutOnTurnUp(depth=25),
        "faced": draft.FacedHem(depth=30),
        "blind": draft.BlindHem(depth=30),
        "ruffled": draft.RuffledHem(depth=40),
        "knee band": draft.KneeBand(opening=50),
        "vented": draft.VentedHem(depth=20, vent=30, facing=25),
        "elastic": draft.ElasticHem(),
        "gathered": draft.GatheredHem(),
    },
    "length": {
        "shorts": ("shorts", None),
        "brief": ("shorts", lambda body: 0.16 * body.inside_leg),
        "below the knee": ("trousers", _below_knee),
        "trousers": ("trousers", None),
    },
    "band": {
        "straight": draft.StraightBand(underlap=45),
        "straight, tab": draft.StraightBand(overlap=45, eased=10, underlap=40),
        "straight, sections": draft.StraightBand(sections="side_seams"),
        "straight, hook": draft.StraightBand(fastener="hook", underlap=50),
        "contour": draft.ContourBand(),
        "contour, hook": draft.ContourBand(fastener="hook", underlap=40),
        "contour, seam and tab": draft.ContourBand(back="seam", overlap=40, depth=50),
        "faced": draft.FacedWaist(),
        "elastic": draft.ElasticCasing(shorter=0.1),
        "elastic back": draft.ElasticCasing(elastic="back"),
        "drawstring": draft.DrawstringBand(),
        "drawstring, eyelets": draft.DrawstringBand(openings="eyelets", cord=4),
    },
    "closing": {
        "fly": draft.FlyFront,
        "button fly": draft.ButtonFly,
        "grown-on fly": draft.GrownOnFly,
        "side zip": draft.SideZip,
        "lapped side zip": lambda body: _lapped,
        "none": draft.NoClosing,
    },
    "pocket": {
        "none": None,
        "curved": draft.CurvedPocket(),
        "curved, loose": draft.CurvedPocket(mouth_ease=4, stay=15),
        "slanted": draft.SlantedPocket(),
        "slanted, grown on": draft.SlantedPocket(grown_on=True, mouth_ease=4, stay=15),
        "in seam": draft.InSeamPocket(),
        "patch": draft.FrontPatchPocket(),
    },
    "pleats": {
        "none": None,
        "reverse": draft.Pleats(),
        "forward": draft.Pleats(direction="forward", sewn=0),
        "two": draft.Pleats(count=2, sewn=60),
    },
    "shape": {
        "own": None,
        **{name: name for name in ("straight", "tapered", "wide", "flared", "bell", "breeches", "culottes", "balloon")},
    },
    "stretch": {"none": None, "stretched": lambda body: 0.0012 * body.inside_leg},
    "ease": {
        "own": draft.Ease(),
        "close": draft.Ease(waist=0, hip=30),
        "roomy": draft.Ease(waist=25, hip=110, thigh=90),
        "passes the hip": _passes_hip,
    },
    "drop": {
        "natural": 0.0,
        "low": lambda body: 0.12 * body.waist_to_hip,
        "lower": lambda body: 0.22 * body.waist_to_hip,
        "raised": lambda body: -0.2 * body.waist_to_hip,
    },
    "darts": {
        "two back": draft.Darts(),
        "one back": draft.Darts(back=1),
        "front and back": draft.Darts(front=1, back=2),
        "none": draft.Darts(front=0, back=0),
        "back pleats": draft.Darts(back_as="pleats"),
        "tucks": draft.Darts(front=1, front_as="tucks", back_as="tucks", sewn=40),
        "gathers": draft.Darts(front=1, front_as="gathers", back_as="gathers"),
        "short": lambda body: draft.Darts(
            back=2, back_centre_length=0.6 * body.waist_to_hip, back_side_length=0.5 * body.waist_to_hip
        ),
    },
    "shares": {
        "the method's": None,
        "asked": draft.WaistShares(),
        "without darts": draft.WaistShares(side=0.6, front_centre=0.1, back_centre=0.3, back=0.0),
    },
    "yoke": {
        "none": None,
        "yoke": lambda body: draft.Yoke(centre=0.4 * body.waist_to_hip, side=0.25 * body.waist_to_hip),
    },
    "crease": {"as it falls": False, "pressed": True},
    "lap": {"left": "left_over_right", "right": "right_over_left"},
    "back pocket": {
        "none": None,
        "patch": draft.PatchPocket(),
        "patch, flap": draft.PatchPocket(shape="rounded", flap=True),
        "patch, flap and button": draft.PatchPocket(flap=True, flap_button=10),
        "welt": draft.WeltPocket(),
        "two welts": draft.WeltPocket(welts=2),
    },
    "loops": {"none": (), "loops": (draft.BeltLoops(),)},
    "straps": {"none": (), "straps": (draft.StrapTab(),)},
    "braces": {"none": (), "braces": (draft.Braces(),)},
    "lining": {"none": (), "full": (draft.Lining(),), "half": (draft.Lining(length="half", below_fork=50),)},
    "coin pocket": {"none": (), "coin": (draft.CoinPocket(),)},
    "tape": {
        "none": (),
        "side": lambda body: (
            draft.AppliedTape(on="back", along="side", distance=20, width=6, start=0.15 * body.inside_leg),
        ),
        "hem": (draft.AppliedTape(on="front", along="hem", distance=15, width=5),),
    },
    "binding": {"none": (), "bound": (draft.BiasBinding(),)},
    "allowances": {
        "usual": draft.Allowances(),
        "narrow": draft.Allowances(side=6, inseam=6, crotch=6, waist=6, fly=6, mouth=5, bag=6, band=6, cuff=6),
        "wide": draft.Allowances(side=25, inseam=25, crotch=14, waist=14, fly=14, mouth=12, bag=14, band=14, cuff=14),
    },
    "interfacing": {"with": True, "without": False},
}
SMALL_PARTS = ("loops", "straps", "braces", "lining", "coin pocket", "tape", "binding")


def _lapped(*, lap: str) -> draft.SideZip:
    return draft.SideZip(lap=lap, insertion="lapped")  # type: ignore[arg-type]


@dataclass(frozen=True)
class Rule:
    """Options that no body can have together: for each parameter the names that clash; and why."""

    why: str
    clash: Mapping[str, tuple[str, ...]]

    def forbids(self, row: Mapping[str, str]) -> bool:
        """Whether a row, which need not be complete, holds the clash."""
        return all(row.get(name) in options for name, options in self.clash.items())


def others(parameter: str, *names: str) -> tuple[str, ...]:
    """All options of a parameter but these."""
    return tuple(option for option in OPTIONS[parameter] if option not in names)


SIDE_ZIPS = ("side zip", "lapped side zip")
STRAIGHT = ("straight", "straight, tab", "straight, sections", "straight, hook")
BACK_FOLDS = ("back pleats", "tucks", "gathers")
RULES: tuple[Rule, ...] = (
    Rule(
        "a zip in the side seam asks for a band that opens there",
        {
            "closing": SIDE_ZIPS,
            "band": (
                "contour, seam and tab",
                "faced",
                "elastic",
                "elastic back",
                "drawstring",
                "drawstring, eyelets",
            ),
        },
    ),
    Rule(
        "a zip in the side seam asks for a pocket that leaves this seam whole",
        {"closing": SIDE_ZIPS, "pocket": ("curved", "curved, loose", "slanted", "slanted, grown on", "in seam")},
    ),
    Rule("a lapped zip has the front over it", {"closing": ("lapped side zip",), "lap": ("right",)}),
    Rule("a straight band has a button and asks for a closing that opens", {"closing": ("none",), "band": STRAIGHT}),
    Rule("a patch on the front would stitch pleats shut", {"pocket": ("patch",), "pleats": others("pleats", "none")}),
    Rule("a knee band sits below the knee", {"hem": ("knee band",), "length": others("length", "below the knee")}),
    Rule("what hangs below a full leg would trail", {"hem": ("ruffled", "gathered"), "length": ("trousers",)}),
    Rule("a waist that passes the hip leaves darts no share", {"ease": ("passes the hip",), "shares": ("asked",)}),
    Rule("without a closing the waist passes the hip, as above", {"closing": ("none",), "shares": ("asked",)}),
    Rule(
        "pleats lie where the front's folds would",
        {"pleats": others("pleats", "none"), "darts": ("tucks", "gathers")},
    ),
    Rule("a yoke closes darts, not folds", {"yoke": ("yoke",), "darts": BACK_FOLDS}),
    Rule("a yoke begins at the natural waist", {"yoke": ("yoke",), "drop": ("raised",)}),
    Rule("a back pocket wants flat cloth", {"back pocket": others("back pocket", "none"), "darts": BACK_FOLDS}),
    Rule("darts that take a share have to exist", {"shares": ("asked",), "darts": ("none",)}),
    Rule(
        "a coin pocket lies on the facing of a front pocket",
        {"coin pocket": ("coin",), "pocket": ("none", "in seam", "patch")},
    ),
    Rule("a zip in the side seam leaves no such facing", {"coin pocket": ("coin",), "closing": SIDE_ZIPS}),
)


def forbidden(row: Mapping[str, str]) -> Rule | None:
    """First rule that forbids a row, complete or not."""
    return next((rule for rule in RULES if rule.forbids(row)), None)


def _most_ruled_first() -> list[str]:
    """Parameters in the order of choosing: with those first that rules hold, fewer rows run into a dead end."""
    return sorted(OPTIONS, key=lambda name: sum(name in rule.clash for rule in RULES), reverse=True)


@cache
def covering_rows() -> tuple[Row, ...]:
    """Rows that hold every allowed pair; the same in every process."""
    names = list(OPTIONS)
    values = [list(OPTIONS[name]) for name in names]

    def allowed(begun: list[str]) -> bool:
        return forbidden(dict(zip(names, begun, strict=False))) is None

    rows = [dict(zip(names, made, strict=True)) for made in AllPairs(values, filter_func=allowed)]
    _, lacking = coverage(rows)
    while lacking:
        row = filled(min(lacking, key=sorted), lacking)
        if row is None:
            break  # the count of the pairs then tells which pair no row can hold
        rows.append(row)
        lacking -= pairs_of(row)
    return tuple(rows)


def filled(pair: Pair, lacking: set[Pair]) -> Row | None:
    """Row that holds a pair and many of the lacking ones; None where the rules forbid every row with it."""
    row = dict(pair)
    for name in _most_ruled_first():
        if name not in row:
            allowed = [option for option in OPTIONS[name] if forbidden({**row, name: option}) is None]
            if not allowed:
                return None
            row[name] = max(allowed, key=lambda option: len(pairs_of({**row, name: option}) & lacking))
    return {name: row[name] for name in OPTIONS}


def pairs_of(row: Mapping[str, str]) -> set[Pair]:
    """All pairs of options in a row."""
    return {frozenset(two) for two in combinations(row.items(), 2)}


def allowed_pairs() -> set[Pair]:
    """All pairs that no rule forbids, counted from the table alone."""
    found = set()
    for (a, ones), (b, twos) in combinations(OPTIONS.items(), 2):
        for one, two in product(ones, twos):
            if forbidden({a: one, b: two}) is None:
                found.add(frozenset({(a, one), (b, two)}))
    return found


def coverage(rows: Iterable[Mapping[str, str]]) -> tuple[float, set[Pair]]:
    """Percentage of the allowed pairs that the rows hold, and the pairs they lack."""
    wanted = allowed_pairs()
    lacking = wanted.difference(*(pairs_of(row) for row in rows))
    return 100 * (1 - len(lacking) / len(wanted)), lacking


def option(row: Mapping[str, str], parameter: str, body: draft.Body) -> Any:
    """Value of a parameter in a row, for a body."""
    return _for_body(OPTIONS[parameter][row[parameter]], body)


def _for_body(value: Option, body: draft.Body) -> Any:
    return value(body) if callable(value) and not isinstance(value, type) else value


def style_of(row: Mapping[str, str], body: draft.Body) -> draft.Style:
    """Style of a row, with the lengths that suit a body."""

    def of(parameter: str) -> Any:
        return option(row, parameter, body)

    _, inside_leg = of("length")
    return draft.Style(
        leg=draft.Leg(
            inside_leg=_for_body(inside_leg, body), shape=of("shape"), stretch=of("stretch"), pressed=of("crease")
        ),
        ease=of("ease"),
        waist_drop=of("drop"),
        darts=of("darts"),
        waist_shares=of("shares"),
        yoke=of("yoke"),
        pleats=of("pleats"),
        closing=of("closing")(lap=of("lap")),
        band=of("band"),
        pocket=of("pocket"),
        back_pocket=of("back pocket"),
        hem=of("hem"),
        small_parts=sum((of(part) for part in SMALL_PARTS), ()),
        allowances=of("allowances"),
        interfacing=of("interfacing"),
    )


def drafted(row: Mapping[str, str], body: draft.Body) -> draft.Pattern:
    """Pattern of a row for a body."""
    garment, _ = option(row, "length", body)
    return GARMENTS[garment](body, style_of(row, body))


PLAIN: Row = {name: next(iter(options)) for name, options in OPTIONS.items()}
TRIES = 12  # of a replacement row, before a pair is given up


def completed(begun: Mapping[str, str]) -> Row | None:
    """Row of a few options and otherwise the plainest ones that no rule forbids; None where there is none."""
    row = dict(begun)
    for name in _most_ruled_first():
        if name not in row:
            allowed = (option for option in OPTIONS[name] if forbidden({**row, name: option}) is None)
            option = next(allowed, None)
            if option is None:
                return None
            row[name] = option
    return {name: row[name] for name in OPTIONS}


def replacements(pair: Pair, among: Iterable[Pair]) -> Iterable[Row]:
    """Rows to try for a pair that no pattern shows yet, the same each time.

    The first ones take up some of the other pairs as well; then come the plain row and rows with a few changes of it.
    """
    rng = Random(str(sorted(pair)))
    lacking = sorted(among, key=sorted)
    begun = []
    for most in (6, 3):
        row = dict(pair)
        for other in rng.sample(lacking, min(most, len(lacking))):
            if not set(row) & set(dict(other)):
                row.update(dict(other))
        begun.append(row)
    begun.append(dict(pair))
    for _ in range(TRIES - 3):
        changed = {name: rng.choice(list(OPTIONS[name])) for name in rng.sample(list(OPTIONS), 4)}
        begun.append({**changed, **dict(pair)})
    rows = (completed(row) for row in begun if forbidden(row) is None)
    yield from (row for row in rows if row is not None)
