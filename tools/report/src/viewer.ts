// The machine in 3D with its controls.
import { Vector3 } from "three";
import type { Data, Scene } from "./data";
import { chooser, element, tick } from "./dom";
import { Extras, forceColour, pressureColour, sheetColour } from "./extras";
import { digits, roundDown, roundUp } from "./format";
import { type Colouring, Machine } from "./machine";
import { quantity, showScale } from "./scale";
import { Stage, type View } from "./stage";

const factors = [0, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000];
const modeFactor = 6; // the slider's position for shapes: the greatest displacement in percent of the machine's size
const views: [View, string][] = [["slant", "Slant"], ["front", "Front"], ["side", "Side"], ["top", "Top"]];
const help =
  "Drag to turn, right drag to move; after a click the wheel zooms. Keys: arrows turn, + and \u2212 zoom, " +
  "1 to 4 views, , and . step.";

export class Viewer {
  private readonly canvas = element("canvas", {
    tabindex: "0",
    "aria-label": "The machine in 3D. Arrow keys turn it, plus and minus zoom, 1 to 4 choose a view.",
    role: "img",
  });
  private readonly stage: Stage;
  private readonly machine: Machine;
  private readonly extras: Extras;
  private readonly factorText = element("output", { id: "factor" });
  private readonly slider = element("input", { type: "range", id: "exaggeration", min: "0", step: "1" });
  private readonly scale = element("div", { class: "scale", role: "img" });
  private readonly facts = element("div", { id: "facts", "aria-live": "polite" });
  private readonly hint = element("div", { class: "hint", hidden: true });
  private readonly labels: [HTMLElement, Vector3][] = [];
  private readonly play = element("button", { type: "button", id: "play", onclick: () => this.animate(!this.playing) });
  private readonly loadTicks = element("span", { class: "ticks" });
  private readonly stepChooser;
  private readonly colourChooser;
  private readonly partChooser;
  private scene: number;
  private by: Colouring = "displacement";
  private chosen = "";
  private playing = false;
  private phase = 1;

  constructor(private readonly data: Data, private readonly root: HTMLElement) {
    this.stage = new Stage(this.canvas);
    this.machine = new Machine(data);
    this.extras = new Extras(data);
    this.scene = Math.min(data.first_scene, data.scenes.length - 1);
    this.stepChooser = chooser("step", "step", data.scenes.map((s, i) => [String(i), s.name]), (v) => this.show(Number(v)));
    this.colourChooser = chooser("colour by", "colour", [["displacement", "displacement"], ["stress", "von Mises stress"],
      ["utilisation", "utilisation (of yield)"]], (v) => { this.by = v as Colouring; this.colour(); });
    this.partChooser = chooser("values of", "part", [], (v) => this.choose(v));
    this.slider.max = String(factors.length - 1);
    this.slider.addEventListener("input", () => this.deform());
    this.fillTicks();
    this.build();
    this.stage.add(this.machine.group, this.extras.fixtures, this.extras.forces, this.extras.pressure, this.extras.sheet);
    this.ink();
    this.show(this.scene, true);
  }

  private get current(): Scene {
    return this.data.scenes[this.scene]!;
  }

  private get mode(): boolean {
    return this.current.kind === "mode";
  }

  private build(): void {
    const buttons = views.map(([view, text]) =>
      element("button", { type: "button", "data-view": view, onclick: () => this.stage.look(view) }, text));
    const steer =
        element("div", {class : "steer"}, this.stepChooser.box,
                element("label", {class : "field wide-field"}, element("span", {}, "movement shown ", this.factorText),
                        this.slider),
                this.play, this.colourChooser.box, this.partChooser.box,
                element("div", {class : "ticks"}, this.loadTicks, tick("undeformed outline", "show-ghost", true, (on) => {
                          this.machine.showGhost(on);
                          this.stage.draw();
                        })));
    const stage = element("div", { class: "stage" }, this.canvas, this.hint);
    this.root.replaceChildren(steer, stage, this.scale,
      element("div", { class: "views" }, ...buttons, element("span", { class: "note" }, help)), this.facts);
    this.addLabels(stage);
    this.listen();
  }

  /** Items drawn beside the bars, each with its colour and its greatest value. */
  private fillTicks(): void {
    const { force_in_N: force, stress_in_MPa: stress } = this.data.units;
    const told = (value: number, unit: { name: string; size: number }) =>
      value > 0 ? `${digits(value / unit.size)} ${unit.name}` : "none";
    this.loadTicks.append(
      tick(`forces (longest arrow: ${told(this.extras.greatestForce(), force)})`, "show-forces", true,
        (on) => this.toggle(this.extras.forces, on), forceColour),
      tick(`nose pressure (highest: ${told(this.extras.greatestPressure(), stress)})`, "show-pressure", true,
        (on) => this.toggle(this.extras.pressure, on), pressureColour),
      tick("sheet", "show-sheet", true, (on) => this.toggle(this.extras.sheet, on), sheetColour));
  }

  private listen(): void {
    let down: [number, number] = [0, 0];
    this.canvas.addEventListener("pointerdown", (e) => { down = [e.clientX, e.clientY]; this.canvas.focus({ preventScroll: true }); });
    this.canvas.addEventListener("pointerup", (e) => {
      if (Math.hypot(e.clientX - down[0], e.clientY - down[1]) < 4) this.choose(this.nameAt(e));
    });
    this.canvas.addEventListener("pointermove", (e) => this.point(e));
    this.canvas.addEventListener("pointerleave", () => { this.hint.hidden = true; });
    this.canvas.addEventListener("keydown", (e) => { if (this.key(e.key)) e.preventDefault(); });
    // The wheel belongs to the page until the picture has been clicked.
    this.stage.controls.enableZoom = false;
    this.canvas.addEventListener("focus", () => { this.stage.controls.enableZoom = true; });
    this.canvas.addEventListener("blur", () => { this.stage.controls.enableZoom = false; });
    this.stage.onDrawn = () => this.placeLabels();
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => this.ink());
  }

  private key(key: string): boolean {
    const view = views[Number(key) - 1];
    if (view) this.stage.look(view[0]);
    else if (key === "ArrowLeft") this.stage.turn(-0.1, 0);
    else if (key === "ArrowRight") this.stage.turn(0.1, 0);
    else if (key === "ArrowUp") this.stage.turn(0, 0.1);
    else if (key === "ArrowDown") this.stage.turn(0, -0.1);
    else if (key === "+" || key === "=") this.stage.turn(0, 0, 0.9);
    else if (key === "-") this.stage.turn(0, 0, 1 / 0.9);
    else if (key === "," || key === ".")
      this.show((this.scene + (key === "." ? 1 : -1) + this.data.scenes.length) % this.data.scenes.length);
    else return false;
    return true;
  }

  private addLabels(stage: HTMLElement): void {
    const { low, high } = this.machine.size(this.scene);
    const middle = (low[0]! + high[0]!) / 2;
    const floor = low[2]!;
    const beside = 0.08 * (high[0]! - low[0]!);
    const texts: [string, Vector3][] = [["you stand here", new Vector3(middle, low[1]! - 40, floor)],
      ["left", new Vector3(low[0]! - beside, 0, 0)], ["right", new Vector3(high[0]! + beside, 0, 0)]];
    if (!this.data.sheet) texts.shift();
    for (const [text, at] of texts) {
      const label = element("span", { class: "place", "aria-hidden": "true" }, text);
      stage.append(label);
      this.labels.push([label, at]);
    }
  }

  private placeLabels(): void {
    for (const [label, at] of this.labels) {
      const seen = this.stage.seen(at);
      label.hidden = !seen;
      if (!seen) continue;
      // As fractions of the stage, so that it is also right on paper; and never across its edge.
      const half = label.offsetWidth / 2 + 3;
      const x = Math.min(Math.max(seen.x, half), this.canvas.clientWidth - half);
      label.style.left = `${(100 * x) / this.canvas.clientWidth}%`;
      label.style.top = `${(100 * seen.y) / this.canvas.clientHeight}%`;
    }
  }

  private ink(): void {
    const style = getComputedStyle(document.documentElement);
    this.machine.ink(style.getPropertyValue("--ink").trim(), style.getPropertyValue("--accent").trim());
    this.stage.draw();
  }

  private toggle(group: { visible: boolean }, on: boolean): void {
    group.visible = on;
    this.stage.draw();
  }

  private show(scene: number, first = false): void {
    const wasMode = this.mode;
    this.scene = scene;
    this.phase = 1;
    this.stepChooser.select.value = String(scene);
    const { low, high, diagonal } = this.machine.size(scene);
    this.stage.frame(low, high);
    this.extras.show(this.current, diagonal);
    if (first) this.slider.value = String(this.goodFactor());
    const colours = this.colourChooser;
    if (this.mode) this.by = "displacement";
    colours.select.value = this.by;
    colours.select.disabled = this.mode;
    this.loadTicks.hidden = this.mode; // a shape has no loads
    this.fillParts();
    // Shapes are animated at once, unless reduced motion is preferred; steps only on request.
    const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
    this.animate(this.mode ? !calm : this.playing && !wasMode);
    this.deform();
    this.colour();
    if (first) {
      this.stage.fit();
      this.stage.look("slant");
    }
  }

  /** The round factor at which the greatest displacement of all steps is about a twentieth of the machine. */
  private goodFactor(): number {
    if (this.mode) return modeFactor;
    let most = 0;
    this.data.scenes.forEach((s, i) => { if (s.kind === "step") most = Math.max(most, this.machine.greatest(i, "displacement")); });
    const wanted = most > 0 ? roundDown((0.05 * this.machine.size(this.scene).diagonal) / most) : 1;
    return Math.max(1, factors.findLastIndex((f) => f <= wanted));
  }

  private deform(): void {
    const slider = factors[Number(this.slider.value)] ?? 1;
    let factor = slider;
    if (this.mode) {
      const share = Number(this.slider.value) / 100;
      factor = (share * this.machine.size(this.scene).diagonal) / (this.machine.greatest(this.scene, "displacement") || 1);
      this.factorText.value = slider === 0 ? "none" : `${digits(share * 100, 1)} % of the size`;
    } else {
      this.factorText.value = slider === 0 ? "none" : `\u00d7 ${slider}`;
    }
    this.slider.setAttribute("aria-valuetext", this.factorText.value);
    this.machine.place(this.scene, factor * this.phase);
    this.machine.choose(this.scene, this.chosen);
    this.stage.draw();
  }

  private colour(): void {
    let most = 0;
    this.data.scenes.forEach((s, i) => {
      // Steps share one scale, so that their colours can be compared; a mode has its own.
      if (this.mode ? i === this.scene : s.kind === "step") most = Math.max(most, this.machine.greatest(i, this.by));
    });
    const { name, unit, size } = quantity(this.data, this.by, this.mode);
    // A mode's displacements have no absolute size: its scale ends at the greatest.
    const end = this.mode ? 100 : roundUp(most / size);
    this.machine.colour(this.scene, this.by, this.mode ? most : end * size);
    showScale(this.scale, name, unit, end);
    this.stage.draw();
  }

  private fillParts(): void {
    const names = this.mode ? this.machine.parts(this.scene).map((p) => p.name) : Object.keys(this.current.facts);
    this.partChooser.select.replaceChildren(element("option", { value: "" }, "\u2013 click one, or choose \u2013"),
      ...names.map((name) => element("option", { value: name }, name)));
    this.choose(names.includes(this.chosen) ? this.chosen : "");
  }

  private choose(name: string): void {
    this.chosen = name === "pressure" ? "" : name;
    this.partChooser.select.value = this.chosen;
    this.machine.choose(this.scene, this.chosen);
    const rows = this.current.facts[this.chosen] ?? [];
    const list = element("dl");
    for (const [label, text] of rows) list.append(element("dt", {}, label), element("dd", {}, text));
    const title = element("h3", {}, this.chosen ? `${this.chosen}, ${this.current.name}` : this.current.name);
    const empty = element(
        "p", {class : this.mode ? "note" : "note ask"},
        this.mode
            ? "A vibration or buckling shape: its size is arbitrary; only the relative motion of the parts has meaning."
            : "Click a bar, a post, a cam or a hinge for its values in this step.");
    // A shape shows its own values where nothing is selected, and its note in any case.
    this.facts.replaceChildren(title, ...(rows.length > 0 ? [ list ] : []),
                               ...(this.mode || rows.length === 0 ? [ empty ] : []));
    this.stage.draw();
  }

  /** Name of the bar or joint under the pointer; arrows and pins lie in front of bars. */
  private nameAt(e: { clientX: number; clientY: number }): string {
    const { forces, fixtures, pressure } = this.extras;
    const extra = this.stage.hits(e, [forces, fixtures, pressure].filter((g) => g.visible))[0];
    const bar = this.stage.hits(e, [this.machine.mesh])[0];
    const above = extra && (extra.object.renderOrder > 0 || !bar || extra.distance < bar.distance);
    if (above) return String(extra.object.userData.name ?? "");
    return bar?.faceIndex == null ? "" : (this.machine.partOf(this.scene, bar.faceIndex)?.name ?? "");
  }

  private point(e: PointerEvent): void {
    const name = e.buttons ? "" : this.nameAt(e);
    this.hint.hidden = name === "";
    const most = this.extras.greatestPressure();
    const { stress_in_MPa: unit } = this.data.units;
    this.hint.textContent = name !== "pressure" ? name
      : `nose pressure on the sheet, at most ${digits(most / unit.size)} ${unit.name}`;
    const box = this.canvas.getBoundingClientRect();
    this.hint.style.transform = `translate(${Math.min(e.clientX - box.left + 12, box.width - 170)}px, ${e.clientY - box.top + 14}px)`;
    this.canvas.style.cursor = name ? "pointer" : "grab";
  }

  private animate(on: boolean): void {
    const wasPlaying = this.playing;
    this.playing = on;
    this.play.textContent = on ? "\u25a0 Stop" : "\u25b6 Animate";
    if (!on) {
      this.phase = 1;
      this.deform();
    } else if (!wasPlaying) {
      const start = performance.now();
      const beat = (now: number) => {
        if (!this.playing) return;
        const turn = ((now - start) / 2000) * 2 * Math.PI;
        // A mode moves both ways; a loaded machine goes from undeformed to deformed and back.
        this.phase = this.mode ? Math.sin(turn) : (1 - Math.cos(turn)) / 2;
        this.deform();
        requestAnimationFrame(beat);
      };
      requestAnimationFrame(beat);
    }
  }
}
