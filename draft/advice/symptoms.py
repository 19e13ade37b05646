"""The vocabulary: what can be seen in a mock-up, in words of the trade, and which alterations may cure it.

What a noted amount is (`Symptom.noted`):

girth   cloth to take out or let in around the body
leg     the same around one leg
length  cloth to take out or let in along the body
shift   how far a line lies off its place, or an opened seam gapes, on either half
none    there is nothing to pin
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from draft.advice.causes import CAUSES
from draft.table import Table


@dataclass(frozen=True)
class Cure:
    """An alteration for a symptom: its ``by`` is the noted cloth times ``factor``.

    ``weight``: 3 the usual cause, 2 a frequent one, 1 a possible one. A factor of 0 or -0 says that the amount does not
    follow from this note, only its sign.
    """

    alteration: str
    weight: int
    factor: float = 1.0


@dataclass(frozen=True)
class Symptom:
    """Something seen: its name, what it looks like, where, what is noted of it (see above), and its cures."""

    name: str
    looks: str
    where: str
    noted: str
    cures: tuple[Cure, ...]
    advice: str = ""


class Symptoms(tuple[Symptom, ...]):
    """All symptoms; prints as a table."""

    __slots__ = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Names of all of them."""
        return tuple(symptom.name for symptom in self)

    def table(self) -> Table:
        """Name, look, place and amount, one row each."""
        rows = tuple((s.name, s.looks, s.where, s.noted) for s in self)
        return Table(f"Symptoms: {len(self)}", ("name", "what it looks like", "where", "amount noted"), rows)

    def __str__(self) -> str:
        return str(self.table())

    def _repr_html_(self) -> str:
        return self.table().html()


def symptoms() -> Symptoms:
    """All symptoms that :func:`draft.advise` knows.

    Returns
    -------
    Symptoms
        A tuple that prints as a table; ``names`` lists the names.

    Examples
    --------
    >>> symptoms().names[4]
    'gapes at centre back'
    >>> next(s.looks for s in symptoms() if s.name == "fly bubbles")
    'The closed fly stands out in a bubble.'
    """
    return Symptoms(SYMPTOMS.values())


def _cures(text: str) -> tuple[Cure, ...]:
    """Cures written as ``name weight factor``, parted by commas; factor 1 and weight 1 may be left out."""
    found = []
    for entry in text.split(","):
        name, *numbers = entry.split()
        weight, factor = (*numbers, *("1", "1")[len(numbers) :])
        found.append(Cure(name, int(weight), float(factor)))
    return tuple(sorted(found, key=lambda cure: (-cure.weight, CAUSES[cure.alteration].step)))


# name | what it looks like | where | noted | alteration weight factor, ...
# Girth D: either half takes D/2 of it (geometry). A crotch lowered by k lengthens the crotch seam by about 2k, a fork
# moved by e by about e (read, from geometry). The darts of one back are taken together.
_WORDS = """
too tight all over | Cloth strains across hip and thigh, pockets stand open, sitting is hard. | hip and thigh | girth \
| all_girths 3, hip_ease 1
too loose all over | Upright folds all round, cloth hangs off the body. | hip and thigh | girth \
| all_girths 3 -1, hip_ease 1 -1
waist too tight | The band does not close though the hip is right. | waist | girth \
| waist_ease 3, raise_waist 1 0
waist too loose | The band stands off all round though the hip is right. | waist | girth \
| waist_ease 3 -1, raise_waist 1 -0
gapes at centre back | The band stands off at the centre back and lies flat elsewhere. | centre back | girth \
| let_out_centre_back 3 -1, widen_back_darts 3 0.5, side_to_centre_back 2 -0.5, waist_ease 2 -1, contour_band 1, \
  sway_back 1 0
waist too big at the side, too small at the centre front | A fold at the side, strain at the centre front. \
| front waist | girth | side_to_centre_front 3 0.5, full_abdomen 1 0
waist too big at the side, too small at the centre back | A fold at the side, strain at the centre back. \
| back waist | girth | side_to_centre_back 3 0.5, full_seat 1 0
waist too small at the side, too big at the centre front | Strain at the side, a fold at the centre front. \
| front waist | girth | side_to_centre_front 3 -0.5, flat_abdomen 1 0
waist too small at the side, too big at the centre back | Strain at the side, a fold at the centre back. \
| back waist | girth | side_to_centre_back 3 -0.5
side seam swings forward | The side seam runs to the front below the waist. | side seam | shift \
| swing_side_seam 3, full_abdomen 2 0
side seam swings back | The side seam runs to the back below the waist. | side seam | shift \
| swing_side_seam 3 -1, full_seat 2 0
too tight across the hip | Level lines at the hip only; the cloth rides up and piles under the band. | hip | girth \
| hip_ease 3, let_out_side_seams 2, full_seat 1 0, full_abdomen 1 0, all_girths 1
too loose across the hip | Upright folds at the hip only. | hip | girth | hip_ease 3 -1, flat_seat 1 0
strain at the outer thigh | Lines aim at the outer thigh below the hip line. | outer thigh | leg \
| fuller_thigh 3, hip_ease 1 2
strains under the front band | Curved lines from both hip bones to the abdomen; the band dips in front. \
| front, under the band | length | full_abdomen 3, raise_front_waist 2, hip_ease 1 0
fold under the front band | A slack level fold below the band. | front, under the band | length \
| flat_abdomen 3, raise_front_waist 2 -1
pulls to the hip bones | Lines aim at both hip bones, with a hollow between them. | front, below the waist | none \
| add_front_dart 3, hip_ease 1
loose at the side above the hip | A fold along the side seam between waist and hip. | side, above the hip | girth \
| darts_to_side 2 0.5, waist_ease 2 -1, raise_sides 1 -0
horizontal fold under the back band | A level fold just below the band. | back, under the band | length \
| sway_back 3, raise_back_waist 2 -1, hip_ease 1 0
band wants to sit higher | The band creeps up until it finds its place. | waist | length \
| raise_waist 3, hip_ease 1 0
band wants to sit lower | The band slides down all round until it finds its place. | waist | length \
| raise_waist 3 -1, waist_ease 1 -0
band dips at the centre front | The band is pulled down in front, the front feels short. | centre front | length \
| raise_front_waist 3, full_abdomen 2, extend_front_fork 1 0
band dips at the sides | The band is low at both sides. | sides | length | raise_sides 3, hip_ease 1 0
band stands up at the sides | The band is high at both sides. | sides | length | raise_sides 3 -1
back slides down on sitting | Right when standing; sitting, the band drops behind. | centre back | length \
| raise_back_waist 3, full_seat 2, extend_back_fork 1 0
fly bubbles | The closed fly stands out in a bubble. | centre front | length \
| raise_front_waist 3 -1, flat_abdomen 2, scoop_front 1 0
horizontal folds under the seat | Level folds between seat and thigh, standing. | back, below the seat | length \
| sway_back 2, flat_seat 2, raise_back_waist 1 -1, scoop_back 1 0, leg_slope 1 0 | Leave some of it: sitting needs it.
lap full of cloth on sitting | Right when standing; sitting, cloth piles in the lap and presses at the fly. \
| front, seated | length | full_seat 3, extend_back_fork 2 0, raise_front_waist 1 -0
crotch seam cuts in front and back | The seam cuts in and the band is pulled down before and behind. | crotch \
| length | crotch_depth 3 0.5, extend_back_fork 2, extend_front_fork 1, scoop_back 1
crotch hangs low | Cloth hangs below the fork and the stride is short. | crotch | length \
| crotch_depth 3 -1, raise_waist 1 0, extend_back_fork 1 0
crotch binds upward | It pulls up into the body all along the seam. | crotch | length \
| crotch_depth 3, extend_back_fork 1 0, raise_waist 1
band tilts to one side | The band is high on one side; slanting folds run from that hip. | waist | length \
| high_hip 3 | Write the side of the higher hip.
smile lines at the front fork | Lines rise from the fork towards both hips. | front fork | shift \
| extend_front_fork 3, crotch_depth 1 0, fuller_thigh 1 0
frown lines at the front fork | Lines fall away from the fork. | front fork | shift \
| extend_front_fork 3 -1, raise_front_waist 1 -0
seat seam cuts in | The seat seam ropes up between the buttocks, with a pleat at each side. | centre back | shift \
| extend_back_fork 3, full_seat 2 0, scoop_back 1 0, crotch_depth 1 0
drag lines from the seat | Lines run from the seat to the fork or the side; the hem kicks back. | back | length \
| full_seat 3, extend_back_fork 2 0.5, hip_ease 1 0
slack across the seat | Loose folds across and below the seat, upright folds in the back of the leg. | back | length \
| flat_seat 3, extend_back_fork 1 -0.5, hip_ease 1 -0
seam pulled up at the bottom of the seat | Folds below the seat while its lowest part strains. | back fork | shift \
| scoop_back 3, lengthen_back_darts 1 0, extend_back_fork 1
strain above the seat, slack below | The seat is high and round: tight at its top, empty under it. | back | length \
| lengthen_back_darts 2 -0, full_seat 2 0, widen_back_darts 1 0
crotch seam stands off, then cuts in | The seam stands off the body above and cuts in at its base. | back crotch \
| shift | scoop_back 3, scoop_front 1
loose pouch at the fork | A pouch of cloth hangs at the fork. | fork | shift \
| scoop_back 2 -1, extend_back_fork 2 -1, crotch_depth 1 -0
upright pulls at the front fork | Short upright lines just above the fork. | front fork | shift \
| scoop_front 3, extend_front_fork 1
whiskers from the fork | Short lines fan out to both legs; sitting is comfortable. | fork | none \
| scoop_front 1, extend_front_fork 1 | First trim and clip the curve's allowance to 6 to 10 mm: usually it is only that.
too tight across the thigh | Level lines across the front of the thigh, aiming at the knee. | thigh | leg \
| fuller_thigh 3, extend_front_fork 2 0.5, hip_ease 1 0
too tight at the inner thigh | Lines aim at the inner thigh; the leg rides up. | inner thigh | leg \
| extend_front_fork 2 0.5, extend_back_fork 2 0.5, fuller_thigh 2
too loose at the thigh | Upright folds at the thigh. | thigh | leg | fuller_thigh 3 -1, extend_back_fork 1 -0.5
creases down the inner leg | Creases from the top of the inseam; the bottoms cling inside. | inseam | shift \
| leg_slope 3, extend_back_fork 1 0, extend_front_fork 1 0
lines aim at the inner knee | Lines run to the inner knee, the outside of the knee is slack. | knee | shift \
| knock_knees 3, leg_slope 1
folds from the outer knee to the inner hem | Folds slant from the outer knee; the side seam hugs. | knee and below \
| shift | bow_legs 3, leg_slope 2 -1
folds behind the knee | The back of the leg catches and folds behind the knee; the hem rides up. | calf | leg \
| prominent_calf 3, widen_hem 2, widen_knee 1, lengthen_at_knee 1 0
leg too long | The hem breaks on the foot all round. | hem | length \
| lengthen_at_hem 3 -1, lengthen_at_knee 2 -1, extend_back_fork 1 0, leg_slope 1 0
leg too short | The hem stands off the foot all round. | hem | length | lengthen_at_hem 3, lengthen_at_knee 2
hem too wide | The bottom of the leg flaps. | hem | leg | widen_hem 3 -1
hem too narrow | The bottom of the leg catches or does not fall straight. | hem | leg | widen_hem 3, prominent_calf 1
dart points poke | The back darts end in a small cone. | back darts | length \
| lengthen_back_darts 3, darts_to_side 2 0, remove_back_dart 1
back darts too near the centre | The darts point inside the fullest part of the seat. | back darts | shift \
| move_back_darts 3
back darts too near the side | The darts point outside the fullest part of the seat. | back darts | shift \
| move_back_darts 3 -1
back stands off over the darts | The darts make a hollow where the body has none. | back darts | girth \
| darts_to_side 3 0.5, remove_back_dart 1
front pocket mouth gapes | The mouth stands open though nothing is in the pocket. | front pocket | girth \
| hip_ease 3, full_abdomen 2 0, full_seat 2 0 | Judge the pocket only when the hip is right.
band digs in below and stands off above | The lower edge of the band cuts in, the upper stands off. | band | none \
| contour_band 3, waist_ease 1, raise_waist 1
"""


def _read(words: str) -> Mapping[str, Symptom]:
    found = {}
    for row in words.strip().splitlines():
        name, looks, where, noted, cures, *more = (cell.strip() for cell in row.split("|"))
        found[name] = Symptom(name, looks, where, noted, _cures(cures), *more)
    return MappingProxyType(found)


SYMPTOMS = _read(_WORDS)
"""Name -> symptom."""

SHORT_LIST = tuple(name for name, symptom in SYMPTOMS.items() if len(name) <= 40)
"""Names short enough for the sheet of a mock-up."""
