"""Style: every choice that shapes a garment, in mm, and nothing that can be computed from another choice.

Glossary
--------
finished   the size on the sewn garment, without allowances
ease       what the garment has more than the body at the same place
waist drop how far the waist seam lies below the body's waist; negative: above it, a raised waist
overlap    the side of the closing that lies on top; the other side is the underlap
turned-up cuff
           a separate cuff, sewn to the bottom edge of the leg and turned up outside

A kind of pocket, hem, band or closing is one small class here or in the file of its pieces; see ``draft/pieces``.
``None`` means "as the drafting method has it" or "follows from the rest"; the field says which.
"""

from __future__ import annotations

from dataclasses import field, fields
from typing import ClassVar, Literal

from draft.choice import Choice, choice, mm, one_of, share, whole, yes_no
from draft.errors import DraftError

Lap = Literal["left_over_right", "right_over_left"]
Sections = Literal["one", "side_seams"]
Fastener = Literal["button", "hook"]
Folds = Literal["darts", "pleats", "tucks", "gathers"]
LONGEST_FLY = 320.0  # on a high waist
HIGHEST_RAISE = 90.0  # a waist seam higher than this above the waist would lie on the ribs of most bodies
PleatDirection = Literal["forward", "reverse"]
LegShape = Literal["straight", "tapered", "wide", "flared", "bell", "breeches", "culottes", "balloon"]


@choice
class Ease(Choice):
    """Ease at whole-body girths and along the crotch seam, in mm.

    waist, hip : None: the method's own (the pattern's report says how much that is).
    thigh : fitted, the least ease: the thigh is never tighter than the measured one and this; None: 25. By formula, the
        ease that it has; None: the method's own.
    front_crotch, back_crotch : what the fit adds to the measured crotch lengths; None: 10 and 15.
    """

    where: ClassVar[str] = "style.ease"

    waist: float | None = mm(None, -60, 300)
    hip: float | None = mm(None, -60, 500)
    thigh: float | None = mm(None, -40, 400)
    front_crotch: float | None = mm(None, -40, 80)
    back_crotch: float | None = mm(None, -40, 120)


@choice
class Leg(Choice):
    """Length and width of the leg.

    inside_leg : finished inseam from fork to hem; None: 160 for shorts, 20 less than the body's for trousers.
    hem : finished girth of the bottom edge of one leg; None: the method's width at that level, for shorts with 10 more
        at each inseam (a shorts leg is straightened so that its hem lies flat; common practice, no source).
    knee : finished knee girth; None: the method's.
    shape : a silhouette by name, which sets hem and knee where they are None: ``"straight"``, ``"tapered"``,
        ``"wide"``, ``"flared"``, ``"bell"``, ``"breeches"``, ``"culottes"`` or ``"balloon"``; None: the method's own
        leg. A body without room for all of it gets the nearest.
    stretch : how much shorter the back inseam is cut than the front, to be stretched in sewing; None: not at all.
    wider : how much wider (negative: narrower) the bottom edge becomes than all this says.
    pressed : whether the crease is marked, to be pressed in front and back.
    """

    where: ClassVar[str] = "style.leg"

    inside_leg: float | None = mm(None, 50, 1150)
    hem: float | None = mm(None, 150, 2000)
    knee: float | None = mm(None, 180, 1500)
    shape: LegShape | None = one_of(
        None, "straight", "tapered", "wide", "flared", "bell", "breeches", "culottes", "balloon"
    )
    stretch: float | None = mm(None, 0, 13)
    wider: float = mm(0.0, -600, 900)
    pressed: bool = yes_no(default=False)


@choice
class Darts(Choice):
    """Waist darts per half.

    front, back : how many.
    front_share, back_share : the part of the panel's waist-to-hip difference that its darts take; None: the intake of
        the method, as far as the body has that difference. What darts do not take goes to the side seams.
    front_length, back_centre_length, back_side_length : from the method's waist line to the point; None: the method's,
        shortened where the hip is near.
    front_as, back_as : how the same cloth is taken up: sewn as ``"darts"``; folded as ``"pleats"``, caught in the band
        only, or as ``"tucks"``, sewn down parallel; or drawn up as ``"gathers"``.
    sewn : how far tucks are sewn down from the waist seam.
    """

    where: ClassVar[str] = "style.darts"

    front: int = whole(0, 0, 1)
    back: int = whole(2, 0, 2)
    front_share: float | None = share()
    back_share: float | None = share()
    front_length: float | None = mm(None, 30, 250)
    back_centre_length: float | None = mm(None, 30, 250)
    back_side_length: float | None = mm(None, 30, 250)
    front_as: Folds = one_of("darts", "darts", "pleats", "tucks", "gathers")
    back_as: Folds = one_of("darts", "darts", "pleats", "tucks", "gathers")
    sewn: float = mm(60.0, 20, 120)


@choice
class WaistShares(Choice):
    """Where the difference between hip and waist goes: shares from 0 to 1 of the whole, which add up to 1.

    side : the side seams, front and back alike.
    front_centre, back_centre : the centre seams, which lean in by as much from the hip up.
    front, back : the darts of the panel, or the pleats, tucks or gathers in their place; pleats of the front take it
        besides the cloth that was spread in for them.

    A pattern's ``waist_shares()`` tells what a method does by itself.

    Examples
    --------
    >>> WaistShares(side=0.5)
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.waist_shares is 1.05, expected shares that add up to 1: side 0.5 + front_centre 0.05
    + back_centre 0.15 + front 0 + back 0.35: take 0.05 away from one of them.
    """

    where: ClassVar[str] = "style.waist_shares"

    side: float = share(0.45)
    front_centre: float = share(0.05)
    back_centre: float = share(0.15)
    front: float = share(0.0)
    back: float = share(0.35)

    def __post_init__(self) -> None:
        super().__post_init__()
        parts = {entry.name: getattr(self, entry.name) for entry in fields(self)}
        over = sum(parts.values()) - 1
        if abs(over) > SHARES_TOL:
            told = " + ".join(f"{name} {value:g}" for name, value in parts.items())
            change = f"take {over:.3g} away from" if over > 0 else f"add {-over:.3g} to"
            expected = f"shares that add up to 1: {told}"
            raise DraftError(self.where, round(1 + over, 4), expected, f"{change} one of them")


SHARES_TOL = 0.001


@choice
class Yoke(Choice):
    """Yoke at the back: the back is parted below the waist, and its darts are turned into that seam.

    centre, side : how far the seam lies below the waist seam at the centre back and at the side. The darts end on it.
    """

    where: ClassVar[str] = "style.yoke"

    centre: float = mm(80.0, 30, 200)
    side: float = mm(45.0, 20, 200)


@choice
class Pleats(Choice):
    """Pleats of the front, in place of its dart; they add cloth from the waist to the knee.

    count : one, on the crease, or two.
    depth, second : cloth that the first and the second take up at the waist.
    direction : ``"forward"``: the fold lies towards the centre front; ``"reverse"``: towards the side.
    sewn : how far down from the waist seam the fold is sewn; the crease is pressed from there.
    """

    where: ClassVar[str] = "style.pleats"

    count: int = whole(1, 1, 2)
    depth: float = mm(35.0, 15, 60)
    second: float = mm(25.0, 15, 50)
    direction: PleatDirection = one_of("reverse", "forward", "reverse")
    sewn: float = mm(30.0, 0, 80)


@choice
class Band(Choice):
    """Base of all ways to finish the waist."""

    where: ClassVar[str] = "style.band"


@choice
class StraightBand(Band):
    """Straight folded waistband.

    depth : finished depth.
    sections : ``"one"`` strip, or ``"side_seams"``: fronts and back joined at the side seams.
    overlap : how far the band runs past the centre front on the side that lies on top.
    underlap : the same underneath; None: the finished width of the fly shield, or 30 with a zip at the side.
    eased : how much longer the trousers' waist edge is than the band it is eased onto.
    button : diameter; the buttonhole follows from it.
    fastener : ``"button"``, or ``"hook"``: a flat hook and bar inside the lap, nothing seen outside.
    """

    depth: float = mm(40.0, 15, 60)
    sections: Sections = one_of("one", "one", "side_seams")
    overlap: float = mm(0.0, 0, 120)
    underlap: float | None = mm(None, 0, 120)
    eased: float = mm(0.0, 0, 30)
    button: float = mm(18.0, 8, 40)
    button_thickness: float = mm(3.0, 0.5, 10)
    fastener: Fastener = one_of("button", "button", "hook")


@choice
class Closing(Choice):
    """Base of all closings."""

    where: ClassVar[str] = "style.closing"

    lap: Lap = one_of("left_over_right", "left_over_right", "right_over_left")


@choice
class FlyFront(Closing):
    """Fly front with zip, separate facing and double (folded) shield.

    width : finished width of the facing; None: 42, less on small bodies. The other widths follow from it when None.
    length : from the waist seam to the zip stop; None: a quarter of the hip less 50, more on a raised waist, within
        the straight of the seam.
    shield_width : finished width of the folded shield.
    beyond : how far facing and shield run past the stop.
    topstitch : distance of the topstitched J from the centre front.
    """

    width: float | None = mm(None, 20, 60)
    length: float | None = mm(None, 40, LONGEST_FLY)
    shield_width: float | None = mm(None, 20, 70)
    facing_beyond: float = mm(20.0, 10, 30)
    shield_beyond: float = mm(25.0, 10, 40)
    topstitch: float | None = mm(None, 12, 50)


@choice
class Pocket(Choice):
    """Base of all front pockets."""

    where: ClassVar[str] = "style.pocket"


@choice
class CurvedPocket(Pocket):
    """Front pocket with a curved mouth, in three pieces: two bags and a facing of the garment's cloth.

    width, depth : from the side seam along the waist, and from the waist down the side seam, to the ends of the mouth;
        None: 100 and 75, less on small bodies.
    bag_depth : from the lower end of the mouth to the bottom of the bag; None: 110, less where the leg is short.
    bag_beyond : how far the bag reaches past the mouth towards the centre at the waist.
    facing_depth : how far the facing reaches under the front beyond the mouth; it lies on the bag, so at most as far.
    mouth_ease : how much looser the front lies over the facing at the waist.
    stay : width of the strip of interfacing along the mouth; None: no strip.
    """

    width: float | None = mm(None, 25, 160)
    depth: float | None = mm(None, 25, 220)
    bag_depth: float | None = mm(None, 40, 220)
    bag_beyond: float = mm(40.0, 25, 90)
    facing_depth: float = mm(30.0, 20, 60)
    mouth_ease: float = mm(0.0, 0, 8)
    stay: float | None = mm(None, 10, 25)

    def __post_init__(self) -> None:
        super().__post_init__()
        if self.facing_depth > self.bag_beyond:
            raise DraftError(
                f"{self.where}.facing_depth",
                self.facing_depth,
                f"at most {self.bag_beyond:g} mm, the bag_beyond: the facing lies on the bag",
                "make the facing narrower or the bag wider",
            )


@choice
class BackPocket(Choice):
    """Base of all back pockets."""

    where: ClassVar[str] = "style.back_pocket"


@choice
class SmallPart(Choice):
    """Base of all small parts."""

    where: ClassVar[str] = "style.small_parts"


@choice
class Hem(Choice):
    """Base of all ways to finish the bottom edge."""

    where: ClassVar[str] = "style.hem"

    @property
    def straight_over(self) -> float:
        """Over how many mm above the bottom edge the seams are turned square to it, so that it is straight; 0: none."""
        return 0.0


@choice
class TurnedCuff(Hem):
    """Separate turned-up cuff, outer and lining, front and back.

    depth : finished depth.
    clearance : how much further out each seam of the outer cuff stands at its top edge, for the thickness of the leg.
    roll : how much lower the lining's top edge is cut, so that the seam rolls inside.
    """

    depth: float = mm(40.0, 15, 120)
    clearance: float = mm(1.0, 0, 3)
    roll: float = mm(1.0, 0, 3)


@choice
class PlainHem(Hem):
    """Turned hem, cut on: `depth` is turned up, `turn` is folded under its raw edge."""

    depth: float = mm(30.0, 10, 80)
    turn: float = mm(10.0, 0, 20)


@choice
class Allowances(Choice):
    """Seam allowance per kind of seam, in mm (common practice)."""

    where: ClassVar[str] = "style.allowances"

    side: float = mm(12.0, 4, 40)
    inseam: float = mm(12.0, 4, 40)
    crotch: float = mm(10.0, 4, 25)
    waist: float = mm(10.0, 4, 25)
    fly: float = mm(10.0, 6, 25)  # the underlapping front is folded 5 beyond the centre front
    mouth: float = mm(10.0, 4, 15)
    bag: float = mm(10.0, 4, 20)
    band: float = mm(10.0, 4, 25)
    cuff: float = mm(10.0, 4, 25)
    yoke: float = mm(10.0, 4, 25)


@choice
class Style(Choice):
    """All choices of one garment.

    Examples
    --------
    >>> Style(leg=Leg(inside_leg="15 cm")).leg.inside_leg
    150.0
    >>> Style(waist_drop=500)
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.waist_drop is 500, expected -90 to 150 mm: choose a value inside these limits.
    """

    name: str = ""
    leg: Leg = field(default_factory=Leg)
    ease: Ease = field(default_factory=Ease)
    waist_drop: float = mm(0.0, -HIGHEST_RAISE, 150)
    darts: Darts = field(default_factory=Darts)
    waist_shares: WaistShares | None = None
    yoke: Yoke | None = None
    pleats: Pleats | None = None
    band: Band = field(default_factory=StraightBand)
    closing: Closing = field(default_factory=FlyFront)
    pocket: Pocket | None = field(default_factory=CurvedPocket)
    back_pocket: BackPocket | None = None
    small_parts: tuple[SmallPart, ...] = ()
    hem: Hem = field(default_factory=TurnedCuff)
    allowances: Allowances = field(default_factory=Allowances)
    interfacing: bool = yes_no(default=True)

    def __post_init__(self) -> None:
        super().__post_init__()
        if not isinstance(self.name, str) or not self.name.isprintable():
            raise DraftError("style.name", self.name, "one line of text", "write a short label, or leave it out")
        if not isinstance(self.small_parts, tuple) or not all(isinstance(p, SmallPart) for p in self.small_parts):
            raise DraftError(
                "style.small_parts", self.small_parts, "a tuple of small parts", "write (draft.BeltLoops(),)"
            )
        kinds = [type(part).__name__ for part in self.small_parts]
        for name in sorted({name for name in kinds if kinds.count(name) > 1 and name not in _SEVERAL}):
            raise DraftError("style.small_parts", kinds, f"one {name} at most", "leave the others out")
        self._check_parts()
        self._check_waist()

    def _check_parts(self) -> None:
        for entry, base in _PARTS.items():
            value = getattr(self, entry)
            if not isinstance(value, base) and not (value is None and entry in _OPTIONAL):
                kinds = [kind.__name__ for kind in base.__subclasses__()] or [base.__name__]
                expected = f"a {' or '.join(kinds)}" + (" or None" if entry in _OPTIONAL else "")
                raise DraftError(f"style.{entry}", value, expected, f"write draft.{kinds[0]}(...)")

    def _check_waist(self) -> None:
        """Choices about the waist that exclude each other."""
        darts = self.darts
        if self.pleats is not None and darts.front_as != "darts":
            expected = "'darts' with pleats, which lie in the place of the front's dart"
            raise DraftError("style.darts.front_as", darts.front_as, expected, "leave one of the two out")
        for name in ("front_share", "back_share"):
            if self.waist_shares is not None and getattr(darts, name) is not None:
                expected = "None with waist_shares, which say it"
                raise DraftError(f"style.darts.{name}", getattr(darts, name), expected, "leave one of the two out")
        if self.back_pocket is not None and darts.back_as != "darts":
            expected = "'darts' with a back pocket, which wants cloth that lies flat"
            raise DraftError("style.darts.back_as", darts.back_as, expected, "leave one of the two out")
        if self.yoke is not None and darts.back_as != "darts":
            raise DraftError(
                "style.darts.back_as",
                darts.back_as,
                "'darts' with a yoke, which closes them",
                "leave one of the two out",
            )
        if self.yoke is not None and self.waist_drop < 0:
            expected = "0 mm or more with a yoke"
            raise DraftError(
                "style.waist_drop", self.waist_drop, expected, "leave the yoke out or do not raise the waist"
            )


_PARTS: dict[str, type[Choice]] = {
    "leg": Leg,
    "ease": Ease,
    "darts": Darts,
    "waist_shares": WaistShares,
    "yoke": Yoke,
    "pleats": Pleats,
    "band": Band,
    "closing": Closing,
    "pocket": Pocket,
    "back_pocket": BackPocket,
    "hem": Hem,
    "allowances": Allowances,
}
_SEVERAL = ("AppliedTape", "BiasBinding")  # kinds of small parts of which a garment may have more than one
_OPTIONAL = ("waist_shares", "yoke", "pleats", "pocket", "back_pocket")
