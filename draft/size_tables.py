"""Size tables: bodies to draft from where nobody was measured.

A size is a mean, not a person. Crotch lengths differ by 40 mm and more between bodies of the same hip, so cut a mock-up
before good cloth, and write over what was measured: ``Body.from_size("women by hip", 100, inside_leg=740)``.

Glossary
--------
navel, natural
    The level a table's waist, crotch depth, waist to hip and crotch lengths start from. The navel lies below the
    natural waist, in women by 30 to 50 mm (common practice, no source). Never mix measures from the two.
raised
    What is known from the navel, told from the natural waist: `NAVEL_TO_WAIST_MM` is added once to the crotch depth,
    the waist to hip and each crotch length.
survey
    ANSUR II; see `draft.body_checks`. Adults of an army: few very large bodies, nobody above 58 years, no children.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np

from draft.body_checks import MEASURES
from draft.errors import DraftError, nearest

NAVEL_TO_WAIST_MM = 40.0
"""Middle of the 30 to 50 mm that the natural waist lies above the navel (common practice, no source)."""


@dataclass(frozen=True)
class SizeTable:
    """Mean bodies by size.

    Parameters
    ----------
    name : str
        What `Body.from_size` calls it.
    people : str
        For whom it is.
    label : str
        What the name of a size says, e.g. ``"hip in cm"``.
    source, how_known : str
        Where the numbers come from, and whether they were computed, read or remembered.
    waist_level : {"navel", "natural"}
        Where the waist was taken.
    crotch_depth_taken : {"seated", "standing"}
        How the crotch depth was taken.
    sizes : mapping of str to mapping
        Measures of each size by the names of `draft.Body`, mm.

    Examples
    --------
    >>> print(TABLES["women by hip"])
    women by hip (sizes 88, 92, 96, 100, 104, 108, 112, 116, 120: hip in cm)
    For adult women. Waist at the navel, crotch depth standing.
    ANSUR II (NATICK/TR-15/007, 2014), means of classes of +-20 mm of hip; computed from its public data, 13 women in
    size 120, 42 to 203 in the others.
    """

    name: str
    people: str
    label: str
    source: str
    how_known: str
    waist_level: Literal["navel", "natural"]
    crotch_depth_taken: Literal["seated", "standing"]
    sizes: Mapping[str, Mapping[str, float]]

    def __str__(self) -> str:
        return (
            f"{self.name} (sizes {', '.join(self.sizes)}: {self.label})\n"
            f"For {self.people}. Waist at the {self.waist_level}{'' if self.waist_level == 'navel' else ' waist'}, "
            f"crotch depth {self.crotch_depth_taken}.\n{self.source}; {self.how_known}."
        )

    def __getitem__(self, size: str | float) -> Mapping[str, float]:
        """Measures of one size, mm.

        Raises
        ------
        DraftError
            For a size that is not in the table.

        Examples
        --------
        >>> TABLES["women by hip"][100]["waist"], TABLES["women by hip"]["100"]["inside_leg"]
        (840.0, 788.0)
        >>> TABLES["women by hip"][101]
        Traceback (most recent call last):
            ...
        draft.errors.DraftError: size is 101, expected one of 88, 92, 96, 100, 104, 108, 112, 116, 120 (hip in cm, table
        "women by hip"): choose one of these, or measure the body and write Body(waist=..., ...).
        """
        label = f"{size:g}" if isinstance(size, int | float) and not isinstance(size, bool) else size
        if isinstance(label, str) and label in self.sizes:
            return self.sizes[label]
        expected = f'one of {", ".join(self.sizes)} ({self.label}, table "{self.name}")'
        remedy = "choose one of these, or measure the body and write Body(waist=..., ...)"
        raise DraftError("size", "None" if size is None else size, expected, remedy)


def table_named(name: str) -> SizeTable:
    """Give a size table by its name.

    Raises
    ------
    DraftError
        For a name that no table has.

    Examples
    --------
    >>> table_named("women by hip").waist_level
    'navel'
    >>> table_named("woman by hip")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: table is 'woman by hip', expected one of "women by hip", "men by hip", "women EN 13402-3",
    "women textbook", "men textbook": write "women by hip".
    """
    if isinstance(name, str) and name in TABLES:
        return TABLES[name]
    near = nearest(str(name), TABLES)
    expected = "one of " + ", ".join(f'"{known}"' for known in TABLES)
    raise DraftError(
        "table", "None" if name is None else name, expected, f'write "{near}"' if near else "choose one of these"
    )


def _sizes(fields: tuple[str, ...], rows: Mapping[str, tuple[float, ...]]) -> Mapping[str, Mapping[str, float]]:
    return MappingProxyType(
        {size: MappingProxyType(dict(zip(fields, map(float, row), strict=True))) for size, row in rows.items()}
    )


_SURVEY = "ANSUR II (NATICK/TR-15/007, 2014), means of classes of +-20 mm of hip"

_WOMEN = _sizes(
    tuple(MEASURES),
    {
        "88": (715, 881, 191, 145, 756, 258, 314, 518, 347, 335, 201, 431, 199),
        "92": (749, 921, 194, 147, 768, 258, 325, 547, 363, 345, 204, 438, 206),
        "96": (803, 961, 196, 147, 779, 268, 331, 574, 376, 356, 209, 445, 215),
        "100": (840, 999, 197, 147, 788, 275, 338, 600, 392, 367, 215, 451, 226),
        "104": (877, 1039, 201, 149, 781, 282, 347, 628, 407, 379, 218, 451, 237),
        "108": (925, 1076, 199, 144, 792, 288, 351, 656, 418, 387, 221, 455, 251),
        "112": (952, 1116, 202, 142, 797, 297, 355, 682, 434, 400, 224, 461, 258),
        "116": (990, 1155, 204, 145, 799, 304, 366, 706, 448, 409, 229, 464, 269),
        "120": (1050, 1193, 199, 132, 782, 322, 348, 722, 469, 429, 238, 458, 283),
    },
)

_MEN = _sizes(
    tuple(MEASURES),
    {
        "84": (732, 849, 197, 159, 824, 211, 320, 500, 345, 341, 208, 469, 194),
        "88": (766, 882, 208, 165, 829, 224, 339, 521, 357, 352, 213, 474, 203),
        "92": (811, 921, 207, 167, 838, 236, 340, 556, 374, 363, 217, 480, 215),
        "96": (861, 961, 211, 172, 841, 249, 349, 583, 388, 374, 222, 483, 227),
        "100": (919, 1000, 211, 170, 845, 263, 354, 613, 403, 387, 226, 488, 241),
        "104": (968, 1039, 211, 168, 845, 272, 359, 638, 417, 398, 232, 488, 252),
        "108": (1017, 1077, 213, 170, 850, 284, 368, 666, 430, 411, 237, 493, 265),
        "112": (1067, 1118, 214, 168, 852, 294, 372, 693, 443, 423, 241, 494, 276),
        "116": (1102, 1157, 210, 166, 865, 302, 376, 723, 458, 430, 244, 502, 287),
        "120": (1158, 1197, 204, 155, 873, 313, 373, 757, 472, 447, 254, 508, 302),
        "124": (1203, 1235, 198, 149, 881, 313, 388, 781, 485, 451, 256, 512, 313),
    },
)

_FROM_WAIST = ("crotch_depth", "waist_to_hip", "front_crotch", "back_crotch")


def _raised(of: Mapping[str, Mapping[str, float]], hip: float, field: str) -> float:
    """A measure of a survey table, read off between its sizes at a hip (mm) and told from the natural waist."""
    at = float(np.interp(hip, [row["hip"] for row in of.values()], [row[field] for row in of.values()]))
    return round(at + (NAVEL_TO_WAIST_MM if field in _FROM_WAIST else 0.0))


# Waist and hip of EN 13402-3:2004, women, from memory. Smaller and larger sizes lie outside the survey's classes.
_EN_WOMEN = {
    str(waist): {"waist": waist * 10.0, "hip": hip * 10.0}
    | {field: _raised(_WOMEN, hip * 10.0, field) for field in MEASURES if field not in ("waist", "hip")}
    for waist, hip in ((64, 88), (68, 92), (72, 96), (76, 100), (80, 104), (84, 108), (88, 112), (94, 117))
}

# Waist, hip, seated crotch depth, waist to hip, and inside leg as waist to floor less crotch depth.
_TEXTBOOK_WOMEN = _sizes(
    ("waist", "hip", "crotch_depth", "waist_to_hip", "inside_leg"),
    {
        "6": (640, 880, 266, 200, 754),
        "8": (680, 920, 273, 203, 757),
        "10": (720, 960, 280, 206, 760),
        "12": (760, 1000, 287, 209, 763),
        "14": (800, 1040, 294, 212, 766),
        "16": (840, 1080, 301, 215, 769),
        "18": (880, 1120, 308, 218, 772),
    },
)

# Waist, hip (seat), seated crotch depth and inside leg. The chart has no waist to hip: the survey's, raised.
_TEXTBOOK_MEN = {
    size: {**row, "waist_to_hip": _raised(_MEN, row["hip"], "waist_to_hip")}
    for size, row in _sizes(
        ("waist", "hip", "crotch_depth", "inside_leg"),
        {
            "88": (740, 920, 268, 780),
            "92": (780, 960, 272, 790),
            "96": (820, 1000, 276, 800),
            "100": (860, 1040, 280, 810),
            "104": (900, 1080, 284, 820),
            "108": (980, 1140, 288, 830),
            "112": (1020, 1180, 292, 840),
            "116": (1060, 1220, 296, 850),
        },
    ).items()
}

TABLES: Mapping[str, SizeTable] = MappingProxyType(
    {
        table.name: table
        for table in (
            SizeTable(
                "women by hip",
                "adult women",
                "hip in cm",
                _SURVEY,
                "computed from its public data, 13 women in size 120, 42 to 203 in the others",
                "navel",
                "standing",
                _WOMEN,
            ),
            SizeTable(
                "men by hip",
                "adult men",
                "hip in cm",
                _SURVEY,
                "computed from its public data, 16 men in size 84, 17 in size 124, 39 to 441 in the others",
                "navel",
                "standing",
                _MEN,
            ),
            SizeTable(
                "women EN 13402-3",
                "adult women",
                "waist in cm",
                f"EN 13402-3:2004 for waist and hip; the rest: {_SURVEY}, between the classes at that hip",
                "waist and hip from memory, not checked; the rest computed from public data and raised from the navel "
                "by 40 mm (common practice, no source)",
                "natural",
                "standing",
                MappingProxyType({size: MappingProxyType(row) for size, row in _EN_WOMEN.items()}),
            ),
            SizeTable(
                "women textbook",
                "adult women of 1.60 to 1.72 m",
                "British size",
                "a British textbook of metric pattern cutting, its chart of standard sizes",
                "from memory, not checked",
                "natural",
                "seated",
                _TEXTBOOK_WOMEN,
            ),
            SizeTable(
                "men textbook",
                "adult men of 1.70 to 1.84 m",
                "chest in cm",
                f"a British textbook of metric pattern cutting, its chart of standard sizes; waist to hip: {_SURVEY}",
                "from memory, not checked; waist to hip computed from public data and raised from the navel by 40 mm "
                "(common practice, no source)",
                "natural",
                "seated",
                MappingProxyType({size: MappingProxyType(row) for size, row in _TEXTBOOK_MEN.items()}),
            ),
        )
    }
)
"""Every size table by its name."""
