// Input of the page's script, written by io/report/report_data.cpp.

export interface Unit {
  name: string;
  size: number;
}

export interface Part {
  name: string;
  body: string;
  first_triangle: number;
  triangles: number;
  yield_MPa: number;
}

export interface Arrow {
  name: string;
  kind: string;
  at_mm: [number, number, number];
  force_N: [number, number, number];
  pressure_MPa: number;
}

export interface Scene {
  name: string;
  kind: "step" | "mode";
  angle_deg: number;
  mesh: number;
  place: number;
  move_i16: string;
  move_step_mm: number;
  stress_u16: string;
  stress_step_MPa: number;
  arrows: Arrow[];
  facts: Record<string, [string, string][]>;
}

export interface Fixture {
  name: string;
  kind: string;
  at_mm: [number, number, number];
  axis: [number, number, number];
  diameter_mm: number;
  length_mm: number;
}

export interface Sheet {
  left_mm: number;
  right_mm: number;
  flange_mm: number;
  thickness_mm: number;
  grip_mm: number;
}

export interface PlotData {
  x_label: string;
  y_label: string;
  series: { name: string; x: (number | null)[]; y: (number | null)[] }[];
}

export interface Data {
  units: { length_in_mm: Unit; force_in_N: Unit; stress_in_MPa: Unit };
  first_scene: number;
  meshes: { parts: Part[]; corners_u32: string }[];
  places_f32: string[];
  scenes: Scene[];
  fixtures: Fixture[];
  plots: PlotData[];
  sheet?: Sheet;
}

export function readData(): Data {
  return JSON.parse(document.getElementById("data")?.textContent ?? "{}") as Data;
}

/** The bytes of base64 text, in a separate buffer (so that wider numbers can be read from it). */
export function bytes(text: string): ArrayBuffer {
  const binary = atob(text);
  const out = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; ++i) out[i] = binary.charCodeAt(i);
  return out.buffer;
}
