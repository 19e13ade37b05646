"""Pattern: all pieces of one garment, its seams, and what it was drafted from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from math import nan
from pathlib import Path as FilePath
from types import MappingProxyType
from typing import Literal

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
from draft.piece import Piece
from draft.report import report_text
from draft.seams import Joint, Seam
from draft.shape.shell import Shell
from draft.style import Style

Dialect = Literal["plain", "astm"]


@dataclass(frozen=True, eq=False)
class Pattern:
    """All pieces of one garment. Made by :func:`draft.trousers` and :func:`draft.shorts`.

    Nothing in it is edited by hand: to change it, change body or style and draft again.
    """

    garment_name: str
    body: Body
    style: Style
    method: Method
    fit: Fit
    measured: bool
    shell: Shell
    garment: Garment

    @property
    def block(self) -> Block:
        """Block from which the pieces are cut: fitted, or as the method draws it."""
        return self.fit.block

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
