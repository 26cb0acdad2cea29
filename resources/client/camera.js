// Where the eye stands: it looks at the bed from any side, and never from below the floor.
// Bed axes: x across, y from foot to head, z up, mm.

const HALF_ANGLE = 0.2; // tangent: a narrow angle, so that posts stand upright and parallel
const START = { azimuth: -58, elevation: 19 }; // degrees, as in the still picture
const FOOT = 60; // pixels at the foot of the picture that buttons lie on
const LOWEST = 2;
const HIGHEST = 89;
const MOST_ZOOM = 3.2;
const LEAST_ZOOM = 0.6;

class Camera {
  constructor() {
    this.width = 1;
    this.height = 1;
    this.low = [-1, -1, 0];
    this.high = [1, 1, 1];
    this.showWhole();
  }

  showWhole() {
    Object.assign(this, START, { zoom: 1, shift: [0, 0, 0] });
  }

  /** Turn by degrees. */
  turn(across, up) {
    this.azimuth = (this.azimuth + across) % 360;
    this.elevation = Math.min(HIGHEST, Math.max(LOWEST, this.elevation + up));
  }

  /** Come nearer (factor above 1) to what lies under a point of the picture, and keep it there. */
  comeNearer(factor, x = this.width / 2, y = this.middle()) {
    const before = this.zoom;
    this.zoom = Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, before * factor));
    const share = 1 - before / this.zoom;
    const size = this.sizeOfPixel() * (this.zoom / before);
    this.move((this.width / 2 - x) * share, (this.middle() - y) * share, size);
  }

  /** The row of the picture where what is looked at stands. */
  middle() {
    return (this.height - FOOT) / 2;
  }

  /** Move the picture by pixels. */
  move(dx, dy, size = this.sizeOfPixel()) {
    const { right, up } = this.axes();
    const moved = plus(plus(this.shift, right, -dx * size), up, dy * size);
    const reach = this.reach() * (this.zoom > 1 ? 1 : 0.25); // so that the bed is never lost
    this.shift = moved.map((each) => Math.min(reach, Math.max(-reach, each)));
  }

  /** Unit vectors to the right, up, and towards the eye. */
  axes() {
    const a = (this.azimuth * Math.PI) / 180;
    const e = (this.elevation * Math.PI) / 180;
    return {
      right: [-Math.sin(a), Math.cos(a), 0],
      up: [-Math.sin(e) * Math.cos(a), -Math.sin(e) * Math.sin(a), Math.cos(e)],
      toward: [Math.cos(e) * Math.cos(a), Math.cos(e) * Math.sin(a), Math.sin(e)],
    };
  }

  /** Half of the longest line through the bed, seen from above. */
  reach() {
    return Math.hypot(this.high[0] - this.low[0], this.high[1] - this.low[1]) / 2;
  }

  across() {
    return HALF_ANGLE * Math.min(1, Math.max(0.55, this.width / this.height));
  }

  /** How far the eye stands off, so that the bed can be turned round without being cut. */
  distance() {
    const e = (this.elevation * Math.PI) / 180;
    const half = (this.high[2] - this.low[2]) / 2;
    const across = this.across();
    const up = (across * Math.max(this.height - FOOT, 1)) / this.width;
    const wide = this.reach();
    const low = half * Math.cos(e) + wide * Math.sin(e); // of the corner nearest to the eye
    const near = wide * Math.cos(e) - half * Math.sin(e);
    return (1.04 * Math.max(wide * Math.hypot(1, 1 / across), low / up + near)) / this.zoom;
  }

  /** What is looked at stands above the middle by this share of half the picture. */
  raised() {
    return FOOT / this.height;
  }

  sizeOfPixel() {
    return (2 * this.across() * this.distance()) / this.width;
  }

  centre() {
    const middle = this.low.map((each, k) => (each + this.high[k]) / 2);
    return plus(middle, this.shift);
  }

  eye() {
    return plus(this.centre(), this.axes().toward, this.distance());
  }

  /** From bed axes to the picture. */
  matrix() {
    const { right, up, toward } = this.axes();
    const eye = this.eye();
    const look = new Float32Array([
      right[0], up[0], toward[0], 0, right[1], up[1], toward[1], 0,
      right[2], up[2], toward[2], 0, -dot(right, eye), -dot(up, eye), -dot(toward, eye), 1,
    ]);
    const across = this.across();
    const all = this.reach() * 2 + this.high[2];
    const near = Math.max(this.distance() - all, 50);
    const tall = (across * this.height) / this.width;
    return after(perspective(across, tall, this.raised(), near, this.distance() + all), look);
  }

  /** The line of sight through a point of the picture: where it starts and its way. */
  sight(x, y) {
    const { right, up, toward } = this.axes();
    const across = this.across();
    const sideways = ((2 * x) / this.width - 1) * across;
    const upwards = ((this.height * (1 - this.raised()) - 2 * y) / this.width) * across;
    const ahead = plus([0, 0, 0], toward, -1);
    return { from: this.eye(), way: unit(plus(plus(ahead, right, sideways), up, upwards)) };
  }
}
