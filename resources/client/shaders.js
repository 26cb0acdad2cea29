// The programs that the graphics card runs.

const SHADED = `
uniform mat4 u_view; uniform vec3 u_moved; uniform vec3 u_right; uniform vec3 u_up; uniform vec3 u_toward;
uniform vec3 u_looks[LOOKS]; uniform float u_boards;
attribute vec3 a_place; attribute vec3 a_way; attribute vec2 a_look;
varying vec3 v_colour; varying vec3 v_place;
void main() {
  // Daylight from above and a broad lamp over the left shoulder; what is turned away stays warm.
  vec3 seen = vec3(dot(u_right, a_way), dot(u_up, a_way), dot(u_toward, a_way));
  float lamp = 0.5 + 0.5 * dot(seen, normalize(vec3(-0.5, 0.42, 0.8)));
  float bright = 0.56 + 0.13 * (0.5 + 0.5 * a_way.z) + 0.36 * lamp;
  vec3 tint = mix(vec3(1.02, 0.985, 0.94), vec3(1.0, 1.0, 1.005), lamp);
  v_colour = u_looks[int(a_look.x + 0.5)] * mix(1.0, a_look.y, u_boards) * bright * tint;
  v_place = a_place + u_moved;
  gl_Position = u_view * vec4(v_place, 1.0);
}`;

// Less light comes in under the deck, the farther the less.
const INSIDE = `
precision mediump float;
uniform vec3 u_low; uniform vec3 u_high;
varying vec3 v_colour; varying vec3 v_place;
void main() {
  vec2 off = min(v_place.xy - u_low.xy, u_high.xy - v_place.xy);
  float deep = smoothstep(20.0, 420.0, min(off.x, off.y));
  float under = smoothstep(4.0, 60.0, u_high.z - v_place.z);
  gl_FragColor = vec4(min(v_colour * (1.0 - 0.55 * deep * under), 1.0), 1.0);
}`;

const LINE = `
uniform mat4 u_view; uniform vec3 u_moved; uniform vec2 u_picture; uniform float u_width;
uniform vec3 u_looks[LOOKS];
attribute vec3 a_here; attribute vec3 a_there; attribute vec2 a_side;
varying vec3 v_colour; varying vec3 v_place;
void main() {
  v_place = a_here + u_moved;
  vec4 here = u_view * vec4(v_place, 1.0);
  vec4 there = u_view * vec4(a_there + u_moved, 1.0);
  vec2 way = (there.xy / there.w - here.xy / here.w) * u_picture;
  vec2 along = way / max(length(way), 0.001);
  here.xy += vec2(-along.y, along.x) * a_side.x * u_width / u_picture * here.w;
  here.z -= 0.0002 * here.w; // before the face that it bounds
  v_colour = u_looks[int(a_side.y + 0.5)];
  gl_Position = here;
}`;

const FLOOR = `
uniform mat4 u_view; uniform vec3 u_low; uniform vec3 u_high;
attribute vec2 a_share; varying vec2 v_share;
void main() {
  v_share = a_share;
  gl_Position = u_view * vec4(mix(u_low.xy, u_high.xy, a_share), 0.0, 1.0);
}`;

const SHADE = `
precision mediump float;
uniform sampler2D u_dark; varying vec2 v_share;
void main() { gl_FragColor = vec4(vec3(0.15, 0.14, 0.13), 1.0) * texture2D(u_dark, v_share).r; }`;

/** A program, with its uniforms by name. Attributes have the places 0, 1, 2 in the order given. */
function programOf(gl, vertex, fragment, attributes) {
  const program = gl.createProgram();
  for (const [kind, code] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment]]) {
    const shader = gl.createShader(kind);
    gl.shaderSource(shader, code);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  attributes.forEach((name, place) => gl.bindAttribLocation(program, place, name));
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS)) return null;
  const uniforms = {};
  for (let k = 0; k < gl.getProgramParameter(program, gl.ACTIVE_UNIFORMS); k += 1) {
    const name = gl.getActiveUniform(program, k).name.replace("[0]", "");
    uniforms[name] = gl.getUniformLocation(program, name);
  }
  return { program, uniforms };
}
