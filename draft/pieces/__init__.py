"""Pieces: one file per kind, each made from the same edges of the shell.

To add a kind of pocket, hem, band or closing: write one file with its choice (a frozen class, see ``draft/style.py``)
and its functions (see the protocols in ``draft/pieces/plan.py``), and add one line here.
"""
