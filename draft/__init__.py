"""Trousers and shorts drafted from body measurements: pieces that sew together, files that cut true to size."""
