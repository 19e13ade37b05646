"""Pattern: all pieces of one garment, its seams, and what it was drafted from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import cached_property
from math import nan
from pathlib import Path as FilePath
from types import MappingProxyType
from typing import Literal

from draft.alter.base import Alteration
from draft.assemble import Garment
from draft.block import Block
from draft.body import Body
from draft.checks import Finding, Findings, check_joints, check_notches, check_piece, check_seams, check_sizes
from draft.drawing import view
from draft.drawing.overlay import Overlay
from draft.errors import DraftError
from draft.export import dxf_astm, dxf_plain, files, svg
from draft.fitting.fit import Fit
from draft.fitting.unmet import unmet
from draft.measure import Sizes, finished_sizes
from draft.methods.base import Method
from draft.mock_up.garment import MARK, Outlets, mocked
from draft.mock_up.sheet import sheet_text
from draft.piece import Piece
from draft.report import report_text
from draft.seams import Joint, Seam
from draft.shape.shell import Shell
from draft.style import Style

Dialect = Literal["plain", "astm"]


@dataclass(frozen=True, eq=False)
class Pattern:
    """All pieces of one garment. Made by :func:`draft.trousers` and :func:`draft.shorts`.

    Nothing in it is edited by hand: to change it, change body or style and draft again. ``alterations`` are those it
    was drafted with, in their order; ``style`` and ``block`` are what they made of style and fitted block.
    """

    garment_name: str
    body: Body
    style: Style
    method: Method
    fit: Fit
    measured: bool
    shell: Shell
    garment: Garment
    alterations: tuple[Alteration, ...]
    block: Block

    @property
    def name(self) -> str:
        """Name for titles: style or garment, and the body's name."""
        style = self.style.name or self.garment_name.capitalize()
        return f"{style} for {self.body.name}" if self.body.name else style

    @property
    def pieces(self) -> Mapping[str, Piece]:
        """Pieces by name."""
        return MappingProxyType(dict(self.garment.pieces))

    @property
    def seams(self) -> tuple[Seam, ...]:
        """Every sewn edge with its partner."""
        return self.garment.seams

    @property
    def joints(self) -> tuple[Joint, ...]:
        """Corners that become one line when sewn."""
        return self.garment.joints

    @cached_property
    def _sizes(self) -> Sizes:
        return finished_sizes(self.garment, self.shell.levels)

    def measure(self) -> Sizes:
        """Finished sizes in mm: girths of the whole body as worn, lengths along the seams.

        The thigh is taken 25 mm below the crotch line; the knee is left out when the leg ends above it.
        """
        return self._sizes

    def targets(self) -> Sizes:
        """Body plus ease in mm, for the sizes that this draft aims at.

        The thigh of a fitted draft has a least size only; where the method's own is wider already, that is the target.
        """
        aims = dict(self.shell.targets)
        aims |= {name: max(least, self._sizes[name]) for name, least in self.shell.floors.items()}
        return Sizes(tuple((name, float(aims[name])) for name in self._sizes if name in aims))

    def waist_shares(self) -> Mapping[str, float]:
        """Where the difference between hip and waist went, as shares; empty where the two are alike.

        The names are those of :class:`draft.WaistShares`.
        """
        return self.shell.shares

    def check(self) -> Findings:
        """Everything that does not sew together; empty when all is well."""
        pieces = self.garment.pieces
        found = Findings(check_seams(self.seams))
        found.extend(check_notches(self.seams, pieces))
        found.extend(check_joints(self.joints, pieces))
        for piece in pieces.values():
            found.extend(check_piece(piece))
        try:
            sizes = self.measure()
            found.extend(check_sizes(sizes, self.targets(), unmet(self.body, self.fit, self.shell.floors, sizes)))
        except DraftError as error:
            found.append(Finding("size", error.field, f"cannot be measured: {error}", nan))
        return found

    def overlay(self) -> Overlay:
        """Picture of the block by formula (dashed) and as fitted (solid), for a notebook."""
        return Overlay(self.fit.formula, self.fit.block, title=f"{self.name}: block before and after the fit")

    def mock_up(
        self,
        *,
        side: float | str = 25.0,
        inseam: float | str = 20.0,
        waist: float | str = 25.0,
        seat: float | str = 30.0,
        hem: float | str = 50.0,
    ) -> MockUp:
        """Pattern of the same garment to be sewn in cheap cloth and fitted; its finished sizes are this one's.

        Parameters
        ----------
        side, inseam, waist, hem : float or str
            Allowances, mm, to let out from; the hem is less on a leg that is too short for it.
        seat : float or str
            Allowance of the straight part of the seat seam.

        Raises
        ------
        DraftError
            When an allowance lies outside its limits, or has no room in a curve; for a garment whose left and right
            differ.

        Examples
        --------
        >>> import draft
        >>> body = draft.Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
        >>> list(draft.shorts(body).mock_up().pieces)
        ['front', 'back', 'waistband']
        """
        if getattr(self.garment, "half", None):
            expected = "a garment that is alike on both sides"
            remedy = "draft it without the high hip, and pin the higher side"
            raise DraftError("pattern", self.name, expected, remedy)
        outlets = Outlets(side, inseam, waist, seat, hem)  # type: ignore[arg-type]  # read by the units there
        made_for = self.garment.pieces["front"].made_for
        style, garment = mocked(self.body, self.style, self.shell, made_for, outlets)
        kept = {entry.name: getattr(self, entry.name) for entry in fields(Pattern)}
        return MockUp(**kept | {"style": style, "garment": garment}, source=self)

    def report(self) -> str:
        """What was drafted, from which measures and method, what was estimated, and what came out."""
        return report_text(self)

    def save_svg(self, path: str | FilePath) -> FilePath:
        """Write all pieces at true size to one SVG file, atomically.

        Raises
        ------
        DraftError
            When the folder does not exist or cannot be written; no file is left behind.
        """
        return svg.save(self, path)

    def save_dxf(self, path: str | FilePath, dialect: Dialect = "plain") -> FilePath:
        """Write all pieces to one DXF file in mm: ``"plain"`` for cutters and plotters, ``"astm"`` for pattern systems.

        Raises
        ------
        DraftError
            For an unknown dialect, or when the file cannot be written; no file is left behind.
        """
        if dialect == "plain":
            return dxf_plain.save(self, path)
        if dialect == "astm":
            return dxf_astm.save(self, path)
        raise DraftError("dialect", dialect, "'plain' or 'astm'", "choose one of these")

    def save_overview(self, path: str | FilePath) -> FilePath:
        """Write the screen-sized picture of all pieces (the one a notebook shows) to an SVG file, atomically."""
        return files.write_text(path, view.pattern_svg(self))

    def _repr_svg_(self) -> str:
        return view.pattern_svg(self)

    def __repr__(self) -> str:
        names = ", ".join(self.garment.pieces)
        return f"<Pattern {self.name}: {len(self.garment.pieces)} pieces ({names}), {len(self.check())} findings>"


@dataclass(frozen=True, eq=False, repr=False)
class MockUp(Pattern):
    """Pattern of a mock-up, made by :meth:`Pattern.mock_up`; ``source`` is the pattern it is of."""

    source: Pattern | None = None

    @property
    def name(self) -> str:
        """Name for titles, said to be a mock-up."""
        return f"{super().name}, {MARK}"

    def mock_up(
        self,
        *,
        side: float | str = 25.0,
        inseam: float | str = 20.0,
        waist: float | str = 25.0,
        seat: float | str = 30.0,
        hem: float | str = 50.0,
    ) -> MockUp:
        """Mock-up of the same garment, with other allowances, mm."""
        source = self if self.source is None else self.source
        return Pattern.mock_up(source, side=side, inseam=inseam, waist=waist, seat=seat, hem=hem)

    def sheet(self) -> str:
        """SVG of a sheet of A4 to write on at the fitting, at true size: sizes to check, an outline, rows for notes.

        Examples
        --------
        >>> import draft
        >>> body = draft.Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
        >>> 'width="210mm" height="297mm"' in draft.shorts(body).mock_up().sheet()
        True
        """
        return sheet_text(self)

    def save_sheet(self, path: str | FilePath) -> FilePath:
        """Write the sheet to an SVG file, atomically.

        Raises
        ------
        DraftError
            When the folder does not exist or cannot be written; no file is left behind.
        """
        return files.write_text(path, sheet_text(self))
