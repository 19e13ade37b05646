"""Mock-up: the same garment in cheap cloth, to be pinned and written on, and the sheet that goes with it."""
