// Matrices of 4 x 4 as rows of 16 figures, column by column, as WebGL takes them.

/** One matrix after the other: first `b`, then `a`. */
function after(a, b) {
  const made = new Float32Array(16);
  for (let column = 0; column < 4; column += 1) {
    for (let row = 0; row < 4; row += 1) {
      let sum = 0;
      for (let k = 0; k < 4; k += 1) sum += a[4 * k + row] * b[4 * column + k];
      made[4 * column + row] = sum;
    }
  }
  return made;
}

/** From the eye's axes to the picture; `up` and `across` are tangents of half the angle of view, and
 * `raised` is the share of half the picture by which what is looked at stands above its middle. */
function perspective(across, up, raised, near, far) {
  const made = new Float32Array(16);
  made[0] = 1 / across;
  made[5] = 1 / up;
  made[9] = -raised;
  made[10] = -(far + near) / (far - near);
  made[11] = -1;
  made[14] = (-2 * far * near) / (far - near);
  return made;
}

function dot(a, b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a, b) {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function minus(a, b) {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** `a` and then `share` times `b`. */
function plus(a, b, share = 1) {
  return [a[0] + share * b[0], a[1] + share * b[1], a[2] + share * b[2]];
}

function unit(a) {
  const length = Math.sqrt(dot(a, a));
  return [a[0] / length, a[1] / length, a[2] / length];
}
