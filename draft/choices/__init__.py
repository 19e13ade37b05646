"""More kinds to choose from: bands, closings, pockets and hems beyond the first of each, in ``draft.style``."""
