"""The licences a maker may choose, by SPDX id (SPDX licence list; checked against it in tests)."""

from __future__ import annotations

from kerfolio.reading.values import choice

LICENCES = (
    *("CC0-1.0", "CC-BY-4.0", "CC-BY-SA-4.0", "CC-BY-NC-4.0", "CC-BY-NC-SA-4.0"),
    *("CC-BY-ND-4.0", "CC-BY-NC-ND-4.0", "CERN-OHL-P-2.0", "CERN-OHL-W-2.0", "CERN-OHL-S-2.0"),
    *("TAPR-OHL-1.0", "MIT", "Apache-2.0", "GPL-3.0-only", "GPL-3.0-or-later", "OFL-1.1"),
    *("0BSD", "Unlicense"),
)
LICENCE = choice("a licence known here", *LICENCES)
