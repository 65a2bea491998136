import { readData } from "./data";
import { element } from "./dom";
import { readPlots } from "./plots";
import { Viewer } from "./viewer";

const data = readData();
readPlots(data.plots);

const root = document.getElementById("viewer");
if (root && data.scenes.length > 0) {
  if (document.createElement("canvas").getContext("webgl2")) {
    new Viewer(data, root);
  } else {
    // There is no picture then; all else stands.
    root.replaceChildren(element("p", { class: "note", id: "no-3d" },
      "This browser shows no 3D (WebGL2 is missing or switched off). Plots and tables below are complete without it."));
  }
}
// What is folded away shall be on paper, too.
addEventListener("beforeprint", () => document.querySelectorAll("details").forEach((d) => { d.open = true; }));
