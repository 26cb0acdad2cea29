// Ties the page together. Where the bed cannot be drawn, the picture and its sentence stay.

function turnOn(elements) {
  for (const each of elements) each.hidden = false;
}

/** Draw when something has changed, and no oftener. */
class Stage {
  constructor(canvas, bed) {
    this.canvas = canvas;
    this.scene = new Scene(bed);
    this.painter = new Painter(canvas, this.scene);
    this.camera = new Camera();
    this.calm = window.matchMedia("(prefers-reduced-motion: reduce)");
    this.isAsked = false;
    this.hasShadow = false;
  }

  ask() {
    if (this.isAsked) return;
    this.isAsked = true;
    requestAnimationFrame((now) => this.draw(now));
  }

  draw(now) {
    this.isAsked = false;
    if (this.painter.gl.isContextLost()) return;
    if (this.drawers.areUnderWay) this.hasShadow = false;
    if (this.drawers.step(now, this.calm.matches)) this.ask();
    if (!this.hasShadow) this.painter.putShadow(this.scene.shadow());
    this.hasShadow = true;
    Object.assign(this.camera, this.scene.bounds());
    this.painter.paint(this.camera, this.density);
  }

  resize() {
    const { width, height } = this.canvas.getBoundingClientRect();
    if (!width || !height) return;
    this.density = Math.min(3, window.devicePixelRatio || 1);
    Object.assign(this.camera, { width, height });
    this.canvas.width = Math.round(width * this.density);
    this.canvas.height = Math.round(height * this.density);
    this.ask();
  }

  drawerUnder(x, y) {
    const body = bodyUnder(this.scene, this.camera.sight(x, y));
    return this.scene.isDrawer(body) ? body - 1 : -1;
  }
}

function takeHand(stage) {
  stage.hand = new Hand(stage.canvas, stage.camera, {
    tapped: (x, y) => {
      const drawer = stage.drawerUnder(x, y);
      if (drawer >= 0) stage.drawers.toggle(drawer);
    },
    hovers: (x, y) => stage.canvas.classList.toggle("over-drawer", stage.drawerUnder(x, y) >= 0),
    changed: () => stage.ask(),
  });
}

function takeTurners(stage) {
  const does = (element, act) => element.addEventListener("click", () => { act(stage.camera); stage.ask(); });
  for (const each of document.querySelectorAll("[data-turn]")) {
    does(each, (camera) => camera.turn(each.dataset.turn === "left" ? 15 : -15, 0));
  }
  for (const each of document.querySelectorAll("[data-zoom]")) {
    does(each, (camera) => camera.comeNearer(each.dataset.zoom === "in" ? 1.25 : 0.8));
  }
  does(document.querySelector("[data-whole]"), (camera) => camera.showWhole());
}

function takeChoices(stage) {
  for (const each of document.querySelectorAll("[data-finish]")) {
    const finish = Number(each.dataset.finish);
    each.parentElement.querySelector("i").style.background = each.dataset.colour;
    const wear = () => { stage.scene.wear(finish); stage.ask(); };
    each.addEventListener("change", wear);
    if (each.checked) wear(); // as it was left, where a browser remembers
  }
  const mattress = document.querySelector("[data-mattress]");
  const lay = () => { stage.scene.hasMattress = mattress.checked; stage.ask(); };
  mattress?.addEventListener("change", lay);
  if (mattress) lay();
}

function start() {
  const canvas = document.getElementById("view");
  const stage = new Stage(canvas, JSON.parse(document.getElementById("bed").textContent));
  if (!stage.painter.canMake) return;
  turnOn([canvas, ...document.querySelectorAll(".turners, .live")]);
  document.getElementById("still").hidden = true;
  document.getElementById("no-view").hidden = true;
  stage.drawers = new Drawers(stage.scene, () => stage.ask());
  takeHand(stage);
  takeTurners(stage);
  takeChoices(stage);
  canvas.addEventListener("webglcontextlost", (event) => event.preventDefault());
  canvas.addEventListener("webglcontextrestored", () => {
    stage.painter.prepare();
    stage.hasShadow = false;
    stage.ask();
  });
  new ResizeObserver(() => stage.resize()).observe(canvas);
  stage.resize();
}

start();
