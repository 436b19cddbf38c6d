"""When two numbers count as the same."""

from __future__ import annotations

SAME = 0.005
"""Lengths nearer than this, mm, are one length: half of the hundredth that callipers read."""

NOISE = 1e-6
"""What arithmetic in binary fractions may leave between equal numbers, in mm or as a ratio."""

AS_LISTED = 0.0127
"""mm within which a thickness is a bound of the stock: half a thousandth of an inch, to which
tables of sheets are rounded. 23/32 in is listed as 0.719 in.
"""
