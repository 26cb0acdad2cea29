// What the page was given of the bed, made ready to be drawn: triangles and edges of each group of
// pieces that moves as one. Group 0 is the bed itself, the others are its drawers.

const FACE = 8; // figures of a corner: place, way the face looks, its look, its tone

/** Figures that were put into the page as text. */
function figures(text, Kind) {
  const letters = atob(text);
  const bytes = new Uint8Array(letters.length);
  for (let k = 0; k < letters.length; k += 1) bytes[k] = letters.charCodeAt(k);
  return new Kind(bytes.buffer);
}

/** Shapes in their own axes: corners (n x 3), faces (m x 3 corners), edges (l x 2 points). */
function shapesOf(bed) {
  const corners = figures(bed.corners, Float32Array);
  const faces = figures(bed.faces, Uint16Array);
  const edges = figures(bed.edges, Float32Array);
  let corner = 0, face = 0, edge = 0;
  return bed.shapes.map(([cornerCount, faceCount, edgeCount]) => {
    const shape = {
      corners: corners.subarray(corner, corner + 3 * cornerCount),
      faces: faces.subarray(face, face + 3 * faceCount),
      edges: edges.subarray(edge, edge + 6 * edgeCount),
    };
    corner += 3 * cornerCount;
    face += 3 * faceCount;
    edge += 6 * edgeCount;
    return shape;
  });
}

/** A point of a shape where it stands on the bed; `place` is three rows of four figures. */
function placed(place, x, y, z) {
  return [0, 4, 8].map((row) => place[row] * x + place[row + 1] * y + place[row + 2] * z + place[row + 3]);
}

class Body {
  constructor() {
    this.faces = [];
    this.edges = [];
    this.low = [Infinity, Infinity, Infinity];
    this.high = [-Infinity, -Infinity, -Infinity];
  }

  /** A triangle; it looks one way all over unless each corner is given its own. */
  addFace(corners, look, tone, ways) {
    const flat = ways ? null : unit(cross(minus(corners[1], corners[0]), minus(corners[2], corners[0])));
    corners.forEach((corner, k) => {
      this.faces.push(...corner, ...(flat ?? ways[k]), look, tone);
      for (let axis = 0; axis < 3; axis += 1) {
        this.low[axis] = Math.min(this.low[axis], corner[axis]);
        this.high[axis] = Math.max(this.high[axis], corner[axis]);
      }
    });
  }

  /** A line as two triangles, which the shader makes as wide as it should look. */
  addEdge(a, b, look) {
    for (const [here, there, side] of [[a, b, 1], [a, b, -1], [b, a, 1], [b, a, 1], [a, b, -1], [b, a, -1]]) {
      this.edges.push(...here, ...there, here === a ? side : -side, look);
    }
  }

  addPiece(shape, place, look, tone) {
    const at = [];
    for (let k = 0; k < shape.corners.length; k += 3) {
      at.push(placed(place, shape.corners[k], shape.corners[k + 1], shape.corners[k + 2]));
    }
    for (let k = 0; k < shape.faces.length; k += 3) {
      this.addFace([at[shape.faces[k]], at[shape.faces[k + 1]], at[shape.faces[k + 2]]], look, tone);
    }
    for (let k = 0; k < shape.edges.length; k += 6) {
      const line = shape.edges.subarray(k, k + 6);
      this.addEdge(placed(place, line[0], line[1], line[2]), placed(place, line[3], line[4], line[5]), look);
    }
  }

  finish() {
    this.faces = new Float32Array(this.faces);
    this.edges = new Float32Array(this.edges);
    return this;
  }
}

/** A body for each group. */
function bodiesOf(bed) {
  const shapes = shapesOf(bed);
  const places = figures(bed.places, Float32Array);
  const bodies = [new Body(), ...bed.drawers.map(() => new Body())];
  bed.pieces.forEach(([shape, group, look], piece) => {
    const tone = 1 + 0.05 * (((piece * 0.618034) % 1) - 0.5); // boards differ a little
    bodies[group].addPiece(shapes[shape], places.subarray(12 * piece, 12 * piece + 12), look, tone);
  });
  return bodies.map((each) => each.finish());
}
