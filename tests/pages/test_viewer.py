"""The page's 3-D viewer: its markup, and the viewer at work in a real browser."""

from __future__ import annotations

import io
import re
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from PIL import Image, ImageChops

from kerfolio.assembly.assembled import BuildOrder
from kerfolio.basis.reader import METRIC
from kerfolio.basis.shipped import shipped
from kerfolio.drawing.model_3d import Model3d
from kerfolio.drawing.model_view import model_of, viewer_data
from kerfolio.model.workshop import Identity
from kerfolio.pages.frame import Frame, lone_frame
from kerfolio.pages.theme import THEME, render
from kerfolio.pages.viewer import Viewer, viewer_of, viewer_script
from tests.assembly.scenes import assembled, order, titles
from tests.outside import nu_messages
from tests.pages.axe import axe_finds

FOLDER = shipped("themes") / THEME
SCRIPT = (FOLDER / "viewer.js").read_text("utf-8")
OPEN = "Look at it in 3-D"
SIZE = "360 × 467.8 × 17.8 mm"


@cache
def model() -> Model3d:
    name = "harbour-stool"
    return model_of(
        assembled(name), order(name), "Harbour stool", titles(name), sized=lambda _: SIZE
    )


def viewer() -> Viewer:
    return viewer_of(model().title, viewer_data(model()), METRIC)


def frame_for(title: str) -> Frame:
    identity = Identity(title="A bench", maker="Ada Example")
    words = "A page to try the viewer on."
    return lone_frame(identity, title, words, scripts=(viewer_script(METRIC),))


def fragment_of(shown: Viewer) -> str:
    return render("viewer.html", METRIC, viewer=shown, frame=frame_for(shown.title))


def page_text(shown: Viewer) -> str:
    """Return a page of one file that shows the viewer and nothing else."""
    text = render("base.html", METRIC, frame=frame_for(shown.title))
    fragment = fragment_of(shown)
    chapter = f'<div class="chapter"><h1>{shown.title}</h1><div>{fragment}</div></div>'
    return text.replace("</main>", f"{chapter}</main>")


def test_hostile_words_stay_words() -> None:
    evil = "</script><script>alert(1)</script><!-- \u2028"
    hostile = model_of(assembled("desk-rack"), order("desk-rack"), evil, [evil] * 9)
    text = fragment_of(viewer_of(evil, viewer_data(hostile), METRIC))
    assert text.count("<script") == 2
    assert "alert(1)</script>" not in text
    assert "\u2028" not in viewer_of(evil, viewer_data(hostile), METRIC).data


def test_the_script_is_small_plain_and_asks_for_nothing() -> None:
    assert len(SCRIPT.encode()) < 26_000
    assert (
        re.findall(r"fetch|XMLHttp|import\b|\beval|Function\(|https?:|</script|<!--", SCRIPT) == []
    )
    assert SCRIPT.count('"use strict"') == 1


def test_without_javascript_nothing_shows() -> None:
    outside = re.sub(r"<(template|script)>.*?</\1>", "", fragment_of(viewer()), flags=re.S)
    assert re.findall(r"<\w+[^>]*>", outside) == [
        '<div class="viewer">',
        '<p class="viewer-open" hidden>',
        '<button type="button">',
    ]


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    target = tmp_path_factory.mktemp("viewer") / "page.html"
    target.write_text(page_text(viewer()), "utf-8")
    return target


def opened(browser: Any, written: Path, **options: Any) -> Any:
    size = {"width": options.pop("width", 1000), "height": 900}
    options = {"reduced_motion": "reduce", **options}
    page = browser.new_context(viewport=size, **options).new_page()
    page.faults = []
    page.asked = []
    page.on("console", lambda said: said.type == "error" and page.faults.append(said.text))
    page.on("pageerror", lambda fault: page.faults.append(str(fault)))
    page.on("request", lambda request: page.asked.append(request.url))
    page.goto(written.as_uri())
    return page


def canvas(page: Any) -> Any:
    return page.get_by_role("application", name="Harbour stool in 3-D")


def picture(page: Any) -> Image.Image:
    """Return what the canvas shows once the next frames are drawn."""
    page.evaluate("() => new Promise(r => requestAnimationFrame(() => requestAnimationFrame(r)))")
    shot = canvas(page).screenshot(animations="disabled")
    return Image.open(io.BytesIO(shot)).convert("RGB")


def differ(one: Image.Image, other: Image.Image) -> bool:
    return ImageChops.difference(one, other).getbbox() is not None


@pytest.mark.browser
def test_it_draws_from_a_disk_only_when_asked_and_asks_for_nothing(
    browser: Any, written: Path
) -> None:
    page = opened(browser, written)
    assert page.locator("canvas").count() == 0
    page.get_by_role("button", name=OPEN).click()
    colours = picture(page).getcolors(1 << 20)
    ground = max(count for count, _ in colours)
    assert 0.1 < 1 - ground / sum(count for count, _ in colours) < 0.9
    assert len(colours) > 50
    assert page.evaluate("() => document.activeElement.tagName") == "CANVAS"
    assert {url.split(":")[0] for url in page.asked} <= {"file", "data"}
    assert len([url for url in page.asked if url.startswith("file")]) == 1
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
def test_every_control_changes_the_picture(browser: Any, written: Path) -> None:
    page = opened(browser, written)
    page.get_by_role("button", name=OPEN).click()
    first = picture(page)
    for name in ("Turn left", "Turn right", "Turn up", "Turn down", "Closer", "Farther"):
        before = picture(page)
        page.get_by_role("button", name=name, exact=True).click()
        assert differ(before, picture(page)), name
    page.get_by_role("button", name="First view").click()
    assert not differ(first, picture(page))
    page.get_by_label("Apart").fill("100")
    assert differ(first, picture(page))
    page.get_by_label("Apart").fill("0")
    assert not differ(first, picture(page))
    page.get_by_label("Step", exact=True).fill("1")
    assert differ(first, picture(page))
    page.get_by_label("Marks").check()
    picture(page)
    added = {each.mark for each in model().pieces if each.step == model().steps[0].number}
    assert len(added) < len(model().pieces)
    shown = set(page.locator(".viewer-labels span").all_inner_texts())
    assert shown
    assert shown <= added
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
def test_the_keys_turn_move_and_zoom(browser: Any, written: Path) -> None:
    page = opened(browser, written)
    page.get_by_role("button", name=OPEN).press("Enter")
    first = picture(page)
    for key in ("ArrowLeft", "ArrowUp", "+", "-", "Shift+ArrowRight", "Shift+ArrowDown"):
        before = picture(page)
        page.keyboard.press(key)
        assert differ(before, picture(page)), key
    page.keyboard.press("0")
    assert not differ(first, picture(page))
    outline = "() => getComputedStyle(document.activeElement).outlineStyle"
    page.keyboard.press("Tab")
    assert page.evaluate("() => document.activeElement.id") == "viewer-steps"
    assert page.evaluate(outline) == "solid"
    told = page.locator(".viewer-told")
    assert told.inner_text() == "Finished"
    page.keyboard.press("ArrowLeft")
    last = model().steps[-1]
    assert told.inner_text().startswith(f"Step {last.number}: {last.title} (")
    assert (
        page.get_by_label("Step", exact=True).get_attribute("aria-valuetext") == told.inner_text()
    )
    piece, chooser = model().pieces[0], page.get_by_label("Piece", exact=True)
    chooser.select_option("0")
    step = next(each for each in model().steps if each.number == piece.step)
    about = f"{piece.mark} {piece.title} · {SIZE} · step {step.number} {step.title}"
    assert told.inner_text() == about
    chooser.select_option("")
    assert told.inner_text() != about
    page.context.close()


@pytest.mark.browser
def test_dragging_turns_it_and_the_wheel_zooms(browser: Any, written: Path) -> None:
    page = opened(browser, written)
    page.get_by_role("button", name=OPEN).click()
    first = picture(page)
    box = canvas(page).bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 80, y + 20)
    page.mouse.up()
    turned = picture(page)
    assert differ(first, turned)
    page.mouse.move(x - 80, y)
    assert not differ(turned, picture(page))
    page.mouse.wheel(0, -300)
    assert differ(turned, picture(page))
    page.context.close()


@pytest.mark.browser
def test_a_piece_is_named_by_a_tap_and_from_the_list(browser: Any, written: Path) -> None:
    page = opened(browser, written)
    page.get_by_role("button", name=OPEN).click()
    first, chooser = picture(page), page.get_by_label("Piece", exact=True)
    titles = [f"{each.mark} {each.title}" for each in model().pieces]
    assert chooser.locator("option").all_inner_texts()[1:] == titles
    chooser.select_option(label=titles[0])
    assert differ(first, picture(page))
    mark = page.locator(".viewer-labels span")
    assert mark.all_inner_texts() == [model().pieces[0].mark]
    spot = mark.bounding_box()
    chooser.select_option(index=0)
    assert not differ(first, picture(page))
    page.mouse.click(spot["x"] + spot["width"] / 2, spot["y"] + spot["height"] / 2)
    assert chooser.locator("option:checked").inner_text() == titles[0]
    box = canvas(page).bounding_box()
    page.mouse.click(box["x"] + 3, box["y"] + 3)
    assert chooser.input_value() == ""
    assert not differ(first, picture(page))
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
def test_marks_stand_on_what_is_seen_and_apart(browser: Any, written: Path) -> None:
    page = opened(browser, written, width=390)
    page.get_by_role("button", name=OPEN).click()
    page.get_by_label("Marks").check()
    picture(page)
    boxes = [each.bounding_box() for each in page.locator(".viewer-labels span").all()]
    assert len(boxes) > 2
    for n, one in enumerate(boxes):
        for other in boxes[:n]:
            beside = (
                one["x"] + one["width"] <= other["x"] or other["x"] + other["width"] <= one["x"]
            )
            under = (
                one["y"] + one["height"] <= other["y"] or other["y"] + other["height"] <= one["y"]
            )
            assert beside or under
    page.context.close()


@pytest.mark.browser
def test_no_mark_stands_on_a_hole(browser: Any, written: Path) -> None:
    """Each side of the stool has a hand hole in its middle."""
    page = opened(browser, written)
    page.get_by_role("button", name=OPEN).click()
    bare = picture(page)
    page.get_by_label("Marks").check()
    picture(page)
    box, ground = canvas(page).bounding_box(), bare.getpixel((1, 1))
    spots = [each.bounding_box() for each in page.locator(".viewer-labels span").all()]
    assert len(spots) == len([each for each in model().pieces if not each.is_hardware])
    for at in spots:
        x, y = at["x"] - box["x"], at["y"] - box["y"]
        under = bare.crop((int(x), int(y), int(x + at["width"]), int(y + at["height"])))
        assert ground not in [colour for _, colour in under.getcolors(1 << 12)]
    page.context.close()


@pytest.mark.browser
def test_opened_on_a_phone_a_thumb_still_scrolls_and_it_can_be_put_away(
    browser: Any, written: Path
) -> None:
    page = opened(browser, written, width=390, has_touch=True)
    page.get_by_role("button", name=OPEN).click()
    assert canvas(page).evaluate("node => getComputedStyle(node).touchAction") == "pan-y"
    page.get_by_role("button", name="Put away").click()
    assert page.locator("canvas").count() == 0
    assert page.get_by_role("button", name=OPEN).evaluate("node => node === document.activeElement")
    page.get_by_role("button", name=OPEN).click()
    assert len(picture(page).getcolors(1 << 20)) > 50
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
def test_a_thumb_scrolls_the_page_up_and_down_and_turns_the_thing_sideways(
    browser: Any, written: Path
) -> None:
    page = opened(browser, written, width=390, has_touch=True, is_mobile=True)
    page.evaluate("() => { document.body.style.paddingBottom = '2000px' }")
    page.get_by_role("button", name=OPEN).click()
    hand = page.context.new_cdp_session(page)

    def scrolled(across: float, up: float) -> float:
        before, box = page.evaluate("scrollY"), canvas(page).bounding_box()
        x, y = box["x"] + box["width"] / 3, box["y"] + box["height"] / 2
        for share in (0.0, 0.25, 0.5, 0.75, 1.0):
            spot = {"x": x + share * across, "y": y + share * up}
            kind = "touchMove" if share else "touchStart"
            hand.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [spot]})
            page.wait_for_timeout(20)
        hand.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
        page.wait_for_timeout(200)
        return float(page.evaluate("scrollY") - before)

    first = picture(page)
    assert scrolled(120, 0) == 0
    turned = picture(page)
    assert differ(first, turned)
    assert scrolled(0, -120) > 40
    assert not differ(turned, picture(page))
    page.context.close()


@pytest.mark.browser
def test_it_fills_the_screen_and_leaves_it(browser: Any, written: Path) -> None:
    page = opened(browser, written)
    page.get_by_role("button", name=OPEN).click()
    button = page.get_by_role("button", name="Full screen")
    button.click()
    page.wait_for_function("() => document.fullscreenElement?.classList.contains('viewer')")
    assert button.get_attribute("aria-pressed") == "true"
    button.click()
    page.wait_for_function("() => document.fullscreenElement === null")
    page.context.close()


@pytest.mark.browser
def test_where_the_screen_is_kept_for_films_it_fills_the_window(
    browser: Any, written: Path
) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
    context.add_init_script(
        "Object.defineProperty(Document.prototype, 'fullscreenEnabled', {get: () => false})"
    )
    page = context.new_page()
    page.goto(written.as_uri())
    page.get_by_role("button", name=OPEN).click()
    button = page.get_by_role("button", name="Full screen")
    place = page.locator(".viewer")
    button.click()
    assert place.bounding_box() == {"x": 0, "y": 0, "width": 390, "height": 844}
    assert canvas(page).evaluate("node => getComputedStyle(node).touchAction") == "none"
    assert button.get_attribute("aria-pressed") == "true"
    page.keyboard.press("Escape")
    assert canvas(page).evaluate("node => getComputedStyle(node).touchAction") == "pan-y"
    assert button.get_attribute("aria-pressed") == "false"
    context.close()


@pytest.mark.browser
def test_colours_follow_the_readers_scheme(browser: Any, written: Path) -> None:
    page = opened(browser, written, color_scheme="light")
    page.get_by_role("button", name=OPEN).click()
    light = picture(page)
    page.emulate_media(color_scheme="dark")
    dark = picture(page)
    means = [
        sum(each.convert("L").tobytes()) / (each.width * each.height) for each in (light, dark)
    ]
    assert means[0] > 120 > 80 > means[1]
    page.context.close()


@pytest.mark.browser
def test_new_pieces_come_home_unless_motion_is_unwanted(browser: Any, written: Path) -> None:
    page = opened(browser, written, reduced_motion="no-preference")
    page.get_by_role("button", name=OPEN).click()
    page.get_by_label("Step", exact=True).fill("2")
    page.get_by_label("Step", exact=True).fill("3")
    page.wait_for_timeout(2500)
    moved = picture(page)
    still = opened(browser, written)
    still.get_by_role("button", name=OPEN).click()
    still.get_by_label("Step", exact=True).fill("3")
    assert not differ(moved, picture(still))
    page.context.close()
    still.context.close()


@pytest.mark.browser
def test_without_webgl_it_says_so(browser: Any, written: Path) -> None:
    context = browser.new_context()
    context.add_init_script("HTMLCanvasElement.prototype.getContext = () => null")
    page = context.new_page()
    page.goto(written.as_uri())
    page.get_by_role("button", name=OPEN).click()
    assert page.get_by_text("WebGL is missing or switched off").is_visible()
    assert page.locator("canvas").count() == 0
    assert page.get_by_role("slider").count() == 0
    context.close()


@pytest.mark.browser
def test_without_scripts_there_is_no_button(browser: Any, written: Path) -> None:
    page = opened(browser, written, java_script_enabled=False)
    assert page.get_by_role("button").count() == 0
    page.context.close()


@pytest.mark.browser
def test_a_plan_without_an_order_has_no_sliders(browser: Any, tmp_path: Path) -> None:
    rack = model_of(assembled("desk-rack"), BuildOrder(steps=()), "Rack")
    target = tmp_path / "page.html"
    target.write_text(page_text(viewer_of("Rack", viewer_data(rack), METRIC)), "utf-8")
    page = opened(browser, target)
    page.get_by_role("button", name=OPEN).click()
    assert page.get_by_role("slider").count() == 0
    assert page.get_by_role("application", name="Rack in 3-D").is_visible()
    assert page.faults == []
    page.context.close()


@pytest.mark.browser
@pytest.mark.node
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_axe_finds_nothing(browser: Any, written: Path, width: int, scheme: str) -> None:
    page = opened(browser, written, width=width, color_scheme=scheme)
    page.get_by_role("button", name=OPEN).click()
    page.get_by_label("Marks").check()
    picture(page)
    assert axe_finds(page) == []
    assert page.locator("html").evaluate("node => node.scrollWidth") <= width
    page.context.close()


@pytest.mark.java
@pytest.mark.node
def test_the_nu_checker_finds_nothing(written: Path) -> None:
    assert nu_messages(written) == []
