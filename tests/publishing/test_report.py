"""``prove --report``: every finding with its ground and its picture, on one page of one file."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from kerfolio.cli import kerfolio
from kerfolio.publishing import report
from kerfolio.publishing.examine import Examined, examine
from kerfolio.publishing.report import report_of
from kerfolio.publishing.reported import write_report
from kerfolio.publishing.say import silent
from tests.pages.markup import Tree
from tests.plans import lay_down
from tests.proving.two_panels import plan_text

WEAK = """
h: {hole: {at: [8, 150], diameter: 8}}
w: {window: {at: [390, 150], rectangle: [40, 40]}}
d: {hole: {at: [200, 150], diameter: 3}}
"""
SILENCE = "silence: {hole-to-drill: 'I <have> the drill.'}"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    return lay_down(tmp_path / "shop", plan_text(WEAK, head=SILENCE), "panels")


def page(shop: Path) -> str:
    return report_of(examine(shop))


def test_every_finding_is_told_with_rule_reason_and_source(shop: Path) -> None:
    found = examine(shop).findings
    tree = Tree(page(shop))
    assert len(found) > 3
    for each in found:
        assert each.message.replace("`", "") in tree.text_of("main")
        assert each.advice.replace("`", "") in tree.text_of("main")
        assert f"{each.place} · {each.rule}" in tree.text_of("main")
    assert "Rests on: common practice, no single source." in tree.text_of("main")
    assert (
        "Little wood splits off, short grain first: a part breaks where it is narrowest."
        in tree.text_of("main")
    )


def test_findings_are_grouped_by_weight_and_the_silenced_come_last(shop: Path) -> None:
    text = Tree(page(shop)).text_of("main")
    heads = ("Stops a publish", "Worth a look before cutting", "Not to be heard")
    spots = [text.index(head) for head in heads]
    assert spots == sorted(spots)
    assert "Silenced: I <have> the drill." in text
    assert "1 silenced" in text


def test_findings_with_a_place_have_a_picture(shop: Path) -> None:
    found = examine(shop).findings
    tree = Tree(page(shop))
    marked = [each for each in found if each.mark]
    assert len(marked) >= 3
    assert page(shop).count("<svg") == len(marked) + 1, "and the workshop's mark"
    assert tree.text_of("main").count("side, at 17.8mm") == len(marked)


def test_the_page_stands_alone(shop: Path) -> None:
    text = page(shop)
    tree = Tree(text)
    assert "<script" not in text
    assert tree.values("src") == []
    links = [each for each in tree.values("href") if not each.startswith(("#", "data:"))]
    assert links == []
    assert len(tree.values("id")) == len(set(tree.values("id")))
    assert 'content="noindex, nofollow"' in text


def test_a_hostile_reason_is_only_text(tmp_path: Path) -> None:
    head = SILENCE.replace("<have>", "<script>alert(1)</script>")
    shop = lay_down(tmp_path / "shop", plan_text(WEAK, head=head), "panels")
    assert "<script" not in page(shop)


def test_the_report_is_the_same_on_every_run(shop: Path) -> None:
    assert page(shop) == page(shop)


def test_a_workshop_that_cannot_be_read_has_a_report(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    text = Tree(page(tmp_path / "empty")).text_of("main")
    assert "Stops a publish" in text


def test_the_command_writes_it_and_says_where(shop: Path, tmp_path: Path) -> None:
    target = tmp_path / "report"
    run = CliRunner().invoke(kerfolio, ["prove", str(shop), "--report", str(target)])
    assert run.exit_code == 1  # the window is an error
    assert f"wrote {target / 'index.html'}" in run.output
    assert "hole-to-drill" not in run.output
    assert "1 silenced." in run.output
    assert (target / "index.html").read_text("utf-8") == page(shop)


def test_json_carries_the_silenced_with_their_reason(shop: Path) -> None:
    run = CliRunner().invoke(kerfolio, ["prove", str(shop), "--format", "json"])
    rows = json.loads(run.stdout)
    (row,) = [each for each in rows if each["rule"] == "hole-to-drill"]
    assert (row["severity"], row["silenced"]) == ("note", "I <have> the drill.")


def test_a_report_is_drawn_again_only_where_something_changed(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn: list[int] = []

    def counting(examined: Examined) -> str:
        drawn.append(1)
        return report_of(examined)

    monkeypatch.setattr(report, "report_of", counting)

    def told() -> tuple[list[str], str]:
        findings, target = write_report(tmp_path / "report", shop, "", silent)
        return list(map(str, findings)), target.read_text("utf-8")

    first = told()
    assert told() == first
    assert first == (list(map(str, examine(shop).findings)), page(shop))
    assert len(drawn) == 1
    plan = shop / "plans" / "panels" / "plan.yaml"
    plan.write_text(plan.read_text("utf-8").replace("diameter: 3}", "diameter: 2.5}"), "utf-8")
    assert told() != first
    assert len(drawn) == 2
    (shop / "workshop.yaml").write_text("workshop: [", "utf-8")
    assert told() == told()
    assert len(drawn) == 4  # nothing of it is kept


def test_what_is_wrong_with_a_folder_itself_is_told_under_it(shop: Path) -> None:
    (shop / "plans" / "empty").mkdir()
    text = Tree(page(shop)).text_of("main")
    assert "no plan.yaml in this folder" in text
    assert "plans/empty · no-plan" in text
    assert [each.rule for each in examine(shop, "empty").findings] == ["unknown-plan", "no-plan"]
