"""Whether ends mate, what must be added, and what must never be joined although it fits.

Tables of threads, hoses and flanges stand in `data/`, each row with its provenance. A verdict
never gets better by a note, and an unknown end is never taken for one that fits.
"""
