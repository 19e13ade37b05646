"""Files: SVG and two dialects of DXF. They draw what the pattern says and compute no garment."""
