// The soft shadow on the floor: footprints of all boxes, blurred; low ones dark and sharp, high
// ones faint and wide, as under a cloudy sky.

const CELLS = 128;
// Up to which height of its underside (mm) a box counts, how far its shadow spreads (cells), how dark.
const LAYERS = [[70, 1, 0.40], [260, 2, 0.30], [Infinity, 5, 0.26]];

function blurred(cells, spread) {
  let from = cells;
  for (let pass = 0; pass < 6; pass += 1) {
    const to = new Float32Array(from.length);
    for (let row = 0; row < CELLS; row += 1) { // written turned, so that the next pass goes crosswise
      let sum = 0;
      for (let k = -spread; k < CELLS; k += 1) {
        if (k + spread < CELLS) sum += from[row * CELLS + k + spread];
        if (k - spread - 1 >= 0) sum -= from[row * CELLS + k - spread - 1];
        if (k >= 0) to[k * CELLS + row] = sum / (2 * spread + 1);
      }
    }
    from = to;
  }
  return from;
}

function footprints(boxes, floor) {
  const cells = new Float32Array(CELLS * CELLS);
  const cell = (value, axis) => ((value - floor.low[axis]) / (floor.high[axis] - floor.low[axis])) * CELLS;
  for (const [low, high] of boxes) {
    const [x0, y0] = [0, 1].map((axis) => Math.max(0, Math.round(cell(low[axis], axis))));
    const [x1, y1] = [0, 1].map((axis) => Math.min(CELLS, Math.round(cell(high[axis], axis))));
    for (let y = y0; y < Math.max(y1, y0 + 1); y += 1) cells.fill(1, y * CELLS + x0, y * CELLS + Math.max(x1, x0 + 1));
  }
  return cells;
}

/** Darkness of the floor, 0 to 255 a cell, rows along y. `floor`: its lowest and highest corner. */
function floorShadow(boxes, floor) {
  const light = new Float32Array(CELLS * CELLS).fill(1);
  let lowest = -Infinity;
  for (const [highest, spread, dark] of LAYERS) {
    const held = boxes.filter(([low]) => low[2] >= lowest && low[2] < highest);
    lowest = highest;
    if (!held.length) continue;
    blurred(footprints(held, floor), spread).forEach((each, k) => { light[k] *= 1 - dark * each; });
  }
  return Uint8Array.from(light, (each) => Math.round(255 * (1 - each)));
}
