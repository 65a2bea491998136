// Edges to draw: where two faces of a part meet at an angle, or a face ends.
import type { Part } from "./data";

const cosineOfFlat = Math.cos((25 * Math.PI) / 180);

type Vector = [number, number, number];

function normal(place: Float32Array, a: number, b: number, c: number): Vector {
  const at = (i: number, k: number) => place[3 * i + k]!;
  const u: Vector = [at(b, 0) - at(a, 0), at(b, 1) - at(a, 1), at(b, 2) - at(a, 2)];
  const v: Vector = [at(c, 0) - at(a, 0), at(c, 1) - at(a, 1), at(c, 2) - at(a, 2)];
  const n: Vector = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const length = Math.hypot(...n) || 1;
  return [n[0] / length, n[1] / length, n[2] / length];
}

/** Pairs of point numbers. `corners`: three per triangle. */
export function sharpEdges(place: Float32Array, corners: Uint32Array, parts: Part[]): Uint32Array {
  const out: number[] = [];
  for (const part of parts) {
    const open = new Map<string, [number, number, Vector]>();
    for (let t = part.first_triangle; t < part.first_triangle + part.triangles; ++t) {
      const [a, b, c] = [corners[3 * t]!, corners[3 * t + 1]!, corners[3 * t + 2]!];
      const n = normal(place, a, b, c);
      for (const [p, q] of [[a, b], [b, c], [c, a]] as const) {
        const key = p < q ? `${p} ${q}` : `${q} ${p}`;
        const other = open.get(key);
        if (!other) {
          open.set(key, [p, q, n]);
          continue;
        }
        open.delete(key);
        const m = other[2];
        if (m[0] * n[0] + m[1] * n[1] + m[2] * n[2] < cosineOfFlat) out.push(p, q);
      }
    }
    for (const [p, q] of open.values()) out.push(p, q);
  }
  return Uint32Array.from(out);
}
