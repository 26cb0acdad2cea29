// Drawers slide open and shut, each by its own travel, and their buttons say so.

const SLIDING = 650; // ms

class Drawers {
  /** `moved()` is called when a drawer stands elsewhere than before. */
  constructor(scene, moved) {
    this.scene = scene;
    this.moved = moved;
    this.count = scene.bed.drawers.length;
    this.isOpen = scene.bed.drawers.map(() => false);
    this.slides = new Map(); // drawer: where it started, and at which picture
    this.buttons = [...document.querySelectorAll("[data-drawer]")];
    this.buttons.forEach((button, k) => button.addEventListener("click", () => this.send([k], !this.isOpen[k])));
    this.all = document.querySelector("[data-all-drawers]");
    this.all?.addEventListener("click", () => this.send(this.isOpen.keys(), !this.isOpen.every(Boolean)));
  }

  toggle(drawer) {
    this.send([drawer], !this.isOpen[drawer]);
  }

  send(drawers, open) {
    for (const k of drawers) {
      if (this.isOpen[k] === open) continue;
      this.isOpen[k] = open;
      this.slides.set(k, { from: this.scene.offsets[k] });
    }
    this.tell();
    this.moved();
  }

  /** Where drawers stand at a time; true while some are under way. */
  step(now, isCalm) {
    for (const [k, slide] of this.slides) {
      slide.start ??= now; // its first picture, so that a slow machine shows the way too
      const share = isCalm ? 1 : Math.min(1, (now - slide.start) / SLIDING);
      const goal = this.isOpen[k] ? this.scene.bed.drawers[k].travel : 0;
      this.scene.offsets[k] = share === 1 ? goal : slide.from + (goal - slide.from) * share * share * (3 - 2 * share);
      this.buttons[k].dataset.openMm = this.scene.offsets[k];
      if (share === 1) this.slides.delete(k);
    }
    return this.slides.size > 0;
  }

  get areUnderWay() {
    return this.slides.size > 0;
  }

  tell() {
    this.buttons.forEach((button, k) => button.setAttribute("aria-pressed", this.isOpen[k]));
    if (this.all) this.all.textContent = this.isOpen.every(Boolean) ? "Close all" : "Open all";
  }
}
