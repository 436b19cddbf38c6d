"""Spoiled files of a workshop besides its plans are read or told: stock, log, pages, who it is.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_workshop_files.py
"""

from __future__ import annotations

import pytest

from kerfolio.reading.desk import Desk
from kerfolio.reading.identity import IDENTITY
from kerfolio.reading.page import read_page
from kerfolio.reading.stock import STOCK, make_stock
from kerfolio.reading.trial import LOG
from kerfolio.reading.yaml_text import read_yaml
from tests.fuzz.findings import check_findings
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated
from tests.fuzz.seeds import texts

SEEDS = texts("workshop.yaml", "stock/*.yaml", "log/*.yaml", "pages/*.md", "plans/*/steps/*.md")


def check(text: str) -> None:
    content = text.encode("utf-8", "surrogatepass")
    page, told = read_page(content, "pages/a.md", "a")
    check_findings(told, "pages/a.md")
    assert page is not None or told, "neither read nor told"
    node, findings = read_yaml(content, "a.yaml")
    check_findings(findings, "a.yaml")
    for form in (IDENTITY, STOCK, LOG) if node is not None else ():
        desk = Desk()
        value = form.read(node, desk)
        if form is STOCK and value:
            make_stock({}, value, desk)
        check_findings(desk.findings, "a.yaml")
        assert value is not None or desk.findings or findings, "neither read nor told"


@pytest.mark.fuzz
def test_a_spoiled_file_is_read_or_told() -> None:
    hunt(mutated(SEEDS), check)
