"""How each measure of a body is taken: words in `lessons`, drawings in `figure`, the sheet of both in `show`."""
