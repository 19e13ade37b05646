"""Where the words of a piece are written: its label, and the notes beside its inner lines.

All text lies on a coarse grid of the piece in which every cell is free or taken; a block fits where all its cells are
free, and one table of sums answers that for all places at once.

Glossary
--------
height    size of the font in mm; capitals are about 0.72 of it
leading   from one baseline to the next
advance   how much room a line of text may take, estimated on the safe side: `ADVANCE` of the height per character
"""

from __future__ import annotations

import re
import unicodedata
from cmath import rect
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from math import radians
from typing import TYPE_CHECKING

import numpy as np

from draft.geometry.arrays import Flags, Floats, Points
from draft.geometry.path import Path
from draft.geometry.polygon import inside
from draft.geometry.segments import Cubic, Segment

if TYPE_CHECKING:
    from draft.piece import Piece

HEIGHTS = {5.0: 0.0, 4.0: 1.0, 3.5: 1.6, 3.0: 2.4, 2.5: 3.6, 2.0: 5.5, 1.5: 8.0}
"""Heights, the largest first, and what each costs when it is weighed against other ways to set the lines."""
ADVANCE = 0.62
LEADING = 1.4
ASCENT, DESCENT = 0.95, 0.25
NAME_SHARES = (1.0, 0.8, 0.65, 0.5, 0.4, 0.3)
READABLE = 2.0  # smaller than this, a label rather crosses a grainline
LONGEST_LINE = 120
WRAPS = {LONGEST_LINE: 0.3, 60: 0.0, 44: 0.1, 34: 0.3, 26: 1.1, 20: 2.0, 15: 3.6}
"""Most characters to a line, and what that costs: slips of text read worse than small text."""
UPRIGHT_COSTS = 0.6  # text that runs upwards
CELLS = 48  # of the grid, at most, in either direction
FINEST_CELL = 1.0
STEPS_PER_CELL = 6.0
CLEAR, CLEAR_SHARE = 1.0, 0.2  # between text and lines: mm, and a share of the height
HEAD_LENGTH, HEAD_HALF_WIDTH = 7.0, 2.5  # kept free for the heads of the grainline

NOTE_HEIGHT = 3.0
NOTE_DISTANCES = (1.0, 5.0, 10.0)  # from the line
STEEP = 3.7  # tangent of 75 degrees
NOTE_PLACES = (0.5, 0.35, 0.65, 0.2, 0.8)  # shares of the line's length

_WIDE = re.compile("[MWmw@%]")
_BREAK = re.compile(r" (?!\d)")


@dataclass(frozen=True)
class LabelPlace:
    """Lines of text; `at` is the start of the first baseline, `angle_deg` the way the text runs (0, 90 or -90)."""

    lines: tuple[str, ...]
    at: complex
    angle_deg: float
    height: float
    leading: float

    @property
    def baselines(self) -> tuple[complex, ...]:
        """Start of every line."""
        step = -1j * rect(self.leading, radians(self.angle_deg))
        return tuple(self.at + i * step for i in range(len(self.lines)))


@dataclass(frozen=True)
class NotePlace:
    """A note beside an inner line: `at` is the start of its baseline, `angle_deg` (-75 to 105) the way it runs."""

    text: str
    at: complex
    angle_deg: float
    height: float


def advance(text: str) -> float:
    """Room that a line of text takes at most, in multiples of its height.

    >>> advance("cut 2"), advance("")
    (3.1, 0.0)
    """
    extra = 0.6 * len(_WIDE.findall(text))
    if not text.isascii():
        extra += sum(unicodedata.east_asian_width(c) in "WF" for c in text)
    return ADVANCE * (len(text) + extra)


def clean(text: str) -> str:
    r"""Text as one line that every file can hold: white space made plain, control characters and halves dropped.

    >>> clean("Maren\t<&>\x00\n")
    'Maren <&>'
    """
    if text.isascii() and text.isprintable():
        return text.strip()
    spaced = " ".join(text.split())
    return "".join(c for c in spaced if unicodedata.category(c) not in ("Cc", "Cs", "Cn"))


@lru_cache(maxsize=64)
def place_label(piece: Piece) -> LabelPlace:
    """Place of a piece's label: the largest lettering inside the sew line, clear of grainline and inner lines.

    Long lines are wrapped before the lettering is made smaller. Where nothing clear is left at a readable size the
    label may cross lines; where the piece is too small for it, only name and cut are kept, then only the name.

    Parameters
    ----------
    piece : Piece
        Any piece; results are kept for the pieces asked for last.

    Returns
    -------
    LabelPlace
        In the piece's own coordinates, mm.
    """
    grid = _grid(piece)
    lines = tuple(shortened(line) for line in (clean(line) for line in piece.label) if line)
    short = tuple(shortened(line) for line in (clean(piece.title), clean(str(piece.cut))) if line)
    found = _found(grid, lines, short)
    return found if found is not None else _anywhere(grid, short[0], min(HEIGHTS))


def place_name(piece: Piece, largest: float) -> LabelPlace:
    """Place of a piece's title alone, in lettering of `largest` mm or what there is room for; for small pictures.

    Rather than become small it crosses the grainline.
    """
    grid = _grid(piece)
    title = shortened(clean(piece.title), 60) or "piece"
    rows = dict.fromkeys(((title,), tuple(wrap(title, 12))))
    blocks = [_Block(lines, max(map(advance, lines))) for lines in rows]
    for table, shares in ((grid.clear, NAME_SHARES[:3]), (grid.inside, NAME_SHARES[2:])):
        for share, block, angle in product(shares, blocks, (0.0, 90.0)):
            place = _fit(grid, table, block, share * largest, angle)
            if place is not None:
                return place
    return _anywhere(grid, title, NAME_SHARES[-1] * largest)


def shortened(line: str, longest: int = LONGEST_LINE) -> str:
    """Line cut off where it becomes too long to be read.

    >>> shortened("a long name", 8)
    'a long ...'
    """
    return line if len(line) <= longest else f"{line[: longest - 1].rstrip()} ..."


def _found(grid: _Grid, lines: tuple[str, ...], short: tuple[str, ...]) -> LabelPlace | None:
    every = tuple(HEIGHTS)
    readable = tuple(height for height in every if height >= READABLE)
    attempts = (
        (lines, readable, grid.clear),
        (lines, every[2:], grid.inside),
        (lines, every, grid.clear),
        (short, every, grid.clear),
        (short, every, grid.inside),
        (short[:1], every, grid.inside),
    )
    for words, heights, table in attempts:
        for _, block, height, angle in _settings(words, heights):
            place = _fit(grid, table, block, height, angle)
            if place is not None:
                return place
    return None


@dataclass(frozen=True)
class _Block:
    lines: tuple[str, ...]
    advance: float

    def size(self, height: float) -> tuple[float, float]:
        """Width and height in mm."""
        return self.advance * height, height * (ASCENT + DESCENT + LEADING * (len(self.lines) - 1))


def _settings(lines: tuple[str, ...], heights: tuple[float, ...]) -> list[tuple[float, _Block, float, float]]:
    """Ways to set the lines, the nicest first: cost, block, height and angle of the text."""
    wrapped: dict[tuple[str, ...], float] = {}
    for most, cost in WRAPS.items():
        wrapped.setdefault(tuple(part for line in lines for part in wrap(line, most)), cost)
    blocks = [(_Block(rows, max(map(advance, rows))), cost) for rows, cost in wrapped.items()]
    settings = [
        (HEIGHTS[height] + cost + (UPRIGHT_COSTS if angle else 0.0), block, height, angle)
        for height in heights
        for block, cost in blocks
        for angle in (0.0, 90.0)
    ]
    return sorted(settings, key=lambda setting: setting[0])


def wrap(line: str, most: int) -> list[str]:
    """Parts of a line of at most so many characters, parted at spaces but not before a number, if that can be.

    >>> wrap("allowances included: side 12, hem 10", 21), wrap("incomprehensible", 10)
    (['allowances included:', 'side 12, hem 10'], ['incomprehe', 'nsible'])
    """
    if len(line) <= most:
        return [line]
    rows: list[str] = []
    for word in _BREAK.split(line):
        if rows and len(rows[-1]) + 1 + len(word) <= most:
            rows[-1] = f"{rows[-1]} {word}"
        else:
            rows += [word[i : i + most] for i in range(0, len(word), most)] or [""]
    return rows


@dataclass(frozen=True, eq=False)
class _Grid:
    """Cells over a piece; the tables hold sums of taken cells from the lower left corner."""

    corner: complex
    cell: complex
    middle: complex  # in cells
    clear: Floats
    inside: Floats


def _fit(grid: _Grid, table: Floats, block: _Block, height: float, angle: float) -> LabelPlace | None:
    """Place of a block nearest to the middle of the piece, or None where no place is free."""
    wide, high = (size + 2 * (CLEAR + CLEAR_SHARE * height) for size in block.size(height))
    if angle:
        wide, high = high, wide
    k, m = int(-(-wide // grid.cell.real)), int(-(-high // grid.cell.imag))
    if k >= table.shape[1] or m >= table.shape[0] or k * m > table.size - table[-1, -1]:
        return None
    free = table[m:, k:] - table[:-m, k:] - table[m:, :-k] + table[:-m, :-k] == 0
    rows, columns = np.nonzero(free)
    if not len(rows):
        return None
    off = ((columns + k / 2 - grid.middle.real) * grid.cell.real) ** 2
    off += ((rows + m / 2 - grid.middle.imag) * grid.cell.imag) ** 2
    best = int(np.argmin(np.round(off, 6)))
    centre = grid.corner + complex(
        (columns[best] + k / 2) * grid.cell.real, (rows[best] + m / 2) * grid.cell.imag
    )  # fmt: skip
    return _set_at(centre, block, height, angle)


def _set_at(centre: complex, block: _Block, height: float, angle: float) -> LabelPlace:
    wide, high = block.size(height)
    turn = 1j if angle else 1.0
    at = centre + turn * complex(-wide / 2, high / 2 - ASCENT * height)
    return LabelPlace(block.lines, complex(at), angle, height, LEADING * height)


def _anywhere(grid: _Grid, title: str, height: float) -> LabelPlace:
    """Where nothing fits: the name alone, in the middle."""
    middle = grid.corner + complex(grid.middle.real * grid.cell.real, grid.middle.imag * grid.cell.imag)
    return _set_at(middle, _Block((title,), advance(title)), height, 0.0)


@lru_cache(maxsize=64)
def _grid(piece: Piece) -> _Grid:
    corners = _corners(piece.sew_line)
    sides = corners[:-1], corners[1:]
    left, bottom = corners.real.min(), corners.imag.min()
    wide, high = corners.real.max() - left, corners.imag.max() - bottom
    nx, ny = (int(min(max(size / FINEST_CELL, 1), CELLS)) for size in (wide, high))
    corner, cell = complex(left, bottom), complex(wide / nx, high / ny)
    outside = ~_inside_cells(sides, corner, cell, nx, ny)
    outside |= _crossed(sides, corner, cell, nx, ny)
    within = np.argwhere(~outside)
    middle = complex(*(within.mean(axis=0)[::-1] + 0.5)) if len(within) else complex(nx / 2, ny / 2)
    taken = outside | _crossed(_obstacles(piece), corner, cell, nx, ny)
    return _Grid(corner, cell, middle, _sums(taken), _sums(outside))


def _sums(taken: Flags) -> Floats:
    table = np.zeros((taken.shape[0] + 1, taken.shape[1] + 1))
    np.cumsum(np.cumsum(taken, axis=0), axis=1, out=table[1:, 1:])
    return table


Sides = tuple[Points, Points]


def _inside_cells(sides: Sides, corner: complex, cell: complex, nx: int, ny: int) -> Flags:
    """Cells whose middle lies inside: the crossings left of it, counted along every row."""
    a, b = sides
    y = corner.imag + cell.imag * (np.arange(ny) + 0.5)
    row, side = np.nonzero((a.imag > y[:, None]) != (b.imag > y[:, None]))
    one, two = a[side], b[side]
    x = one.real + (y[row] - one.imag) * (two.real - one.real) / (two.imag - one.imag)
    column = np.clip(np.ceil((x - corner.real) / cell.real - 0.5), 0, nx).astype(int)
    crossings = np.bincount(row * (nx + 1) + column, minlength=ny * (nx + 1)).reshape(ny, nx + 1)
    return np.asarray(np.cumsum(crossings, axis=1)[:, :nx] % 2 == 1)


def _crossed(sides: Sides, corner: complex, cell: complex, nx: int, ny: int) -> Flags:
    """Cells that a line runs through, but for corners where it leaves less than a sixth of a cell beyond it."""
    a, b = (np.asarray(p) - corner for p in sides)
    a, b = (p.real / cell.real + 1j * p.imag / cell.imag for p in (a, b))
    steps = np.ceil(np.abs(b - a) * STEPS_PER_CELL).astype(int) + 1
    side = np.repeat(np.arange(len(steps)), steps)
    first = np.cumsum(steps) - steps
    t = (np.arange(len(side)) - first[side]) / np.maximum(steps - 1, 1)[side]
    points = a[side] + (b - a)[side] * t
    x, y = np.floor(points.real).astype(int), np.floor(points.imag).astype(int)
    near = (x >= -1) & (x <= nx) & (y >= -1) & (y <= ny)
    found = np.zeros((ny, nx), dtype=bool)
    found[np.clip(y[near], 0, ny - 1), np.clip(x[near], 0, nx - 1)] = True
    return found


def _obstacles(piece: Piece) -> Sides:
    """Sides of everything drawn inside the piece: grainline, inner lines, drill holes, notes."""
    runs = [*_grain(piece), *(_corners(line.path) for line in piece.lines)]
    runs += [_ends((hole.at - hole.diameter, hole.at + hole.diameter)) for hole in piece.holes]
    for note in place_notes(piece):
        runs += _strokes(note)
    return np.concatenate([run[:-1] for run in runs]), np.concatenate([run[1:] for run in runs])


@lru_cache(maxsize=256)
def _corners(path: Path) -> Points:
    """Polyline within 0.5 mm of a path, all segments in one step and cut alike: text needs it fast, not exact."""
    controls = np.array([_as_cubic(segment) for segment in path.segments])
    bend = np.max(np.abs(np.diff(controls, 2, axis=1)))
    steps = max(1, int(np.ceil(np.sqrt(0.75 * bend / 0.5))))  # the bound of `draft.geometry.flatten`
    t = np.arange(steps) / steps
    weights = np.array([(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t**2 * (1 - t), t**3])
    return np.append((controls @ weights).ravel(), controls[-1, -1])


def _as_cubic(segment: Segment) -> tuple[complex, ...]:
    if isinstance(segment, Cubic):
        return segment.controls
    third = (segment.p1 - segment.p0) / 3
    return segment.p0, segment.p0 + third, segment.p1 - third, segment.p1


def _ends(points: Iterable[complex]) -> Points:
    return np.array([complex(p) for p in points])


def _grain(piece: Piece) -> list[Points]:
    """Grainline with a stroke across the foot of each of its heads."""
    start, end = (complex(p) for p in piece.grainline.controls)
    along = (end - start) / (abs(end - start) or 1.0)
    back, across = HEAD_LENGTH * along, 1j * HEAD_HALF_WIDTH * along
    feet = (start + back, end - back)
    return [_ends((start, end)), *(_ends((foot - across, foot + across)) for foot in feet)]


def _strokes(note: NotePlace) -> Iterator[Points]:
    """Lines through a note's lettering, close enough to keep other text away."""
    along = rect(1.0, radians(note.angle_deg))
    for rise in (-DESCENT, 0.35, ASCENT):
        start = note.at + 1j * along * rise * note.height
        yield np.array([start, start + along * advance(note.text) * note.height])


@lru_cache(maxsize=64)
def place_notes(piece: Piece) -> tuple[NotePlace, ...]:
    """Notes beside the inner lines, each along its line, where possible inside the cut line and clear of all others.

    A note that stands on several lines is written once.
    """
    drawn = [line for line in piece.lines if line.note]
    if not drawn:
        return ()
    outline = _corners(piece.cut_line)
    runs = [outline, _corners(piece.sew_line), *_grain(piece)]
    runs += [_corners(line.path) for line in piece.lines]
    places: dict[str, NotePlace] = {}
    for line in drawn:
        text = shortened(clean(line.note), 60)
        if text and text not in places:
            places[text] = place = _beside(_corners(line.path), text, outline[:-1], runs)
            runs += _strokes(place)
    return tuple(places.values())


def _beside(line: Points, text: str, outline: Points, runs: list[Points]) -> NotePlace:
    """Place of a note on either side of a line: the first that meets nothing, else where it meets the fewest lines."""
    size = complex(advance(text) * NOTE_HEIGHT, (ASCENT + DESCENT) * NOTE_HEIGHT)
    a, b = (np.concatenate([run[cut] for run in runs]) for cut in (np.s_[:-1], np.s_[1:]))
    tried: list[tuple[float, complex, complex]] = []
    for distance, share in product(NOTE_DISTANCES, NOTE_PLACES):
        along, corners = _boxes(line, share, size, distance)
        hits = _hits(a, b, corners, along, size) + 1000 * ~inside(corners + along * size / 2, outline)
        tried += [(float(count), along, complex(corner)) for count, corner in zip(hits, corners, strict=True)]
        if not hits.all():
            break
    _, along, corner = min(tried, key=lambda found: found[0])
    at = corner + 1j * along * DESCENT * NOTE_HEIGHT
    return NotePlace(text, at, float(np.rad2deg(np.angle(along))), NOTE_HEIGHT)


def _boxes(line: Points, share: float, size: complex, distance: float) -> tuple[complex, Points]:
    """Direction of a note, and the lower left corners of its boxes above and below a line at a share of its length."""
    ends = np.concatenate([[0.0], np.cumsum(np.abs(np.diff(line)))])
    half = min(size.real / 2, ends[-1] / 2)
    middle = min(max(share * ends[-1], half), ends[-1] - half)
    stretch = np.interp(middle + half * np.linspace(-1, 1, 5), ends, line)
    chord = complex(stretch[-1] - stretch[0])
    along = chord / abs(chord) if abs(chord) > 1e-6 else 1 + 0j
    if along.real < 0 or along.imag < -STEEP * along.real:
        along = -along  # read from below, or when it is steep from the right of the sheet
    local = stretch / along
    left = (local[0].real + local[-1].real - size.real) / 2
    lows = np.array([local.imag.max() + distance, local.imag.min() - distance - size.imag])
    return along, (left + 1j * lows) * along


def _hits(a: Points, b: Points, corners: Points, along: complex, size: complex) -> Floats:
    """How many sides run through each box (clipping of a segment to a box, edge by edge)."""
    one, two = ((p[None, :] - corners[:, None]) / along for p in (a, b))
    enter, leave = np.zeros(one.shape), np.ones(one.shape)
    apart = np.zeros(one.shape, dtype=bool)
    for start, end, limit in ((one.real, two.real, size.real), (one.imag, two.imag, size.imag)):
        step = end - start
        still = np.abs(step) < 1e-12
        apart |= still & ((start < 0) | (start > limit))
        safe = np.where(still, 1.0, step)
        t0, t1 = -start / safe, (limit - start) / safe
        enter = np.where(still, enter, np.maximum(enter, np.minimum(t0, t1)))
        leave = np.where(still, leave, np.minimum(leave, np.maximum(t0, t1)))
    return np.asarray(np.sum((enter <= leave) & ~apart, axis=1), dtype=float)
