import { readData } from "./data";
import { element } from "./dom";
import { readPlots } from "./plots";
import { Viewer } from "./viewer";

const data = readData();
readPlots(data.plots);

const root = document.getElementById("viewer");
if (root && data.scenes.length > 0) {
  try {
    new Viewer(data, root);
  } catch {
    // Without WebGL2 there is no picture; all else stands.
    root.replaceChildren(element("p", { class: "note", id: "no-3d" },
      "This browser shows no 3D (WebGL2 is missing or switched off). Plots and tables below are complete without it."));
  }
}
// What is folded away shall be on paper, too.
addEventListener("beforeprint", () => document.querySelectorAll("details").forEach((d) => { d.open = true; }));
