// Camera, light and drawing. Frames are drawn when something has changed, not all the time.
import {
  AmbientLight,
  DirectionalLight,
  Group,
  Object3D,
  PerspectiveCamera,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";

export type View = "slant" | "front" | "side" | "top";

const directions: Record<View, [number, number, number]> = {
  slant: [-0.55, -1, 0.62],
  front: [0, -1, 0],
  side: [-1, 0, 0],
  top: [0, -0.001, 1],
};

export class Stage {
  readonly scene = new Scene();
  readonly camera = new PerspectiveCamera(28, 1.6, 1, 1e5);
  readonly controls: OrbitControls;
  private readonly renderer: WebGLRenderer;
  private readonly caster = new Raycaster();
  private waiting = false;
  private centre = new Vector3();
  private radius = 500;
  onDrawn: () => void = () => undefined;

  /** Throws where there is no WebGL2. */
  constructor(private readonly canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, preserveDrawingBuffer: true });
    this.renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    this.camera.up.set(0, 0, 1);
    this.scene.add(new AmbientLight("#ffffff", 2.2));
    const lamp = new DirectionalLight("#ffffff", 1.1);
    lamp.position.set(-0.4, -1, 1.4);
    const fill = new DirectionalLight("#ffffff", 0.4);
    fill.position.set(1, 0.6, -0.5);
    this.scene.add(lamp, fill);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.enableDamping = false;
    this.controls.addEventListener("change", () => this.draw());
    new ResizeObserver(() => this.fit()).observe(canvas.parentElement ?? canvas);
  }

  add(...objects: (Object3D | Group)[]): void {
    this.scene.add(...objects);
  }

  /** Requests one frame. */
  draw(): void {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => {
      this.waiting = false;
      this.renderer.render(this.scene, this.camera);
      this.onDrawn();
    });
  }

  frame(low: number[], high: number[]): void {
    this.centre.set((low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2);
    this.radius = Math.hypot(...high.map((h, i) => h - low[i]!)) / 2;
  }

  look(view: View): void {
    const wide = Math.min(1, this.camera.aspect / 1.45); // machines are longer than high
    const away = (this.radius / Math.sin((this.camera.fov * Math.PI) / 360) / wide) * 0.72;
    this.controls.target.copy(this.centre);
    this.camera.position.copy(this.centre).addScaledVector(new Vector3(...directions[view]).normalize(), away);
    this.controls.update();
    this.draw();
  }

  /** Turns about the machine [rad]; factor < 1 zooms in. */
  turn(around: number, over: number, factor = 1): void {
    const arm = this.camera.position.clone().sub(this.controls.target);
    const distance = arm.length() * factor;
    const heading = Math.atan2(arm.y, arm.x) + around;
    const lift = Math.max(-1.5, Math.min(1.5, Math.asin(arm.z / arm.length()) + over));
    arm.set(Math.cos(heading) * Math.cos(lift), Math.sin(heading) * Math.cos(lift), Math.sin(lift));
    this.camera.position.copy(this.controls.target).addScaledVector(arm, distance);
    this.controls.update();
    this.draw();
  }

  /** Objects at a point of the window, nearest first. */
  hits(event: { clientX: number; clientY: number }, objects: Object3D[]) {
    const box = this.canvas.getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * 2 - 1;
    const y = 1 - ((event.clientY - box.top) / box.height) * 2;
    this.caster.setFromCamera(new Vector2(x, y), this.camera);
    return this.caster.intersectObjects(objects, true);
  }

  /** Position of a place of the machine on the canvas, in px from its corner; nothing where it is behind the camera. */
  seen(at: Vector3): { x: number; y: number } | undefined {
    const p = at.clone().project(this.camera);
    if (p.z > 1) return undefined;
    return { x: ((p.x + 1) / 2) * this.canvas.clientWidth, y: ((1 - p.y) / 2) * this.canvas.clientHeight };
  }

  /** Adapts to the size of its container. */
  fit(): void {
    const box = this.canvas.parentElement?.getBoundingClientRect();
    if (!box || box.width < 10) return;
    this.renderer.setSize(box.width, box.height, true);
    this.camera.aspect = box.width / box.height;
    this.camera.updateProjectionMatrix();
    this.draw();
  }
}
