// The machine's surface: position, displacement and colour of its points.
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
} from "three";
import { bandTexture } from "./colours";
import { bytes, type Data, type Part, type Scene } from "./data";
import { sharpEdges } from "./edges";

export type Colouring = "displacement" | "stress" | "utilisation";

/** A scene unpacked. */
interface State {
  place: Float32Array; // x y z of each point [mm]
  move: Float32Array; // likewise, true size
  stress: Float32Array; // [MPa]
}

export class Machine {
  readonly group = new Group();
  readonly mesh: Mesh<BufferGeometry, MeshLambertMaterial>;
  private readonly outline: LineSegments;
  private readonly ghost: LineSegments;
  private readonly chosen: LineSegments;
  private readonly states = new Map<number, State>();
  private readonly corners: Uint32Array[];
  private readonly edges: Map<number, Uint32Array> = new Map();
  private current = -1;

  constructor(private readonly data: Data) {
    this.corners = data.meshes.map((m) => new Uint32Array(bytes(m.corners_u32)));
    const material = new MeshLambertMaterial({ map: bandTexture(), side: DoubleSide, flatShading: true });
    material.polygonOffset = true;
    material.polygonOffsetFactor = material.polygonOffsetUnits = 1;
    this.mesh = new Mesh(new BufferGeometry(), material);
    this.outline = new LineSegments(new BufferGeometry(), new LineBasicMaterial());
    this.ghost = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ transparent: true, opacity: 0.35 }));
    this.chosen = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ depthTest: false }));
    this.chosen.renderOrder = 5;
    for (const o of [this.mesh, this.outline, this.ghost, this.chosen]) {
      o.frustumCulled = false;
      this.group.add(o);
    }
  }

  parts(scene: number): Part[] {
    return this.data.meshes[this.sceneOf(scene).mesh]?.parts ?? [];
  }

  /** The part to which a triangle belongs. */
  partOf(scene: number, triangle: number): Part | undefined {
    return this.parts(scene).find((p) => triangle >= p.first_triangle && triangle < p.first_triangle + p.triangles);
  }

  ink(line: string, chosen: string): void {
    (this.outline.material as LineBasicMaterial).color.set(line);
    (this.ghost.material as LineBasicMaterial).color.set(line);
    (this.chosen.material as LineBasicMaterial).color.set(chosen);
  }

  showGhost(on: boolean): void {
    this.ghost.visible = on;
  }

  /** Sets the points to their positions in a scene, with displacements times `factor`. */
  place(scene: number, factor: number): void {
    const state = this.state(scene);
    this.load(scene, state);
    const points = this.mesh.geometry.getAttribute("position") as BufferAttribute;
    const to = points.array as Float32Array;
    for (let i = 0; i < to.length; ++i) to[i] = state.place[i]! + factor * state.move[i]!;
    points.needsUpdate = true;
    this.mesh.geometry.boundingSphere = null;
  }

  /** Colours by a quantity; `greatest` is the upper end of the scale. */
  colour(scene: number, by: Colouring, greatest: number): void {
    const values = this.values(scene, by);
    const uv = this.mesh.geometry.getAttribute("uv") as BufferAttribute;
    for (let i = 0; i < values.length; ++i) uv.setXY(i, Math.min(0.9999, values[i]! / (greatest || 1)), 0.5);
    uv.needsUpdate = true;
  }

  /** Draws the outline of a part (or of none) in the selection colour. */
  choose(scene: number, name: string): void {
    const part = this.parts(scene).find((p) => p.name === name);
    const mesh = this.sceneOf(scene).mesh;
    const corners = this.corners[mesh]!;
    const edges = part ? sharpEdges(this.state(scene).place, corners, [part]) : new Uint32Array();
    this.chosen.geometry.setIndex(new BufferAttribute(edges, 1));
    this.chosen.visible = edges.length > 0;
  }

  /** Greatest value of a quantity in a scene: [mm], [MPa] or a part of yield. */
  greatest(scene: number, by: Colouring): number {
    let most = 0;
    for (const v of this.values(scene, by)) if (v > most) most = v;
    return most;
  }

  /** Length of the machine's box diagonal [mm]. */
  size(scene: number): { low: number[]; high: number[]; diagonal: number } {
    const { place } = this.state(scene);
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    place.forEach((v, i) => {
      low[i % 3] = Math.min(low[i % 3]!, v);
      high[i % 3] = Math.max(high[i % 3]!, v);
    });
    return { low, high, diagonal: Math.hypot(...high.map((h, i) => h - low[i]!)) };
  }

  private sceneOf(scene: number): Scene {
    const s = this.data.scenes[scene];
    if (!s) throw new Error(`there is no scene ${scene}`);
    return s;
  }

  private state(scene: number): State {
    let state = this.states.get(scene);
    if (!state) {
      const s = this.sceneOf(scene);
      const move = Float32Array.from(new Int16Array(bytes(s.move_i16)), (v) => v * s.move_step_mm);
      const stress = Float32Array.from(new Uint16Array(bytes(s.stress_u16)), (v) => v * s.stress_step_MPa);
      state = { place: new Float32Array(bytes(this.data.places_f32[s.place]!)), move, stress };
      this.states.set(scene, state);
    }
    return state;
  }

  private values(scene: number, by: Colouring): Float32Array {
    const { move, stress } = this.state(scene);
    if (by === "stress") return stress;
    if (by === "displacement")
      return Float32Array.from(stress, (_, i) => Math.hypot(move[3 * i]!, move[3 * i + 1]!, move[3 * i + 2]!));
    const out = new Float32Array(stress.length);
    const corners = this.corners[this.sceneOf(scene).mesh]!;
    for (const part of this.parts(scene)) {
      if (!(part.yield_MPa > 0)) continue;
      for (let c = 3 * part.first_triangle; c < 3 * (part.first_triangle + part.triangles); ++c) {
        const i = corners[c]!;
        out[i] = stress[i]! / part.yield_MPa;
      }
    }
    return out;
  }

  /** Puts the scene's mesh and undeformed positions into the geometries where they differ from the present ones. */
  private load(scene: number, state: State): void {
    if (this.current === scene) return;
    const s = this.sceneOf(scene);
    const old = this.current < 0 ? undefined : this.sceneOf(this.current);
    this.current = scene;
    const corners = this.corners[s.mesh]!;
    if (old?.mesh !== s.mesh) {
      const points = new BufferAttribute(new Float32Array(state.place.length), 3);
      this.mesh.geometry.setAttribute("position", points);
      this.mesh.geometry.setAttribute("uv", new BufferAttribute(new Float32Array((state.place.length / 3) * 2), 2));
      this.mesh.geometry.setIndex(new BufferAttribute(corners, 1));
      this.outline.geometry.setAttribute("position", points);
      this.chosen.geometry.setAttribute("position", points);
    }
    let edges = this.edges.get(s.mesh);
    if (!edges) this.edges.set(s.mesh, (edges = sharpEdges(state.place, corners, this.parts(scene))));
    this.outline.geometry.setIndex(new BufferAttribute(edges, 1));
    this.ghost.geometry.setAttribute("position", new BufferAttribute(state.place, 3));
    this.ghost.geometry.setIndex(new BufferAttribute(edges, 1));
  }
}
