"""Plane curves in millimetres: complex points, lines, cubics and paths. Knows no garment.

Glossary
--------
point      a complex number in mm, x across and y up
direction  a complex number of length 1 (``_dir`` in names)
segment    a :class:`~draft.geometry.segments.Line` or a :class:`~draft.geometry.segments.Cubic`
path       segments joined end to end; places on it are arc lengths in mm from its start
left       on the left hand of somebody who walks along the path (``1j * direction``)
"""
