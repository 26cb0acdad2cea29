"""Banner, notice, why: each shows a record and says what was asked for."""

from PySide6.QtCore import Qt, QUrl
from pytestqt.qtbot import QtBot

from app.panes.notice import Notice
from app.panes.refusal_banner import RefusalBanner
from app.panes.why_pane import WhyPane

CHAIN = [
    'left.opening_width = 20". Openings are alike, so that one box size serves the row.',
    "  = grid.down(clear_length / bays)",
    '    left.clear_length = 70". What the stiles leave of the run is shared by the openings.',
    "    left.drawers = 3, your choice",
]


def test_the_chain_of_reasons_is_told_with_links(qtbot: QtBot) -> None:
    pane = WhyPane()
    qtbot.addWidget(pane)

    pane.tell("left.opening_width", CHAIN, lambda name: name == "left.drawers")

    told = pane.text.toPlainText()
    assert "Openings are alike" in told
    assert "grid.down(clear_length / bays)" in told
    assert 'href="choice:left.drawers"' in pane.text.toHtml()
    assert 'href="dimension:left.clear_length"' in pane.text.toHtml()


def test_links_lead_to_a_choice_or_to_the_next_why(qtbot: QtBot) -> None:
    pane = WhyPane()
    qtbot.addWidget(pane)

    with qtbot.waitSignal(pane.choice_shown) as choice:
        pane.text.anchorClicked.emit(QUrl("choice:left.drawers"))
    with qtbot.waitSignal(pane.asked) as dimension:
        pane.text.anchorClicked.emit(QUrl("dimension:rail_top"))

    assert (choice.args, dimension.args) == (["left.drawers"], ["rail_top"])


def test_the_banner_offers_a_way_out_only_when_one_is_known(qtbot: QtBot) -> None:
    banner = RefusalBanner()
    qtbot.addWidget(banner)

    banner.tell("recess", "Recess 9 is not built.", "Too deep.", "", can_use=False)
    assert not banner.use_button.isEnabled()
    banner.tell("recess", "Recess 9 is not built.", "Too deep.", "4 would work.", can_use=True)

    with qtbot.waitSignal(banner.offer_taken) as taken:
        qtbot.mouseClick(banner.use_button, Qt.MouseButton.LeftButton)
    assert taken.args == ["recess"]


def test_an_answer_closes_the_notice(qtbot: QtBot) -> None:
    notice, answers = Notice(), []
    qtbot.addWidget(notice)
    notice.tell("A bed was left behind.", [("Open it", lambda: answers.append("open"))])
    assert not notice.isHidden()

    qtbot.mouseClick(notice.buttons[0], Qt.MouseButton.LeftButton)

    assert answers == ["open"]
    assert notice.isHidden()
