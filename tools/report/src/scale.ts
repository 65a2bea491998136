// The scale beside the picture: ten bands and their values.
import { bandColour, bands } from "./colours";
import type { Data } from "./data";
import { element } from "./dom";
import { digits } from "./format";
import type { Colouring } from "./machine";

/** The quantity shown as colour: its name, its unit, and the size of that unit in mm, MPa or 1. */
export function quantity(data: Data, by: Colouring, mode: boolean): { name: string; unit: string; size: number } {
  const { length_in_mm: length, stress_in_MPa: stress } = data.units;
  if (by === "stress") return { name: "von Mises stress", unit: stress.name, size: stress.size };
  if (by === "utilisation") return { name: "stress over yield", unit: "%", size: 0.01 };
  if (mode) return { name: "displacement, relative to the greatest", unit: "%", size: 0.01 };
  return { name: "displacement", unit: length.name, size: length.size };
}

export function showScale(to: HTMLElement, name: string, unit: string, greatest: number): void {
  const strip = element("div", { class: "bands", "aria-hidden": "true" });
  for (let i = 0; i < bands; ++i) strip.append(element("span", { style: `background:${bandColour(i)}` }));
  const marks = element("div", { class: "marks" });
  const step = greatest / 5;
  let decimals = 0; // as many as the marks need
  while (decimals < 9 && Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) > 1e-6) ++decimals;
  for (let i = 0; i <= 5; ++i) marks.append(element("span", {}, (step * i).toFixed(decimals)));
  to.replaceChildren(element("div", { class: "scale-name" }, `${name} [${unit}]`), strip, marks);
  to.setAttribute("aria-label", `Colour scale: ${name} from 0, dark blue, to ${digits(greatest)} ${unit}, yellow`);
}
