// The bed as it stands now: which drawers are open how far, which colours, mattress or not.

const BEDDING = "#f4f3f0";
const PIPING = "#c4c2bb";
const EDGE_TONE = 0.46; // edges are the piece's own colour, darker
const AROUND = 700; // mm of floor beyond the bed, where the widest shadow has faded out

class Scene {
  constructor(bed) {
    this.bed = bed;
    this.bodies = bodiesOf(bed);
    this.mattress = -1;
    this.hasMattress = bed.mattresses.length > 0;
    this.looks = [...bed.looks];
    if (this.hasMattress) this.addMattress();
    this.offsets = bed.drawers.map(() => 0); // mm
    this.hull = { low: this.bodies[0].low, high: [...this.bodies[0].high.slice(0, 2), bed.deck] };
    this.boxes = bed.boxes;
    this.floor = this.floorOf();
    this.wear(0);
  }

  addMattress() {
    const look = this.looks.length;
    this.looks.push({ colour: BEDDING }, { colour: PIPING, isLine: true });
    this.mattress = this.bodies.length;
    this.bodies.push(mattressBody(this.bed.mattresses, look, look + 1));
  }

  shows(body) {
    return body !== this.mattress || this.hasMattress;
  }

  isDrawer(body) {
    return body > 0 && body <= this.bed.drawers.length;
  }

  /** How far a body stands from its place on the closed bed. */
  moved(body) {
    if (!this.isDrawer(body)) return [0, 0, 0];
    return plus([0, 0, 0], this.bed.drawers[body - 1].toward, this.offsets[body - 1]);
  }

  /** Put on a finish: what takes paint gets its colour; without one all show their wood. */
  wear(finish) {
    const paint = this.bed.finishes[finish].colour;
    this.isPainted = Boolean(paint); // then boards do not differ
    const worn = this.looks.map((look) => colourOf(paint && look.takesPaint ? paint : look.colour));
    const tone = (k) => (this.looks[k].isLine ? 1 : EDGE_TONE);
    this.faceColours = new Float32Array(worn.flat());
    this.edgeColours = new Float32Array(worn.flatMap((colour, k) => colour.map((each) => each * tone(k))));
  }

  /** The box round all that shows, drawers where they stand. */
  bounds() {
    const low = [Infinity, Infinity, 0], high = [-Infinity, -Infinity, 0];
    this.bodies.forEach((body, k) => {
      const moved = this.moved(k);
      for (let axis = 0; axis < 3; axis += 1) {
        low[axis] = Math.min(low[axis], body.low[axis] + moved[axis]);
        high[axis] = Math.max(high[axis], body.high[axis] + moved[axis]);
      }
    });
    return { low, high };
  }

  floorOf() {
    const open = this.bed.drawers.map((drawer) => drawer.travel);
    this.offsets = open;
    const { low, high } = this.bounds();
    this.offsets = open.map(() => 0);
    return { low: low.map((each) => each - AROUND), high: high.map((each) => each + AROUND) };
  }

  shadow() {
    const boxes = this.boxes.map(([group, low, high]) => {
      const moved = this.moved(group);
      return [plus(low, moved), plus(high, moved)];
    });
    return floorShadow(boxes, this.floor);
  }
}
