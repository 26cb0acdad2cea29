"""The whole window, by mouse and keyboard, on real beds."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QMessageBox
from pytestqt.qtbot import QtBot

from app.fields.length_field import LengthField
from app.panes.kept_work import KeptWork
from app.session import Session
from app.window import CHECKS, CLEARANCES, PARTS, STRENGTH, Window
from model import designs
from model.bed import Design, solve

ROOT = Path(__file__).resolve().parents[2]
pytestmark = pytest.mark.gl


def put_away(window: Window) -> None:
    """So that closing asks nothing."""
    window.session.worker.wait()
    window.session.mark_saved(None)


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path) -> Window:
    session = Session(Design())
    made = Window(session, KeptWork(session, tmp_path / "unsaved"))
    qtbot.addWidget(made, before_close_func=put_away)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    qtbot.waitUntil(lambda: session.is_judged, timeout=20_000)
    return made


def type_in(qtbot: QtBot, window: Window, name: str, text: str) -> LengthField:
    field = window.choices.field(name)
    assert isinstance(field, LengthField)
    window.choices.go_to(name)
    field.line.selectAll()
    qtbot.keyClicks(field.line, text)
    qtbot.keyClick(field.line, Qt.Key.Key_Return)
    return field


def test_a_typed_size_moves_the_bed_the_list_and_the_summary(qtbot: QtBot, window: Window) -> None:
    before = window.summary.sizes.text()

    with qtbot.waitSignal(window.session.changed):
        type_in(qtbot, window, "mattress_width", "54")

    assert window.session.design.value("mattress_width") == pytest.approx(54 * 25.4)
    assert window.view.bed is window.session.bed
    assert window.summary.sizes.text() != before


def test_a_refused_size_is_told_beside_its_field_and_the_last_bed_stays(
    qtbot: QtBot, window: Window
) -> None:
    bed = window.session.bed

    with qtbot.waitSignal(window.session.refused):
        field = type_in(qtbot, window, "top_rail_width", "61 mm")

    assert window.session.bed is bed
    assert window.view.bed is bed
    assert field.line.text() == "61 mm"
    assert field.sentence
    assert window.banner.isVisible()


def test_the_offered_way_out_builds(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.session.mended, timeout=60_000):
        type_in(qtbot, window, "top_rail_width", "61 mm")
    assert window.banner.use_button.isEnabled()

    with qtbot.waitSignal(window.session.changed):
        qtbot.mouseClick(window.banner.use_button, Qt.MouseButton.LeftButton)

    assert not window.banner.isVisible()
    assert window.session.refusals == {}


def test_escape_takes_a_refused_size_back(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.session.refused):
        field = type_in(qtbot, window, "top_rail_width", "61 mm")

    qtbot.keyClick(field.line, Qt.Key.Key_Escape)

    assert field.sentence == ""
    assert not window.banner.isVisible()


def test_a_row_picks_its_pieces_and_a_piece_its_row(qtbot: QtBot, window: Window) -> None:
    table = window.parts.parts
    index = table.sorted.index(3, 0)
    place = table.visualRect(index).center()

    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert window.view.selected == frozenset(table.record.pieces)

    piece = table.sorted.rows.records[5].pieces[0]
    window.view.picked.emit(piece)
    assert piece in table.record.pieces
    assert window.view.selected == {piece}


def test_a_size_that_is_clicked_says_why(qtbot: QtBot, window: Window) -> None:
    table = window.parts.parts
    index = table.sorted.index(0, 4)
    place = table.visualRect(index).center()

    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)

    assert window.why.name == table.record.length.name
    assert "your choice" in window.why.text.toPlainText()


def test_the_name_of_a_choice_tells_what_hangs_on_it(qtbot: QtBot, window: Window) -> None:
    field = window.choices.field("recess")

    qtbot.mouseClick(field._heading, Qt.MouseButton.LeftButton)

    assert window.why.name == "recess"
    assert "deck top" in window.why.text.toPlainText()


def test_a_choice_in_the_chain_leads_to_its_field(qtbot: QtBot, window: Window) -> None:
    window.why.choice_shown.emit("beam_height")

    qtbot.waitUntil(lambda: window.choices.field("beam_height").input().hasFocus())


def test_units_are_switched_everywhere_at_once(qtbot: QtBot, window: Window) -> None:
    window.show_list(CLEARANCES)

    with qtbot.waitSignal(window.session.judged, timeout=20_000):
        window.strip.unit_chosen.emit("mm")

    table = window.parts.parts
    heading = table.sorted.headerData(6, Qt.Orientation.Horizontal)
    assert heading == "Thickness, mm"
    assert table.columnWidth(6) > table.horizontalHeader().fontMetrics().horizontalAdvance(heading)
    assert window.choices.field("mattress_width").line.text() == "1524 mm"
    assert "mm" in window.summary.sizes.text()
    assert "mm" in window.clearances.table.sorted.index(0, 2).data()


def test_a_number_on_the_bed_says_why(window: Window) -> None:
    window.view.dimension_picked.emit("sleeping_height")

    assert "mattress" in window.why.text.toPlainText()


def test_undo_and_redo_by_key(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.session.changed):
        type_in(qtbot, window, "mattress_length", "75")
    window.parts.parts.setFocus()

    with qtbot.waitSignal(window.session.changed):
        qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.choices.field("mattress_length").line.text() == '80"'

    shifted = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    with qtbot.waitSignal(window.session.changed):
        qtbot.keyClick(window, Qt.Key.Key_Z, shifted)
    assert window.choices.field("mattress_length").line.text() == '75"'


def test_a_dragged_slider_moves_the_bed_on_its_way(qtbot: QtBot, window: Window) -> None:
    field = window.choices.field("mattress_width")
    slider, left = field.slider, Qt.MouseButton.LeftButton
    beds: list[object] = []
    window.session.changed.connect(lambda _: beds.append(window.session.bed))
    x = round(slider.width() * slider.value() / slider.maximum())
    start = QPoint(min(max(x, 6), slider.width() - 6), slider.height() // 2)

    qtbot.mousePress(slider, left, pos=start)
    for step in range(1, 6):
        qtbot.mouseMove(slider, start - QPoint(4 * step, 0))
        QApplication.processEvents()
    qtbot.mouseRelease(slider, left, pos=start - QPoint(20, 0))

    assert len(beds) >= 2
    window.session.undo()
    assert window.session.design == Design()


def test_the_clearances_of_every_drawer_can_be_drawn(qtbot: QtBot, window: Window) -> None:
    window.show_list(CLEARANCES)

    for place in range(window.clearances.chooser.count()):
        window.clearances.chooser.setCurrentIndex(place)
        for view in window.clearances.views:
            view.grab()
            assert view.drawing is not None and view.drawing.gaps


def test_a_number_on_a_section_says_why(qtbot: QtBot, window: Window) -> None:
    window.show_list(CLEARANCES)
    view = window.clearances.views[0]
    view.grab()
    ring = view.rings[1][0].toPoint()

    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=ring)

    assert window.why.name


def test_the_strength_of_the_bed_is_listed_drawn_and_coloured(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.desk_of_strength.changed, timeout=20_000):
        window.show_list(STRENGTH)
    pane = window.strength
    uses = [int(row.use * 100) for row in pane.loads.sorted.rows.records]
    assert len(uses) > 5 and uses == sorted(uses, reverse=True)
    assert len(pane.chart.lines) == 2

    qtbot.mouseClick(pane.bed_button, Qt.MouseButton.LeftButton)

    assert window.view.stage.strain.carried is window.session.bed.strength
    assert window.loads.isVisible()


def test_a_piece_picked_on_the_bed_tells_what_it_carries(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.desk_of_strength.changed, timeout=20_000):
        window.show_list(STRENGTH)
    piece = int(window.session.bed.strength.pieces[3])

    window.view.picked.emit(piece)

    assert window.lists.currentIndex() == STRENGTH
    assert window.strength.effects.record.effect.piece == piece
    assert window.view.selected == {piece}


def test_a_piece_picked_in_the_list_is_marked_on_the_bed(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.desk_of_strength.changed, timeout=20_000):
        window.show_list(STRENGTH)
    window.strength.show_table(1)
    table = window.strength.effects
    place = table.visualRect(table.sorted.index(1, 1)).center()

    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)

    assert window.view.selected == {table.record.effect.piece}
    assert window.look.picked_label.text()


def test_an_assumed_load_leads_to_its_choice(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.desk_of_strength.changed, timeout=20_000):
        window.show_list(STRENGTH)
    rows = window.strength.loads.sorted.rows.records
    name = next(row.choices[0] for row in rows if row.is_assumed and row.choices)

    window.strength.told.linkActivated.emit(f"choice:{name}")

    qtbot.waitUntil(lambda: window.choices.field(name).input().hasFocus())


def test_a_dragged_slider_is_followed_in_the_bed_s_own_colours(
    qtbot: QtBot, window: Window
) -> None:
    with qtbot.waitSignal(window.desk_of_strength.changed, timeout=20_000):
        window.look.choose_colour("strength")
    stage = window.view.stage
    seen: list[bool] = []
    window.view.canvas.frameSwapped.connect(
        lambda: seen.append(
            stage.strain is None or stage.strain.carried is window.view.bed.strength
        )
    )
    for height in range(401, 407):
        window.session.drag("rail_height", float(height))
        qtbot.wait(30)
    window.session.settle("rail_height")

    qtbot.waitUntil(
        lambda: stage.strain is not None and stage.strain.carried is window.session.bed.strength,
        timeout=20_000,
    )
    assert seen and all(seen)
    assert window.view.bed is window.session.bed


def test_checks_are_listed_worst_first_with_reason_and_source(qtbot: QtBot, window: Window) -> None:
    window.show_list(CHECKS)
    table = window.checks.table

    table.selectRow(0)

    order = ["fails", "tight", "note", "holds"]
    said = [table.sorted.index(row, 0).data() for row in range(table.sorted.rowCount())]
    assert said == sorted(said, key=order.index)
    assert "Source:" in window.checks._reason.text()


def test_the_list_is_copied_as_text(qtbot: QtBot, window: Window) -> None:
    window.show_list(PARTS)

    qtbot.mouseClick(window.parts.copy_button, Qt.MouseButton.LeftButton)

    lines = QGuiApplication.clipboard().text().splitlines()
    assert lines[0].startswith("Mark\tPart\t")
    assert len(lines) == 1 + len(window.session.bed.marks)


def test_the_plan_package_is_written_beside_the_window(
    qtbot: QtBot, window: Window, tmp_path: Path
) -> None:
    with qtbot.waitSignal(window.desk.wrote_plan, timeout=120_000):
        window.desk.write_plan_to(tmp_path / "plan")

    assert (tmp_path / "plan" / "parts.json").exists()
    assert str(tmp_path / "plan") in window.notice.label.text()


def test_closing_asks_about_unsaved_work(qtbot: QtBot, window: Window) -> None:
    with qtbot.waitSignal(window.session.changed):
        type_in(qtbot, window, "side_fit", "1")

    assert not window.close()

    dialog = window.desk.dialog
    assert isinstance(dialog, QMessageBox)
    stay = next(b for b in dialog.buttons() if b.text() == "Stay")
    qtbot.mouseClick(stay, Qt.MouseButton.LeftButton)
    assert window.isVisible()


def test_work_that_a_crash_left_is_offered(qtbot: QtBot, window: Window) -> None:
    place = window.kept._place
    place.mkdir(parents=True, exist_ok=True)
    lost = Design(name="Guest room").with_choices({"side_fit": 20.0})
    designs.write(lost, place / "0.bedwright")

    window.offer_left_behind()
    assert "Guest room" in window.notice.label.text()
    qtbot.mouseClick(window.notice.buttons[0], Qt.MouseButton.LeftButton)

    assert window.session.design.name == "Guest room"
    assert window.session.is_unsaved
    assert not (place / "0.bedwright").exists()


def test_a_new_name_can_be_undone(qtbot: QtBot, window: Window) -> None:
    line = window.strip.name_line
    line.selectAll()
    qtbot.keyClicks(line, "Guest room")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    assert window.windowTitle().startswith("Guest room")

    window.session.undo()

    assert line.text() == Design().name


OPENED = """
import sys
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from app import window

def look(shown):
    if shown.session.has_bed:
        print(shown.session.design.name)
        shown.close()
    else:
        QTimer.singleShot(50, lambda: look(shown))

show = window.Window.show
window.Window.show = lambda shown: (show(shown), QTimer.singleShot(0, lambda: look(shown)))
sys.exit(window.open_window(Path(sys.argv[1])))
"""


def test_the_window_opens_on_a_design_and_ends_cleanly(tmp_path: Path) -> None:
    path = tmp_path / "guest.bedwright"
    designs.write(Design(name="Guest room"), path)

    done = subprocess.run(
        [sys.executable, "-c", OPENED, str(path)],
        capture_output=True,
        text=True,
        timeout=60,
        cwd=ROOT,
    )

    assert (done.returncode, done.stdout.strip()) == (0, "Guest room"), done.stderr


def test_every_demo_opens(window: Window) -> None:
    from app.panes.file_desk import DEMOS

    for path in sorted(DEMOS.glob("*.bedwright")):
        assert window.desk.open_path(path), window.notice.label.text()
        assert window.session.bed.pieces.rules == solve(designs.read(path)).pieces.rules
