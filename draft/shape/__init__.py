"""From block to shell: waist level, darts, leg length and width, and the trueing of every corner.

A shell is the outline of front and back as they will be sewn, before pockets and fly cut it into pieces.
"""
