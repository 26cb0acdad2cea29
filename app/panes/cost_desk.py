"""Works out beside the window what a bed costs, and brings prices and ticks into the design.

Only while the pane is looked at, and only of the bed that is open. Costs go by the plans in use, or
by the best that are found; until these are, by the first ones.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from app.panes.breath import Breath
from app.panes.cost_pane import CostPane
from app.session import Session
from app.tables.buying import BuyRow
from model.errors import BadInput, BedError

if TYPE_CHECKING:
    from model.bed import Bed
    from model.cost.costing import Costing
    from model.cost.price_table import PriceLine
    from model.stock.prices import Prices

LANE = "cost"
PATIENCE = 300  # ms until the pane says that it is being worked out
BROKE_OFF = "What it costs could not be worked out: a mistake of Bedwright's own."
PASTED = "the pasted list"


@dataclass(frozen=True, kw_only=True)
class Costs:
    """What a bed costs, as the pane shows it; `is_final` once its plans are the best found."""

    bed: Bed
    buys: tuple[BuyRow, ...]
    prices: tuple[PriceLine, ...]
    sheet: tuple[Any, ...]
    quote: str
    total: str
    is_final: bool


def costs(bed: Bed, costing: Costing, lines: tuple[PriceLine, ...], is_final: bool) -> Costs:
    """The lists of the pane, from what is taken and priced."""
    from model.cost.cost_sheet import cost_sheet
    from model.cost.money import shown
    from model.exports import cost_csv, quote_text

    prices, bought = bed.design.prices, bed.design.progress.bought
    sheet = cost_sheet(costing)
    total = f"Cost {shown(sheet.total, sheet.currency)}"
    if sheet.missing:
        total = f"{total}, incomplete: {' '.join(sheet.missing)}"
    if sheet.is_example:
        total = f"Example prices. {total}"
    return Costs(
        bed=bed,
        buys=tuple(BuyRow(buy, prices.currency, buy.key in bought) for buy in costing.buys),
        prices=lines,
        sheet=cost_csv.rows(costing, str(bed["shown_unit"])),
        quote="\n".join(quote_text.lines(bed, costing)),
        total=total if is_final else f"By first plans, better ones are looked for. {total}",
        is_final=is_final,
    )


class _Post(QObject):
    """Carries costs from the worker's thread to the window's."""

    found = Signal(object)


class CostDesk(QObject):
    """Keeps the pane on the open bed; every price and tick is a step that can be undone."""

    changed = Signal()  # other costs are shown

    def __init__(self, session: Session, pane: CostPane) -> None:
        super().__init__(session)
        self.session, self.pane = session, pane
        self.shown: Costs | None = None
        self._asked: Bed | None = None
        self._breath = Breath()
        self._is_keeping = False
        self._post = _Post(self)
        self._post.found.connect(self._tell, Qt.ConnectionType.QueuedConnection)
        self._late = QTimer(self, singleShot=True, interval=PATIENCE)
        self._late.timeout.connect(pane.say_late)
        session.changed.connect(lambda _: self.follow())
        session.history_moved.connect(self.follow)  # the hand is off the slider
        session.worker.leaving.connect(self._breath.stop)
        pane.seen.connect(self.follow)
        pane.ticked.connect(self.tick)
        pane.typed.connect(self.take_typed)
        pane.pasted.connect(self.paste)
        pane.template_asked.connect(self.copy_list)

    # ------------------------------------------------------------ working out

    def follow(self) -> None:
        """Work out the open bed, if anybody looks."""
        session = self.session
        if not session.has_bed or not self.pane.isVisible() or session.is_dragging:
            return
        bed = session.bed
        if bed is self._asked:
            return
        self._asked = bed
        self._breath.stop()
        self._breath = breath = Breath()
        session.worker.leaving.connect(breath.stop)
        self._late.start()
        session.worker.ask(LANE, lambda: self._work(bed, breath), lambda _: None, self._broke_off)

    def _work(self, bed: Bed, breath: Breath) -> None:
        """Beside the window: first by plans made at once, then by the best."""
        from model.cost.costing import at_prices, taken
        from model.cost.price_table import price_lines
        from model.shop.lumber import lumber
        from model.shop.plans import first_plans, plans

        for is_final in (False, True):
            cut = plans(bed, stop=breath.stops) if is_final else first_plans(bed)
            asks = lumber(bed, stop=breath.stops) if is_final else ()
            if breath.is_stopped:
                return
            needs = taken(bed, cut, asks)
            lines = price_lines(needs, bed.design.prices)
            costing = at_prices(needs, bed.design.prices)
            self._post.found.emit(costs(bed, costing, lines, is_final))

    def _tell(self, found: Costs) -> None:
        if found.bed is not self.session.bed:
            return
        self._late.stop()
        if self.shown is not None and self.shown.bed.design.prices != found.bed.design.prices:
            if not self._is_keeping:  # undone, or another design: what is half typed gives way
                self.pane.say_trouble("")
            self._is_keeping = False
        self.shown = found
        self.pane.show_costs(found.buys, found.sheet, found.quote, found.total)
        self.pane.show_prices([_cells(line) for line in found.prices], self._is_open)
        self.changed.emit()

    def _broke_off(self, trouble: Exception) -> None:
        self._late.stop()
        self.session.worker.unexpected(trouble)
        self.pane.say_total(BROKE_OFF)

    def _is_open(self, row: int, column: str) -> bool:
        lines = self.shown.prices if self.shown is not None else ()
        if row >= len(lines):
            return column in ("name", "price")
        line = lines[row]
        return column in line.open or (column == "name" and line.is_extra)

    # ------------------------------------------------------------ prices and ticks

    def take_typed(self) -> None:
        """Keep the cells that were typed; the first that cannot be read stays, and says why."""
        if self.shown is None:
            return
        prices, rows = self.session.design.prices, self.pane.prices.entries.all_rows
        lines: list[PriceLine | None] = [*self.shown.prices]
        lines += [None] * (len(rows) - len(lines))
        for number, (line, row) in enumerate(zip(lines, rows, strict=True)):
            try:
                prices = _typed(prices, line, row)
            except BadInput as trouble:
                self.pane.say_trouble(trouble.sentence, (number, trouble.field))
                return
        self.pane.say_trouble("")
        self._keep(prices)

    def paste(self, text: str) -> None:
        """Take a price list with keys from a spreadsheet."""
        from model.cost.read_prices import prices_of_table

        try:
            prices = prices_of_table(text, PASTED, self.session.design.prices, self.session.unit)
        except BadInput as trouble:
            self.pane.say_trouble(f"Nothing is taken. {trouble.sentence}")
            return
        self.pane.say_trouble("")
        self._keep(prices)

    def copy_list(self) -> None:
        """Put the price list with its keys on the clipboard."""
        from PySide6.QtGui import QGuiApplication

        from model.cost.price_keys import COLUMNS

        if self.shown is not None:
            lines = [COLUMNS, *(line.cells for line in self.shown.prices)]
            QGuiApplication.clipboard().setText("".join("\t".join(x) + "\n" for x in lines))

    def tick(self, key: str, is_bought: bool) -> None:
        """A line of the buying list is in the shop, or is not after all."""
        from model.shop.tracking import bought_ticked

        self._change(lambda design: bought_ticked(design, key, is_bought))

    def _keep(self, prices: Prices) -> None:
        if prices != self.session.design.prices:
            self._is_keeping = True
            self._change(lambda design: replace(design, prices=prices))

    def _change(self, change: Any) -> None:
        try:
            self.session.take(change)
        except BedError as trouble:
            self.pane.say_trouble(trouble.sentence)


def _cells(line: PriceLine) -> tuple[str, ...]:
    return (line.name, line.unit, line.pack, line.price, line.minutes, line.value)


def _typed(prices: Prices, line: PriceLine | None, row: tuple[str, ...]) -> Prices:
    """The price list with the cells of one row that differ from what was shown."""
    from model.cost.price_keys import EXTRA
    from model.cost.read_prices import with_cell, without_extra

    name, _, *figures = row
    if line is None or (line.is_extra and name != line.name):
        kept = prices if line is None else without_extra(prices, line.name)
        return with_cell(kept, f"{EXTRA}{name}", "price", figures[1]) if name else kept
    changed = prices
    for column, text in zip(("pack", "price", "minutes", "value"), figures, strict=True):
        if column in line.open and text != getattr(line, column):
            changed = with_cell(changed, line.key, column, text, line.unit)
    return changed
