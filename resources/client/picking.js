// What lies under a point of the picture.

/** Where a line of sight meets a triangle: how far off, or Infinity. */
function meets(from, way, faces, at) {
  const corner = (k) => [faces[at + FACE * k], faces[at + FACE * k + 1], faces[at + FACE * k + 2]];
  const a = corner(0), ab = minus(corner(1), a), ac = minus(corner(2), a);
  const across = cross(way, ac);
  const size = dot(ab, across);
  if (Math.abs(size) < 1e-9) return Infinity;
  const to = minus(from, a);
  const u = dot(to, across) / size;
  const turned = cross(to, ab);
  const v = dot(way, turned) / size;
  if (u < 0 || v < 0 || u + v > 1) return Infinity;
  const far = dot(ac, turned) / size;
  return far > 0 ? far : Infinity;
}

function passes(from, way, low, high) {
  let near = 0, far = Infinity;
  for (let axis = 0; axis < 3; axis += 1) {
    const one = (low[axis] - from[axis]) / way[axis], other = (high[axis] - from[axis]) / way[axis];
    near = Math.max(near, Math.min(one, other));
    far = Math.min(far, Math.max(one, other));
  }
  return near <= far;
}

/** The nearest body under a line of sight, or -1. */
function bodyUnder(scene, { from, way }) {
  let nearest = Infinity, found = -1;
  scene.bodies.forEach((body, k) => {
    const start = minus(from, scene.moved(k));
    if (!scene.shows(k) || !passes(start, way, body.low, body.high)) return;
    for (let at = 0; at < body.faces.length; at += 3 * FACE) {
      const far = meets(start, way, body.faces, at);
      if (far < nearest) {
        nearest = far;
        found = k;
      }
    }
  });
  return found;
}
