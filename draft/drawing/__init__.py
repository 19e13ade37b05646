"""Pictures of pieces: where labels and notes stand, how pieces lie on a sheet, and the small views for notebooks.

Takes pieces as they are and imports none: so a piece can show itself.
"""
