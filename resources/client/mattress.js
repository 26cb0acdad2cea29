// The mattress as a soft body: a box with round corners and edges, smoothly shaded.

const CORNER = 70; // mm, seen from above
const ROUND = 42; // mm, of the upper and lower edge
const STEPS = 6; // of a quarter turn

/** Points round a rectangle with round corners, drawn in by `inset`, and the way out at each. */
function ringOf(low, high, inset) {
  const points = [], ways = [];
  const radius = Math.min(CORNER, (high[0] - low[0]) / 3, (high[1] - low[1]) / 3);
  for (let corner = 0; corner < 4; corner += 1) {
    const x = corner === 0 || corner === 3 ? high[0] - radius : low[0] + radius;
    const y = corner < 2 ? high[1] - radius : low[1] + radius;
    for (let k = 0; k <= STEPS; k += 1) {
      const turn = ((corner + k / STEPS) * Math.PI) / 2;
      const way = [Math.cos(turn), Math.sin(turn)];
      points.push([x + way[0] * (radius - inset), y + way[1] * (radius - inset)]);
      ways.push(way);
    }
  }
  return { points, ways };
}

/** Rings from the underside to the top: corners, ways out, and whether piping runs there. */
function ringsOf(low, high) {
  const round = Math.min(ROUND, (high[2] - low[2]) / 2.2);
  const turns = [];
  for (let k = 0; k <= STEPS; k += 1) turns.push([k / STEPS - 1, low[2] + round]);
  for (let k = 0; k <= STEPS; k += 1) turns.push([k / STEPS, high[2] - round]);
  return turns.map(([share, middle]) => {
    const turn = (share * Math.PI) / 2;
    const ring = ringOf(low, high, round * (1 - Math.cos(turn)));
    return {
      corners: ring.points.map(([x, y]) => [x, y, middle + round * Math.sin(turn)]),
      ways: ring.ways.map(([x, y]) => [x * Math.cos(turn), y * Math.cos(turn), Math.sin(turn)]),
      isPiped: Math.abs(Math.abs(share) - 0.5) < 0.01,
    };
  });
}

function addBand(body, below, above, look) {
  const count = below.corners.length;
  for (let k = 0; k < count; k += 1) {
    const next = (k + 1) % count;
    const pick = (name) => [below[name][k], below[name][next], above[name][next], above[name][k]];
    const [a, b, c, d] = pick("corners");
    const [p, q, r, s] = pick("ways");
    body.addFace([a, b, c], look, 1, [p, q, r]);
    body.addFace([a, c, d], look, 1, [p, r, s]);
  }
}

function addLid(body, ring, up, look) {
  for (let k = 1; k + 1 < ring.corners.length; k += 1) {
    const fan = [ring.corners[0], ring.corners[k], ring.corners[k + 1]];
    body.addFace(up > 0 ? fan : fan.reverse(), look, 1, [[0, 0, up], [0, 0, up], [0, 0, up]]);
  }
}

/** One body for all mattresses; each is given by its lowest and highest corner. */
function mattressBody(mattresses, look, piping) {
  const body = new Body();
  for (const [low, high] of mattresses) {
    const rings = ringsOf(low, high);
    for (let k = 1; k < rings.length; k += 1) addBand(body, rings[k - 1], rings[k], look);
    addLid(body, rings[0], -1, look);
    addLid(body, rings[rings.length - 1], 1, look);
    for (const ring of rings.filter((each) => each.isPiped)) {
      const cord = ring.corners.map((corner, k) => plus(corner, ring.ways[k], 2)); // stands out
      cord.forEach((corner, k) => body.addEdge(corner, cord[(k + 1) % cord.length], piping));
    }
  }
  return body.finish();
}
