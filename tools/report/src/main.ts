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
    // Then there is no picture; everything else remains.
    root.replaceChildren(element("p", { class: "note", id: "no-3d" },
      "This browser cannot show 3D (WebGL2 is missing or disabled). Plots and tables below are complete without it."));
  }
}
// Collapsed sections are also printed.
addEventListener("beforeprint", () => document.querySelectorAll("details").forEach((d) => { d.open = true; }));
