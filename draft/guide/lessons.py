"""How each measure is taken, what usually goes wrong, and how far off it may be; words and numbers, no drawing.

What is measured is defined in `draft.body`. All sizes are millimetres.

Glossary
--------
trained  how far two trained observers of one body may lie apart
home     how far off a careful person may be at home; with nobody to help where the measure can be taken alone
read, second-hand, assumed
    How a number is known: read where it was published (an abstract counts, and is named as one); seen in somebody
    else's copy; or common practice without a source.

Landmarks and slips are common practice, but for the one slip with a source beside it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

Known: TypeAlias = Literal["read", "second-hand", "assumed"]


class Miss(NamedTuple):
    """How far off a measure may be, mm, and how that is known."""

    mm: float
    known: Known
    source: str


@dataclass(frozen=True)
class Lesson:
    """How one measure is taken.

    Parameters
    ----------
    field : str
        Which measure of `draft.body.Body`.
    title : str
        Its name in the trade.
    tape : str
        The landmark, and where the tape goes.
    posture : str
        What the measured person does.
    slip : str
        What usually goes wrong.
    trained, home : Miss
        How far off the measure may be.
    alone : bool
        Whether one person can take it on their own body as well as the home error says.
    aid : str
        What or who helps.
    taken : str
        Which way of taking it, for a crotch depth; else empty.

    Examples
    --------
    >>> lesson = lessons_of("calf")[0]
    >>> lesson.title, lesson.trained.mm, lesson.home.mm, lesson.home.known
    ('Calf girth', 4, 5, 'assumed')
    """

    field: str
    title: str
    tape: str
    posture: str
    slip: str
    trained: Miss
    home: Miss
    alone: bool
    aid: str
    taken: str = ""


FIRST = (
    "Stand upright and barefoot over thin underwear, weight on both feet, belly relaxed, breath out. Tie an elastic "
    "round the waist, bend to one side and let it settle in the crease; leave it on for all that starts at the waist.",
    "Lay the tape on the body without denting it. Take every measure twice and use the mean; take both again when they "
    "differ by more than twice the trained error.",
    "Tape and book at the crotch stay in the hands of the person who is measured. Sit on a chair that cannot roll, and "
    "let a helper bend down to the ankles of a person who may lose balance.",
)
"""What holds for every measure; common practice, no source."""

STANDING, APART = "Standing.", "Standing, legs slightly apart."

SOURCES = (
    "Trained: how far two trained observers may lie apart. Home: how far off a careful person may be.",
    "Trained, second-hand: limits in Hotzman et al. 2011, Measurer's Handbook, NATICK/TR-11/017, appendix G, seen in a "
    "copy.",
    "Home, read: largest technical error (0.76 in) of waist, hip and neck, 41 women after an instruction film, Barrios "
    "et al. 2016, BMC Medical Research Methodology 16:49, abstract.",
    "Waist without instruction: 622 people, 59.8 mm over, standard deviation 48.2 mm, Contardo Ayala et al. 2014, BMC "
    "Medicine 12:170, abstract.",
    "Assumed: common practice, no source; so are the landmarks and the other slips.",
)
"""What the numbers of all lessons stand on."""


def _listed(mm: float, what: str) -> Miss:
    return Miss(mm, "second-hand", f"{what} in Hotzman et al. 2011, seen in a copy")


def _filmed() -> Miss:
    return Miss(19, "read", "waist, hip and neck in Barrios et al. 2016, abstract")


def _assumed(mm: float, why: str = "") -> Miss:
    practice = "common practice, no source"
    return Miss(mm, "assumed", f"{practice}; {why}" if why else practice)


LESSONS = (
    Lesson(
        "waist",
        "Waist girth",
        "Level round the body where the tied elastic has settled, midway between lowest rib and hip bone.",
        STANDING,
        # Contardo Ayala et al. 2014, see SOURCES.
        "Taken where trousers sit, which is lower: people left to themselves came out 60 mm too large on average.",
        _listed(12, "waist at the navel"),
        _filmed(),
        alone=True,
        aid="a mirror shows whether the tape is level",
    ),
    Lesson(
        "hip",
        "Hip girth",
        "Level round the fullest part of the buttocks. Note how far that is below the waist.",
        STANDING,
        "The tape tilts or slides up at the back, and the girth comes out too small.",
        _listed(12, "buttock girth"),
        _filmed(),
        alone=True,
        aid="a mirror at the side; pins or tape mark the level",
    ),
    Lesson(
        "crotch_depth",
        "Crotch depth, seated",
        "At the side from the waist straight down to the chair.",
        "Sitting upright on a hard flat chair, thighs level.",
        "A slumped back or a soft seat: both bring the waist nearer to the chair.",
        _assumed(10, "crotch height standing is 10, second-hand"),
        _assumed(15),
        alone=True,
        aid="a ruler stood on the chair",
        taken="seated",
    ),
    Lesson(
        "crotch_depth",
        "Crotch depth, standing",
        "Waist to floor, straight down at the side, less the inside leg. Do not mix with the seated depth, which is "
        "larger by 10 to 20 mm.",
        APART,
        "Waist and inside leg taken in different shoes or on different feet: the difference keeps both errors.",
        _assumed(12, "crotch height alone is 10, second-hand"),
        _assumed(20),
        alone=False,
        aid="a helper reads the height of the waist",
        taken="standing",
    ),
    Lesson(
        "waist_to_hip",
        "Waist to hip",
        "At the side from the waist straight down to the level of the hip girth.",
        STANDING,
        "The tape follows the curve of the hip, which adds 5 to 10 mm; or it ends above the fullest level.",
        _assumed(10),
        _assumed(15),
        alone=True,
        aid="a ruler held upright, before a mirror",
    ),
    Lesson(
        "inside_leg",
        "Inside leg",
        "From the crotch straight down to the floor. Push a book up level between the legs, its edge on a wall; mark "
        "its top and measure to the floor.",
        APART,
        "The book tilts or stays too low, or shoes are on.",
        _listed(10, "crotch height"),
        _assumed(20, "10 to 20"),
        alone=True,
        aid="a book and a wall",
    ),
    Lesson(
        "front_crotch",
        "Front crotch length",
        "From the front waist over the belly to the crotch point, where a small light weight hung on the tape settles.",
        APART,
        "The tape is pulled tight, or the split between front and back is guessed.",
        _assumed(15),
        _assumed(25, "20 to 25 alone"),
        alone=False,
        aid="a helper reads the tape at the front waist",
    ),
    Lesson(
        "back_crotch",
        "Back crotch length",
        "From the back waist over the buttocks to the crotch point, where the hung weight settles.",
        APART,
        "Bending to look down, which lengthens the back; or the elastic rides up at the back.",
        _assumed(15),
        _assumed(25, "20 to 25 alone"),
        alone=False,
        aid="a helper reads the tape at the back waist",
    ),
    Lesson(
        "thigh",
        "Thigh girth",
        "Level round the thigh just below the fold of the buttock; the larger leg.",
        APART,
        "Taken too low, or with the weight on one leg.",
        _listed(6, "thigh"),
        _assumed(10),
        alone=True,
        aid="a mirror behind",
    ),
    Lesson(
        "knee",
        "Knee girth",
        "Level round the middle of the kneecap, leg straight.",
        APART,
        "The knee bends as you reach down, or the tape slips below the kneecap.",
        _assumed(6, "as the thigh"),
        _assumed(10),
        alone=True,
        aid="bend from the hips, the leg stays straight",
    ),
    Lesson(
        "calf",
        "Calf girth",
        "Level round the fullest part of the lower leg: move the tape up and down until it reads most.",
        APART,
        "Standing on the toes, which swells the calf; a tape that is not level.",
        _listed(4, "calf"),
        _assumed(5),
        alone=True,
        aid="a mirror at the side",
    ),
    Lesson(
        "ankle",
        "Ankle girth",
        "Round the ankle over both ankle bones.",
        STANDING,
        "Taken above the bones, where the leg is thinnest.",
        _listed(4, "ankle"),
        _assumed(5),
        alone=True,
        aid="nothing else is needed",
    ),
    Lesson(
        "knee_height",
        "Knee height",
        "From the middle of the kneecap straight down to the floor.",
        STANDING,
        "Read from above while bending: the knee gives way and the height with it.",
        _assumed(4, "the top of the shin bone, next to it, is 2, second-hand"),
        _assumed(10),
        alone=True,
        aid="mark the kneecap first, then measure to the mark",
    ),
    Lesson(
        "hip_depth",
        "Hip depth",
        "Front to back at the level of the hip girth, between two books or set squares held upright.",
        STANDING,
        "A full belly pushes the front book away: use a book that ends below it. Or the books lean.",
        _assumed(6, "the depth at the waist is 6, second-hand"),
        _assumed(15),
        alone=False,
        aid="a helper holds the books and measures",
    ),
)
"""One lesson for each measure, in the order of telling; two for the crotch depth, which is taken in two ways."""


def lessons_of(*fields: str) -> tuple[Lesson, ...]:
    """Lessons of some measures, in the order asked; a name that is no measure gives none.

    >>> [lesson.title for lesson in lessons_of("knee", "crotch_depth")]
    ['Knee girth', 'Crotch depth, seated', 'Crotch depth, standing']
    """
    return tuple(lesson for field in fields for lesson in LESSONS if lesson.field == field)
