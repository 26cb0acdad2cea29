"""The client's page in a real browser: turned, opened, painted, by mouse, finger and keys."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from selenium import webdriver
from selenium.webdriver.common.actions.wheel_input import ScrollOrigin
from selenium.webdriver.common.keys import Keys

from model.bed import Bed, Design, solve
from model.exports import client_page
from model.publisher import Publisher
from tests.journeys.page_visitor import BROWSER, DRIVER, PHONE, Visitor, chromium, other

OTHER_DOTS = 0.01  # share of the picture that has to change to be seen
WITHOUT_WEBGL = "HTMLCanvasElement.prototype.getContext = () => null"

pytestmark = pytest.mark.skipif(
    not BROWSER or not DRIVER,
    reason="There is no Chromium here with its driver: install chromium and chromium-driver.",
)


@pytest.fixture(scope="module")
def bed() -> Bed:
    rows = {"left.drawers": 3, "right.drawers": 3, "finish": "painted"}
    design = Design(name="A queen bed", publisher=Publisher(name="Third Street Shop"))
    return solve(design.with_choices(rows))


@pytest.fixture(scope="module")
def page(bed: Bed, tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("page") / "client.html"
    client_page.write(bed, file)
    return file


@pytest.fixture(scope="module")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[webdriver.Chrome]:
    with chromium(tmp_path_factory.mktemp("browser")) as made:
        yield made


@pytest.fixture
def visitor(browser: webdriver.Chrome, page: Path) -> Iterator[Visitor]:
    """Every visit ends with a look at what the browser asked for and complained of."""
    browser.get_log("performance"), browser.get_log("browser")
    visitor = Visitor(browser, page)
    yield visitor
    visitor.listen()
    own = {each for each in visitor.requests if each.startswith("data:")}
    asked = [each for each in visitor.requests if each not in own]
    assert asked and all(each.startswith("file:") and each.endswith(".html") for each in asked)
    assert visitor.complaints == []


def test_a_file_on_a_phone_is_small_enough_to_send(page: Path) -> None:
    assert page.stat().st_size < 1_500_000


def test_the_page_opens_alone_and_shows_the_bed(visitor: Visitor) -> None:
    visitor.open()

    assert visitor.canvas.is_displayed() and not visitor.find("#still").is_displayed()
    assert "Third Street Shop" in visitor.find("header").text
    picture = visitor.picture()
    paper = np.abs(picture - (246, 244, 239)).max(axis=2) < 3
    assert 0.2 < paper.mean() < 0.9
    assert len(np.unique(picture.reshape(-1, 3), axis=0)) > 200  # faces, edges, a soft shadow


def test_dragging_turns_the_bed_and_the_button_brings_it_back(visitor: Visitor) -> None:
    visitor.open()
    before = visitor.picture()

    visitor.turn().click_and_hold(visitor.canvas).move_by_offset(120, -30).release().perform()
    turned = visitor.picture()
    assert other(before, turned) > 0.1

    visitor.find("[data-whole]").click()
    assert other(before, visitor.picture()) < OTHER_DOTS
    assert visitor.offset("left-1") == 0  # a drag is no tap


def test_the_wheel_and_the_buttons_come_nearer(visitor: Visitor) -> None:
    visitor.open()
    before = visitor.picture()

    visitor.turn().scroll_from_origin(ScrollOrigin.from_element(visitor.canvas), 0, -240).perform()
    nearer = visitor.picture()
    assert other(before, nearer) > 0.1
    for selector in ("[data-zoom=out]", "[data-turn=left]", "[data-turn=right]"):
        last = visitor.picture()
        visitor.find(selector).click()
        assert other(last, visitor.picture()) > OTHER_DOTS, selector


def test_keys_turn_and_come_nearer(visitor: Visitor) -> None:
    visitor.open()
    start = visitor.picture()

    visitor.browser.execute_script("arguments[0].focus({focusVisible: false})", visitor.canvas)
    last = visitor.picture()
    for key in (Keys.ARROW_LEFT, Keys.ARROW_UP, "+", "-", Keys.ARROW_RIGHT, Keys.ARROW_DOWN):
        visitor.turn().send_keys(key).perform()
        now = visitor.picture()
        assert other(last, now) > OTHER_DOTS, key
        last = now
    visitor.turn().send_keys(Keys.HOME).perform()
    assert other(start, visitor.picture()) < OTHER_DOTS


def test_every_drawer_slides_by_its_own_travel(visitor: Visitor, bed: Bed) -> None:
    visitor.open()
    closed = visitor.picture()

    buttons = {each.get_attribute("data-drawer"): each for each in visitor.all("[data-drawer]")}
    for button in buttons.values():
        button.send_keys(Keys.ENTER)  # by keyboard, as anybody may
    for name, button in buttons.items():
        visitor.wait_for(name, float(bed[f"{name.split('-')[0]}.travel"]))
        assert button.get_attribute("aria-pressed") == "true"
    opened = visitor.picture()
    assert len(buttons) == 6
    assert other(closed, opened) > 0.1

    visitor.find("[data-all-drawers]").click()
    for name in buttons:
        visitor.wait_for(name, 0.0)
    assert other(closed, visitor.picture()) < OTHER_DOTS


def test_a_drawer_opens_where_it_is_clicked_and_shuts_again(visitor: Visitor, bed: Bed) -> None:
    visitor.open()
    point = _a_drawer_under_the_mouse(visitor)

    visitor.turn().move_to_element_with_offset(visitor.canvas, *point).click().perform()

    (name,) = [
        each.get_attribute("data-drawer")
        for each in visitor.all("[data-drawer]")
        if each.get_attribute("aria-pressed") == "true"
    ]
    assert name.startswith("right-")  # the side that is seen
    visitor.wait_for(name, float(bed["right.travel"]))


def _a_drawer_under_the_mouse(visitor: Visitor) -> tuple[int, int]:
    """A point, from the canvas's middle, where the page shows that a drawer can be pressed."""
    size = visitor.canvas.size
    for x in range(0, size["width"] // 2 - 20, 25):
        for y in (60, 120, 180):
            visitor.turn().move_to_element_with_offset(visitor.canvas, x, y).perform()
            if "over-drawer" in (visitor.canvas.get_attribute("class") or ""):
                return x, y
    pytest.fail("no drawer was found under the mouse")


def test_colours_and_mattress_change_what_is_seen(visitor: Visitor) -> None:
    visitor.open()
    seen = [visitor.picture()]
    choices = visitor.all("[data-finish]")
    assert [each.is_selected() for each in choices].index(True) == 1  # the maker paints it

    for choice in (choices[0], *choices[2:]):
        visitor.browser.execute_script("arguments[0].click()", choice)
        seen.append(visitor.picture())
    assert all(other(*pair) > 0.05 for pair in zip(seen, seen[1:], strict=False))

    visitor.find("[data-mattress]").click()
    assert other(seen[-1], visitor.picture()) > 0.05


SLIDES = """
const done = arguments[0], drawer = document.querySelector("[data-drawer]"), seen = [];
new MutationObserver(() => seen.push(Number(drawer.dataset.openMm)))
  .observe(drawer, { attributeFilter: ["data-open-mm"] });
drawer.click();
const travel = JSON.parse(document.getElementById("bed").textContent).drawers[0].travel;
const look = setInterval(() => {
  if (Number(drawer.dataset.openMm) !== travel) return;
  clearInterval(look);
  done(seen);
}, 20);
"""


def test_a_drawer_is_seen_on_its_way(visitor: Visitor, bed: Bed) -> None:
    visitor.open()

    seen = visitor.browser.execute_async_script(SLIDES)

    assert len(seen) > 1 and seen == sorted(seen)
    assert seen[-1] == float(bed["left.travel"])


def test_who_wants_no_motion_gets_none(visitor: Visitor, bed: Bed) -> None:
    calm = [{"name": "prefers-reduced-motion", "value": "reduce"}]
    visitor.tell("Emulation.setEmulatedMedia", features=calm)
    try:
        visitor.open()
        assert visitor.browser.execute_async_script(SLIDES) == [float(bed["left.travel"])]
    finally:
        visitor.tell("Emulation.setEmulatedMedia", features=[])


def test_on_a_phone_fingers_turn_pinch_and_tap(visitor: Visitor) -> None:
    visitor.open(PHONE)
    box = visitor.canvas.rect
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    seen = [visitor.picture()]
    visitor.drag_finger((x, y), (x + 30, y), (x + 80, y + 10))
    seen.append(visitor.picture())
    visitor.touch("touchStart", (x - 40, y), (x + 40, y))
    for step in (60, 90, 120):
        visitor.touch("touchMove", (x - step, y), (x + step, y))
    visitor.touch("touchEnd")
    seen.append(visitor.picture())
    assert all(other(*pair) > 0.05 for pair in zip(seen, seen[1:], strict=False))
    assert {visitor.offset(f"left-{k}") for k in (1, 2, 3)} == {0}  # neither was a tap

    visitor.find("[data-whole]").click()
    assert _taps_a_drawer_open(visitor, box)


def _taps_a_drawer_open(visitor: Visitor, box: dict[str, float]) -> bool:
    """Tap here and there on the right of the bed until a drawer's button says that it is open."""
    for across in (0.6, 0.7, 0.8, 0.9):
        for down in (0.5, 0.58, 0.66, 0.74):
            point = (box["x"] + across * box["width"], box["y"] + down * box["height"])
            visitor.drag_finger(point)
            if visitor.all("[data-drawer][aria-pressed=true]"):
                return True
    return False


CUT_OFF = """
return [...document.querySelectorAll("body *")].filter((each) => {
  const box = each.getBoundingClientRect();
  return box.width && (box.left < -0.5 || box.right > innerWidth + 0.5
    || (each.children.length === 0 && each.scrollWidth > each.clientWidth + 1 && each.clientWidth));
}).map((each) => each.outerHTML.slice(0, 80));
"""


@pytest.mark.parametrize(
    "name", ["A queen bed", "Bettgestellmitsechsschubladenundkopfteil" * 3, "سرير بستة أدراج"]
)
def test_on_a_phone_nothing_is_cut_off(visitor: Visitor, tmp_path: Path, name: str) -> None:
    design = Design(name=name, publisher=Publisher(name=name))
    rows = {"left.drawers": 6, "right.drawers": 6}
    client_page.write(solve(design.with_choices(rows)), tmp_path / "client.html")

    visitor.open(PHONE, page=tmp_path / "client.html")

    wide = "return [document.documentElement.scrollWidth, window.innerWidth]"
    assert visitor.browser.execute_script(wide) == [PHONE[0], PHONE[0]]
    assert visitor.browser.execute_script(CUT_OFF) == []
    small = [each for each in visitor.all("button") if min(each.size.values()) < 24]
    assert small == []  # Source: WCAG 2.2, 2.5.8 Target Size (Minimum), 24 by 24


def test_without_webgl_there_is_a_picture_and_a_sentence(visitor: Visitor) -> None:
    script = visitor.tell("Page.addScriptToEvaluateOnNewDocument", source=WITHOUT_WEBGL)
    try:
        visitor.open(PHONE)
        assert not visitor.canvas.is_displayed()
        assert not any(each.is_displayed() for each in visitor.all("button"))
        still = visitor.find("#still")
        assert still.is_displayed() and visitor.browser.execute_script(
            "return arguments[0].naturalWidth", still
        )
        assert "WebGL" in visitor.find("#no-view").text
        assert "Length" in visitor.find("dl").text
        assert visitor.browser.execute_script(CUT_OFF) == []
    finally:
        visitor.tell("Page.removeScriptToEvaluateOnNewDocument", **script)
