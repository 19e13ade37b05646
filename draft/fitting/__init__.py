"""Least change of a block until its lengths equal the body's: what may move, how far, and the solution."""
