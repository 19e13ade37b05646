"""From what was seen in a mock-up to the alterations that may cure it; nothing is altered here.

How it is known
---------------
Read, in extracts or restatements: a short seat seam and a leg slope that is too open, seat angle and fork as causes of
faults that show when sitting (a tailors' handbook, *The Modern Tailor Outfitter and Clothier*, 1949); surplus length at
the front, and that a leg which looks too long may be a leg of the wrong slope or trousers that cannot rise into the
crotch (*Garment Cutting in the Twentieth Century*, 1892); a fork that is too short or too long as the cause of lines
which rise from or fall away from it (a pattern cutter's article); back rise short for a round seat, and darts that end
before the fullest curve (a course book on sewing pants, in quotations); pockets that gape for want of hip (a manual of
uniform fitting and an article on pocket flare); a sway back cured by shortening the centre back (a bespoke case).
Geometry: how a noted amount becomes the amount of an alteration; a fold takes up twice its depth.
Everything else, in particular the words for the symptoms, the weight given to each cause and the order of work, is
common practice without a source. The weights are judgements: 3 is the usual cause, 2 a frequent one, 1 a possible one.
"""
