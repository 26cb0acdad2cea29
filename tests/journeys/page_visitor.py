"""A client at the page in a real browser: Chromium, drawing by software, off every network."""

from __future__ import annotations

import io
import json
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import numpy as np
from PIL import Image
from selenium import webdriver
from selenium.webdriver import ActionChains
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.by import By
from selenium.webdriver.support.wait import WebDriverWait

BROWSER, DRIVER = shutil.which("chromium"), shutil.which("chromedriver")
FLAGS = [
    "--headless", "--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--no-first-run", "--hide-scrollbars",
    # Should a page ask for anything, no name is found and no proxy answers.
    "--host-resolver-rules=MAP * ~NOTFOUND", "--proxy-server=127.0.0.1:9",
]  # fmt: skip
DESK, PHONE = (860, 500), (390, 844)  # small, for all is drawn by software


@contextmanager
def chromium(profile: Path) -> Iterator[webdriver.Chrome]:
    """A browser with an empty profile, off every network."""
    options = webdriver.ChromeOptions()
    options.binary_location = BROWSER or ""
    for flag in (*FLAGS, f"--user-data-dir={profile}"):
        options.add_argument(flag)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    made = webdriver.Chrome(options=options, service=Service(DRIVER))
    try:
        made.set_script_timeout(20)
        made.execute_cdp_cmd("Network.enable", {})
        offline = {"offline": True, "latency": 0, "downloadThroughput": 0, "uploadThroughput": 0}
        made.execute_cdp_cmd("Network.emulateNetworkConditions", offline)
        yield made
    finally:
        made.quit()


class Visitor:
    """A client at the page, and what the browser says of it."""

    def __init__(self, browser: webdriver.Chrome, page: Path) -> None:
        self.browser, self.page = browser, page
        self.requests: list[str] = []
        self.complaints: list[str] = []

    def open(self, size: tuple[int, int] = DESK, *, page: Path | None = None) -> None:
        on_phone = size == PHONE
        self.tell(
            "Emulation.setDeviceMetricsOverride",
            width=size[0], height=size[1], deviceScaleFactor=2 if on_phone else 1, mobile=on_phone,
        )  # fmt: skip
        fingers = {"maxTouchPoints": 5} if on_phone else {}
        self.tell("Emulation.setTouchEmulationEnabled", enabled=on_phone, **fingers)
        self.browser.get((page or self.page).as_uri())
        self.settle()

    def tell(self, command: str, **parts: Any) -> Any:
        return self.browser.execute_cdp_cmd(command, parts)

    def listen(self) -> None:
        """Take down what the browser has asked for and complained of since."""
        for entry in self.browser.get_log("performance"):
            event = json.loads(entry["message"])["message"]
            if event["method"] == "Network.requestWillBeSent":
                self.requests.append(event["params"]["request"]["url"])
        self.complaints += [entry["message"] for entry in self.browser.get_log("browser")]

    def settle(self) -> None:
        """Wait until what was asked for has been drawn."""
        draw = "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(done))"
        self.browser.execute_async_script(draw)

    def find(self, selector: str) -> Any:
        return self.browser.find_element(By.CSS_SELECTOR, selector)

    def all(self, selector: str) -> list[Any]:
        return self.browser.find_elements(By.CSS_SELECTOR, selector)

    @property
    def canvas(self) -> Any:
        return self.find("canvas")

    def picture(self) -> Any:
        self.settle()
        content = self.canvas.screenshot_as_png
        return np.asarray(Image.open(io.BytesIO(content)).convert("RGB")).astype(int)

    def turn(self) -> ActionChains:
        return ActionChains(self.browser, duration=20)

    def offset(self, drawer: str) -> float:
        """How far a drawer is out, mm, as the page has it."""
        return float(self.find(f"[data-drawer={drawer}]").get_attribute("data-open-mm") or 0)

    def wait_for(self, drawer: str, offset: float) -> None:
        WebDriverWait(self.browser, 20, 0.05).until(lambda _: self.offset(drawer) == offset)

    def touch(self, kind: str, *points: tuple[float, float]) -> None:
        places = [{"x": x, "y": y, "id": k} for k, (x, y) in enumerate(points)]
        self.tell("Input.dispatchTouchEvent", type=kind, touchPoints=places)

    def drag_finger(self, *points: tuple[float, float]) -> None:
        self.touch("touchStart", points[0])
        for point in points[1:]:
            self.touch("touchMove", point)
        self.touch("touchEnd")


def other(before: Any, after: Any) -> float:
    """The share of a picture that has changed."""
    return float((np.abs(before - after).max(axis=2) > 12).mean())
