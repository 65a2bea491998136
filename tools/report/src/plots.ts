// Values of the plots at the pointer, and by arrow keys. The pictures themselves are in the page.
import type { PlotData } from "./data";
import { element } from "./dom";
import { digits } from "./format";

const svgSpace = "http://www.w3.org/2000/svg";

interface Frame {
  left: number;
  top: number;
  width: number;
  height: number;
  xLow: number;
  xHigh: number;
}

function frameOf(svg: SVGSVGElement): Frame {
  const n = (svg.dataset.frame ?? "").trim().split(/\s+/).map(Number);
  return { left: n[0]!, top: n[1]!, width: n[2]!, height: n[3]!, xLow: n[4]!, xHigh: n[5]! };
}

/** All x at which there is a value, in order. */
function stations(plot: PlotData): number[] {
  const all = plot.series.flatMap((s) => s.x.filter((x): x is number => x !== null));
  return [...new Set(all)].sort((a, b) => a - b);
}

function nearest(list: number[], x: number): number {
  let best = 0;
  list.forEach((v, i) => { if (Math.abs(v - x) < Math.abs(list[best]! - x)) best = i; });
  return best;
}

class Reader {
  private readonly at: number[];
  private readonly reading: HTMLElement;
  private index = -1;
  private readonly lines = new Map<SVGSVGElement, SVGLineElement>();

  constructor(box: HTMLElement, private readonly plot: PlotData) {
    this.at = stations(plot);
    this.reading = box.querySelector(".reading") ?? element("figcaption");
    box.tabIndex = 0;
    box.setAttribute("aria-label", "Plot; left and right arrow keys read its values");
    for (const svg of box.querySelectorAll("svg")) this.watch(svg);
    box.addEventListener("keydown", (e) => this.key(e));
    this.rest();
  }

  private watch(svg: SVGSVGElement): void {
    const line = document.createElementNS(svgSpace, "line");
    line.setAttribute("class", "plot-cursor");
    line.style.display = "none";
    svg.append(line);
    this.lines.set(svg, line);
    svg.addEventListener("pointermove", (e) => {
      const matrix = svg.getScreenCTM();
      if (!matrix) return;
      const f = frameOf(svg);
      const x = new DOMPoint(e.clientX, e.clientY).matrixTransform(matrix.inverse()).x;
      this.show(nearest(this.at, f.xLow + ((x - f.left) / f.width) * (f.xHigh - f.xLow)));
    });
    svg.addEventListener("pointerleave", () => this.rest());
  }

  private key(e: KeyboardEvent): void {
    const step = { ArrowLeft: -1, ArrowRight: 1, PageUp: -10, PageDown: 10 }[e.key];
    if (step === undefined || this.at.length === 0) return;
    e.preventDefault();
    const from = this.index < 0 ? Math.floor(this.at.length / 2) : this.index + step;
    this.show(Math.max(0, Math.min(this.at.length - 1, from)));
  }

  private rest(): void {
    this.index = -1;
    for (const line of this.lines.values()) line.style.display = "none";
    this.reading.textContent = "Point at the plot to read its values.";
  }

  private show(index: number): void {
    const x = this.at[index];
    if (x === undefined) return;
    this.index = index;
    for (const [svg, line] of this.lines) {
      const f = frameOf(svg);
      const px = f.left + ((x - f.xLow) / (f.xHigh - f.xLow)) * f.width;
      for (const [name, value] of [["x1", px], ["x2", px], ["y1", f.top], ["y2", f.top + f.height]] as const)
        line.setAttribute(name, String(value));
      line.style.display = "";
    }
    const unit = /\[([^\]]*)\]$/;
    const values = this.plot.series.map((s) => {
      // Dots may be above each other.
      const ys = s.y.filter((y, i): y is number => s.x[i] === x && y !== null);
      const text = ys.length === 0 ? "no value" : ys.slice(0, 6).map((y) => digits(y)).join(", ");
      return element("span", { class: "value" }, `${s.name}: ${text}${ys.length > 6 ? " ..." : ""}`);
    });
    this.reading.replaceChildren(
      element("span", { class: "value" }, `x = ${digits(x, 4)} ${unit.exec(this.plot.x_label)?.[1] ?? ""}`),
      ...values, element("span", { class: "value" }, unit.exec(this.plot.y_label)?.[1] ?? ""));
  }
}

export function readPlots(plots: PlotData[]): void {
  for (const box of document.querySelectorAll<HTMLElement>(".plotbox")) {
    const plot = plots[Number(box.dataset.plot)];
    if (plot) new Reader(box, plot);
  }
}
