"""A small table that prints as text and as HTML."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape


@dataclass(frozen=True)
class Table:
    """Title, headings and rows of text; the last column is set to the right when it holds numbers.

    Examples
    --------
    >>> print(Table("Sizes", ("where", "mm"), (("waist", "730.0"), ("hip", "1004.2"))))
    Sizes
    where      mm
    -----  ------
    waist   730.0
    hip    1004.2
    """

    title: str
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]

    def __str__(self) -> str:
        cells = [self.headings, *self.rows]
        widths = [max(len(row[i]) for row in cells) for i in range(len(self.headings))]
        right = [self._numeric(i) for i in range(len(self.headings))]
        rule = tuple("-" * width for width in widths)
        lines = [self._line(row, widths, right) for row in (self.headings, rule, *self.rows)]
        return "\n".join([self.title, *lines])

    @staticmethod
    def _line(row: Sequence[str], widths: Sequence[int], right: Sequence[bool]) -> str:
        cells = (
            cell.rjust(width) if flush else cell.ljust(width)
            for cell, width, flush in zip(row, widths, right, strict=True)
        )
        return "  ".join(cells).rstrip()

    def _numeric(self, column: int) -> bool:
        cells = [row[column] for row in self.rows]
        return bool(cells) and all(cell.lstrip("+-").replace(".", "", 1).isdigit() or cell == "" for cell in cells)

    def html(self) -> str:
        """Return the table as HTML, without style sheets; text is escaped."""
        right = [self._numeric(i) for i in range(len(self.headings))]
        head = "".join(f"<th>{escape(h)}</th>" for h in self.headings)
        body = "".join(
            "<tr>"
            + "".join(
                f'<td align="{"right" if flush else "left"}">{escape(cell)}</td>'
                for cell, flush in zip(row, right, strict=True)
            )
            + "</tr>"
            for row in self.rows
        )
        return (
            f"<table><caption>{escape(self.title)}</caption><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"
        )

    def _repr_html_(self) -> str:
        return self.html()
