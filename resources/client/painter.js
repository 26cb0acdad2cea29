// Puts the bed on the canvas.

const EDGE_WIDTH = 1.0; // pixels of the page

/** Red, green, blue from 0 to 1, of `#rrggbb`. */
function colourOf(code) {
  return [1, 3, 5].map((k) => parseInt(code.slice(k, k + 2), 16) / 255);
}

class Painter {
  /** `canMake` is false where the canvas cannot be drawn on this way. */
  constructor(canvas, scene) {
    this.scene = scene;
    this.gl = canvas.getContext("webgl", { antialias: true, alpha: true });
    this.canMake = Boolean(this.gl) && this.prepare();
  }

  prepare() {
    const gl = this.gl;
    const sized = (code) => code.replace("LOOKS", this.scene.looks.length);
    this.shaded = programOf(gl, sized(SHADED), INSIDE, ["a_place", "a_way", "a_look"]);
    this.lines = programOf(gl, sized(LINE), INSIDE, ["a_here", "a_there", "a_side"]);
    this.floor = programOf(gl, FLOOR, SHADE, ["a_share"]);
    if (!this.shaded || !this.lines || !this.floor) return false;
    this.buffers = this.scene.bodies.map((body) => ({ faces: this.buffer(body.faces), edges: this.buffer(body.edges) }));
    this.corners = this.buffer(new Float32Array([0, 0, 1, 0, 0, 1, 1, 1]));
    this.dark = gl.createTexture();
    gl.enable(gl.DEPTH_TEST);
    gl.depthFunc(gl.LEQUAL);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    gl.polygonOffset(1, 1);
    gl.clearColor(0, 0, 0, 0);
    return true;
  }

  buffer(content) {
    const made = this.gl.createBuffer();
    this.gl.bindBuffer(this.gl.ARRAY_BUFFER, made);
    this.gl.bufferData(this.gl.ARRAY_BUFFER, content, this.gl.STATIC_DRAW);
    return made;
  }

  /** The floor's darkness, a byte a cell; sent again when a drawer has moved. */
  putShadow(cells) {
    const gl = this.gl;
    gl.bindTexture(gl.TEXTURE_2D, this.dark);
    gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.LUMINANCE, CELLS, CELLS, 0, gl.LUMINANCE, gl.UNSIGNED_BYTE, cells);
    for (const side of [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T]) gl.texParameteri(gl.TEXTURE_2D, side, gl.CLAMP_TO_EDGE);
    for (const way of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER]) gl.texParameteri(gl.TEXTURE_2D, way, gl.LINEAR);
  }

  paint(camera, density) {
    const gl = this.gl;
    gl.viewport(0, 0, gl.drawingBufferWidth, gl.drawingBufferHeight);
    gl.depthMask(true);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    const view = camera.matrix();
    this.paintFloor(view);
    gl.enable(gl.POLYGON_OFFSET_FILL);
    this.paintAll(this.shaded, "faces", [3, 3, 2], view, (uniforms) => {
      const { right, up, toward } = camera.axes();
      gl.uniform3fv(uniforms.u_looks, this.scene.faceColours);
      gl.uniform1f(uniforms.u_boards, this.scene.isPainted ? 0 : 1);
      gl.uniform3fv(uniforms.u_right, right);
      gl.uniform3fv(uniforms.u_up, up);
      gl.uniform3fv(uniforms.u_toward, toward);
    });
    gl.disable(gl.POLYGON_OFFSET_FILL);
    this.paintAll(this.lines, "edges", [3, 3, 2], view, (uniforms) => {
      gl.uniform3fv(uniforms.u_looks, this.scene.edgeColours);
      gl.uniform2f(uniforms.u_picture, gl.drawingBufferWidth, gl.drawingBufferHeight);
      gl.uniform1f(uniforms.u_width, Math.max(1, EDGE_WIDTH * density));
    });
  }

  paintFloor(view) {
    const gl = this.gl, { program, uniforms } = this.floor;
    gl.useProgram(program);
    gl.uniformMatrix4fv(uniforms.u_view, false, view);
    gl.uniform3fv(uniforms.u_low, this.scene.floor.low);
    gl.uniform3fv(uniforms.u_high, this.scene.floor.high);
    gl.bindTexture(gl.TEXTURE_2D, this.dark);
    this.feed(this.corners, [2]);
    gl.enable(gl.BLEND);
    gl.depthMask(false);
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
    gl.depthMask(true);
    gl.disable(gl.BLEND);
  }

  paintAll({ program, uniforms }, kind, sizes, view, more) {
    const gl = this.gl;
    gl.useProgram(program);
    gl.uniformMatrix4fv(uniforms.u_view, false, view);
    gl.uniform3fv(uniforms.u_low, this.scene.hull.low);
    gl.uniform3fv(uniforms.u_high, this.scene.hull.high);
    more(uniforms);
    const count = sizes.reduce((sum, size) => sum + size);
    this.scene.bodies.forEach((body, k) => {
      if (!this.scene.shows(k) || !body[kind].length) return;
      gl.uniform3fv(uniforms.u_moved, this.scene.moved(k));
      this.feed(this.buffers[k][kind], sizes);
      gl.drawArrays(gl.TRIANGLES, 0, body[kind].length / count);
    });
  }

  /** Give a buffer to the program: attributes of these sizes, one after the other. */
  feed(buffer, sizes) {
    const gl = this.gl;
    const stride = 4 * sizes.reduce((sum, size) => sum + size);
    gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
    let offset = 0;
    for (let place = 0; place < 3; place += 1) {
      if (place >= sizes.length) {
        gl.disableVertexAttribArray(place);
        continue;
      }
      gl.enableVertexAttribArray(place);
      gl.vertexAttribPointer(place, sizes[place], gl.FLOAT, false, stride, offset);
      offset += 4 * sizes[place];
    }
  }
}
