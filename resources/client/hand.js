// Mouse, fingers and keys on the canvas.

const TAP = 6; // pixels: a finger that moves less has tapped
const KEY_TURN = 6; // degrees

const KEYS = {
  ArrowLeft: (camera) => camera.turn(KEY_TURN, 0),
  ArrowRight: (camera) => camera.turn(-KEY_TURN, 0),
  ArrowUp: (camera) => camera.turn(0, KEY_TURN),
  ArrowDown: (camera) => camera.turn(0, -KEY_TURN),
  "+": (camera) => camera.comeNearer(1.15),
  "=": (camera) => camera.comeNearer(1.15),
  "-": (camera) => camera.comeNearer(1 / 1.15),
  Home: (camera) => camera.showWhole(),
};

class Hand {
  /** `tapped(x, y)` and `hovers(x, y)` are told points of the canvas; `changed()` that it moved. */
  constructor(canvas, camera, { tapped, hovers, changed }) {
    Object.assign(this, { canvas, camera, tapped, hovers, changed });
    this.fingers = new Map();
    this.way = 0; // how far the first finger has gone
    canvas.addEventListener("pointerdown", (event) => this.down(event));
    canvas.addEventListener("pointermove", (event) => this.go(event));
    canvas.addEventListener("pointerup", (event) => this.up(event, true));
    canvas.addEventListener("pointercancel", (event) => this.up(event, false));
    canvas.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
    canvas.addEventListener("keydown", (event) => this.key(event));
  }

  point(event) {
    const place = this.canvas.getBoundingClientRect();
    return [event.clientX - place.left, event.clientY - place.top];
  }

  down(event) {
    if (event.button > 0) return;
    if (!this.fingers.size) this.way = 0;
    else this.way = Infinity; // two fingers never tap
    this.fingers.set(event.pointerId, this.point(event));
    this.canvas.setPointerCapture(event.pointerId);
  }

  go(event) {
    const before = this.fingers.get(event.pointerId);
    const [x, y] = this.point(event);
    if (!before) {
      if (event.pointerType === "mouse") this.hovers(x, y);
      return;
    }
    this.way += Math.hypot(x - before[0], y - before[1]);
    if (this.fingers.size > 1) this.pinch(event.pointerId, before, [x, y]);
    else if (this.way >= TAP) this.turn(x - before[0], y - before[1]);
    this.fingers.set(event.pointerId, [x, y]);
    this.changed();
  }

  turn(dx, dy) {
    const share = 180 / Math.max(320, Math.min(this.camera.width, this.camera.height));
    this.camera.turn(-dx * share, dy * share);
  }

  /** One of two fingers moves: nearer by how far they part, along by where their middle goes. */
  pinch(finger, before, now) {
    const other = [...this.fingers].find(([each]) => each !== finger)[1];
    const apart = (point) => Math.max(20, Math.hypot(point[0] - other[0], point[1] - other[1]));
    this.camera.comeNearer(apart(now) / apart(before), (now[0] + other[0]) / 2, (now[1] + other[1]) / 2);
    this.camera.move((now[0] - before[0]) / 2, (now[1] - before[1]) / 2);
  }

  up(event, isWhole) {
    if (!this.fingers.delete(event.pointerId)) return;
    if (isWhole && !this.fingers.size && this.way < TAP) this.tapped(...this.point(event));
  }

  wheel(event) {
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 30 : 1; // some count in lines
    const by = Math.max(-120, Math.min(120, event.deltaY * lines));
    this.camera.comeNearer(Math.exp(-by * 0.002), ...this.point(event));
    this.changed();
  }

  key(event) {
    const act = KEYS[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act(this.camera);
    this.changed();
  }
}
