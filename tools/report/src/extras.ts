// Additions to the machine: studs, cams and pins, the sheet, the joints' forces, the pressure along the nose.
import {
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  ConeGeometry,
  CylinderGeometry,
  DoubleSide,
  Group,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  Object3D,
  Vector3,
} from "three";
import type { Arrow, Data, Fixture, Scene, Sheet } from "./data";

const up = new Vector3(0, 1, 0); // axis of new cylinders and cones
const steel = new MeshLambertMaterial({ color: "#8d99a6" });
export const sheetColour = "#b9a36b";
const blank = new MeshLambertMaterial({ color: sheetColour, transparent: true, opacity: 0.75, side: DoubleSide });
export const forceColour = "#d55e00";
export const pressureColour = "#cc79a7";
const force = new MeshBasicMaterial({ color: forceColour, depthTest: false, transparent: true, opacity: 0.9 });
const pressure = new MeshBasicMaterial({
  color: pressureColour,
  depthTest: false,
  transparent: true,
  opacity: 0.75,
  side: DoubleSide,
});

/** Disposes of a group's objects and empties it. */
export function clear(group: Group): void {
  group.traverse((o: Object3D) => {
    if (o instanceof Mesh) o.geometry.dispose();
  });
  group.clear();
}

function fixtureMesh(f: Fixture): Mesh {
  const mesh = new Mesh(new CylinderGeometry(f.diameter_mm / 2, f.diameter_mm / 2, f.length_mm, 24), steel);
  mesh.quaternion.setFromUnitVectors(up, new Vector3(...f.axis).normalize());
  mesh.position.set(...f.at_mm);
  mesh.userData.name = f.name;
  return mesh;
}

/** An arrow from `tail` along `along` [mm]. */
function arrowMesh(tail: Vector3, along: Vector3, thick: number, name: string): Group {
  const group = new Group();
  const length = along.length();
  const head = Math.min(length * 0.5, thick * 5);
  const shaft = new Mesh(new CylinderGeometry(thick / 2, thick / 2, length - head, 10), force);
  shaft.position.y = (length - head) / 2;
  const tip = new Mesh(new ConeGeometry(thick * 1.4, head, 14), force);
  tip.position.y = length - head / 2;
  group.add(shaft, tip);
  for (const m of [shaft, tip]) {
    m.renderOrder = 4;
    m.userData.name = name;
  }
  group.quaternion.setFromUnitVectors(up, along.clone().normalize());
  group.position.copy(tail);
  return group;
}

const nameOf = (a: Arrow) => (a.name.startsWith(a.kind) ? a.name : `${a.kind} ${a.name}`);

/** A stud pulls both of its ends inwards, a cam pushes both outwards; other joints show their one force. */
function jointArrows(a: Arrow, perNewton: number, thick: number, reach: number): Group[] {
  const f = new Vector3(...a.force_N).multiplyScalar(perNewton);
  if (f.length() < thick) return [];
  const at = new Vector3(...a.at_mm);
  if (a.kind !== "post" && a.kind !== "cam") return [arrowMesh(at, f, thick, nameOf(a))];
  const length = f.length();
  return [1, -1].map((side) => {
    const outward = new Vector3(0, 0, side);
    if (a.kind === "cam") return arrowMesh(at.clone(), outward.multiplyScalar(length), thick, nameOf(a));
    const tail = at.clone().addScaledVector(outward, reach / 2 + length);
    return arrowMesh(tail, outward.multiplyScalar(-length), thick, nameOf(a));
  });
}

/** The pads' pressure as a band on the nose line, its height proportional to the pressure. */
function pressureBand(pads: Arrow[], height: number, greatest: number): Mesh | undefined {
  const sorted = [...pads].sort((a, b) => a.at_mm[0] - b.at_mm[0]);
  if (sorted.length < 2 || !(greatest > 0)) return undefined;
  const points: number[] = [];
  const corners: number[] = [];
  sorted.forEach((p, i) => {
    const [x, , z] = p.at_mm;
    points.push(x, 0, z, x, 0, z + (height * Math.max(0, p.pressure_MPa)) / greatest);
    if (i > 0) corners.push(2 * i - 2, 2 * i, 2 * i + 1, 2 * i - 2, 2 * i + 1, 2 * i - 1);
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(Float32Array.from(points), 3));
  geometry.setIndex(corners);
  const mesh = new Mesh(geometry, pressure);
  mesh.renderOrder = 3;
  mesh.userData.name = "pressure";
  return mesh;
}

function sheetGroup(s: Sheet, angle: number): Group {
  const width = s.right_mm - s.left_mm;
  const middle = (s.left_mm + s.right_mm) / 2;
  const held = new Mesh(new BoxGeometry(width, 3 * s.grip_mm, s.thickness_mm), blank);
  held.position.set(middle, 1.5 * s.grip_mm, s.thickness_mm / 2);
  // The flange extends slightly beyond the line on which the apron bears, and turns with the apron.
  const flange = new Mesh(new BoxGeometry(width, 1.2 * s.flange_mm, s.thickness_mm), blank);
  flange.position.set(0, -0.6 * s.flange_mm, s.thickness_mm / 2);
  const turned = new Group();
  turned.position.x = middle;
  turned.rotation.x = (-angle * Math.PI) / 180;
  turned.add(flange);
  const group = new Group();
  group.add(held, turned);
  return group;
}

export class Extras {
  readonly fixtures = new Group();
  readonly forces = new Group();
  readonly pressure = new Group();
  readonly sheet = new Group();

  constructor(private readonly data: Data) {
    for (const f of data.fixtures) this.fixtures.add(fixtureMesh(f));
  }

  /** \param size of the machine [mm], which sets how large arrows are. */
  show(scene: Scene, size: number): void {
    for (const g of [this.forces, this.pressure, this.sheet]) clear(g);
    if (this.data.sheet && scene.kind === "step") this.sheet.add(sheetGroup(this.data.sheet, scene.angle_deg));
    const joints = scene.arrows.filter((a) => a.kind !== "pad");
    const most = this.greatestForce();
    const reach = (a: Arrow) => this.data.fixtures.find((f) => f.name === nameOf(a))?.length_mm ?? 0;
    for (const a of joints)
      for (const arrow of jointArrows(a, (0.14 * size) / (most || 1), 0.006 * size, reach(a))) this.forces.add(arrow);
    const pads = scene.arrows.filter((a) => a.kind === "pad");
    const band = pressureBand(pads, 0.12 * size, this.greatestPressure());
    if (band) this.pressure.add(band);
  }

  /** Of the joints in all scenes [N]. */
  greatestForce(): number {
    return Math.max(0, ...this.data.scenes.flatMap((s) => s.arrows).filter((a) => a.kind !== "pad")
      .map((a) => Math.hypot(...a.force_N)));
  }

  /** Of all scenes [MPa]. */
  greatestPressure(): number {
    return Math.max(0, ...this.data.scenes.flatMap((s) => s.arrows).map((a) => (a.kind === "pad" ? a.pressure_MPa : 0)));
  }
}
