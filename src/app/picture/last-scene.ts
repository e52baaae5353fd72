import * as THREE from "three";
import { Line2 } from "three/addons/lines/Line2.js";
import { LineGeometry } from "three/addons/lines/LineGeometry.js";
import { LineMaterial } from "three/addons/lines/LineMaterial.js";
import { LineSegments2 } from "three/addons/lines/LineSegments2.js";
import { LineSegmentsGeometry } from "three/addons/lines/LineSegmentsGeometry.js";
import { MeshBVH } from "three-mesh-bvh";
import type { Mesh } from "#mesh/mesh.ts";

export interface SceneLine {
  readonly key: string;
  readonly points: readonly Float64Array[];
  readonly colour: string;
  readonly widthPx: number;
  /** Broken: mm drawn and mm left out. */
  readonly dash?: readonly [number, number] | undefined;
}
export interface OnScreen {
  readonly x: number;
  readonly y: number;
  /** The last itself does not stand before it. */
  readonly seen: boolean;
}
/** Where the eye is: turned about the upright axis from the toe (+x) to the left, and raised above the ground; degrees. */
export interface Eye {
  readonly turnDeg: number;
  readonly riseDeg: number;
}

/** A line's lift is the mean of that of so many points to either side. */
const evenOver = 8;

/** How far the shell is lifted off the last, mm, so that it is not half drowned in it. */
const liftShell = 0.5;

/** Lines are drawn this much nearer to the eye than they lie, mm: half of a wide line would else sink into the last. */
const nearer = 2.5;

/** The last on the bench, drawn by three. Knows nothing of the page; tells `onFrame` whenever places on the screen changed. */
export class LastScene {
  readonly #renderer: THREE.WebGLRenderer;
  readonly #scene = new THREE.Scene();
  readonly #camera = new THREE.OrthographicCamera(-1, 1, 1, -1, -2000, 2000);
  readonly #last = new THREE.Mesh(new THREE.BufferGeometry(), new THREE.MeshStandardMaterial({ roughness: 0.95, metalness: 0 }));
  readonly #shell = new THREE.Mesh(new THREE.BufferGeometry(), new THREE.MeshStandardMaterial({ roughness: 1, metalness: 0, side: THREE.DoubleSide }));
  readonly #lines = new THREE.Group();
  readonly #inks = new Map<string, LineMaterial>();
  readonly #light = new THREE.DirectionalLight(0xffffff, 1.7);
  readonly #onFrame: () => void;
  #bvh: MeshBVH | undefined;
  #centre = new THREE.Vector3();
  #eye: Eye = { turnDeg: 200, riseDeg: 45 };
  #mmPerPx = 0.5;
  #sides: number | undefined;
  #size = { width: 1, height: 1 };
  #asked = 0;

  /**
   * @param sides px to be left free for words on either side of the last; a tenth of the width unless said
   * @throws where the browser has no WebGL
   */
  constructor(canvas: HTMLCanvasElement, onFrame: () => void, sides?: number) {
    this.#renderer = new THREE.WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.#renderer.setPixelRatio(Math.min(2, globalThis.devicePixelRatio || 1));
    this.#onFrame = onFrame;
    this.#sides = sides;
    this.#camera.up.set(0, 0, 1);
    this.#scene.add(new THREE.HemisphereLight(0xffffff, 0xcfc4b4, 1.75), this.#light, this.#last, this.#shell, this.#lines);
  }

  dispose(): void {
    cancelAnimationFrame(this.#asked);
    for (const { geometry, material } of [this.#last, this.#shell]) {
      geometry.dispose();
      material.dispose();
    }
    this.#dropLines();
    for (const ink of this.#inks.values()) ink.dispose();
    this.#renderer.dispose();
  }

  resize(width: number, height: number): void {
    this.#size = { width: Math.max(1, width), height: Math.max(1, height) };
    this.#renderer.setSize(this.#size.width, this.#size.height, false);
    this.fit();
  }

  setLast(mesh: Mesh): void {
    const geometry = geometryOf(mesh, 0);
    this.#last.geometry.dispose();
    this.#last.geometry = geometry;
    this.#bvh = new MeshBVH(geometry);
    geometry.computeBoundingBox();
    geometry.boundingBox!.getCenter(this.#centre);
    this.ask();
  }

  /** The last in one colour, or in a colour for each vertex (r g b, 0 … 255). */
  paintLast(colour: string, perVertex?: Uint8Array): void {
    const { geometry, material } = this.#last;
    if (perVertex) geometry.setAttribute("color", new THREE.BufferAttribute(linear(perVertex), 3));
    else geometry.deleteAttribute("color");
    material.vertexColors = perVertex !== undefined;
    material.color.set(perVertex ? "#ffffff" : colour);
    material.needsUpdate = true;
    this.ask();
  }

  /** The upper's surface over the last, in one colour or in a colour for each vertex (r g b, 0 … 255). */
  setShell(mesh: Mesh | undefined, colour: string, perVertex?: Uint8Array): void {
    this.#shell.visible = mesh !== undefined;
    if (!mesh) return this.ask();
    const geometry = geometryOf(mesh, liftShell);
    if (perVertex) geometry.setAttribute("color", new THREE.BufferAttribute(linear(perVertex), 3));
    this.#shell.geometry.dispose();
    this.#shell.geometry = geometry;
    const coloured = perVertex !== undefined;
    this.#shell.material.needsUpdate = this.#shell.material.vertexColors !== coloured;
    this.#shell.material.vertexColors = coloured;
    this.#shell.material.color.set(coloured ? "#ffffff" : colour);
    this.ask();
  }

  setLines(lines: readonly SceneLine[], thin: readonly SceneLine[]): void {
    this.#dropLines();
    for (const line of lines) for (const points of line.points) if (points.length >= 6) this.#lines.add(this.#fat(line, points));
    for (const line of thin) {
      const ends = segments(line.points);
      if (ends.length === 0) continue;
      const geometry = new LineSegmentsGeometry().setPositions(Float32Array.from(ends));
      this.#lines.add(new LineSegments2(geometry, this.#ink(line)));
    }
    this.ask();
  }

  get eye(): Eye {
    return this.#eye;
  }
  look(eye: Eye, fit: boolean): void {
    this.#eye = { turnDeg: ((eye.turnDeg % 360) + 360) % 360, riseDeg: Math.min(89.9, Math.max(-89.9, eye.riseDeg)) };
    if (fit) this.fit();
    else this.ask();
  }
  zoom(by: number): void {
    this.#mmPerPx = Math.min(2, Math.max(0.05, this.#mmPerPx / by));
    this.ask();
  }

  /** Chooses the scale at which the whole last is in the picture, with a margin for names. */
  fit(): void {
    this.#aim();
    const box = this.#last.geometry.boundingBox;
    if (!box) return;
    let right = 1;
    let up = 1;
    const v = new THREE.Vector3();
    const position = this.#last.geometry.getAttribute("position");
    for (let i = 0; i < position.count; i += 7) {
      v.fromBufferAttribute(position, i).applyMatrix4(this.#camera.matrixWorldInverse);
      right = Math.max(right, Math.abs(v.x));
      up = Math.max(up, Math.abs(v.y));
    }
    this.#mmPerPx = Math.max((2 * right) / Math.max(0.5 * this.#size.width, this.#size.width - 2 * (this.#sides ?? 0.1 * this.#size.width)), (2 * up) / (this.#size.height * 0.84));
    this.ask();
  }

  /** Where a point of the last lies in the picture, px from its upper left. */
  project(p: readonly number[]): OnScreen {
    const v = new THREE.Vector3(p[0], p[1], p[2]).project(this.#camera);
    return { x: ((v.x + 1) / 2) * this.#size.width, y: ((1 - v.y) / 2) * this.#size.height, seen: this.#isSeen(p) };
  }

  /** By how many px a small move on the last shows in the picture. */
  projectMove(d: readonly number[]): { readonly x: number; readonly y: number } {
    const v = new THREE.Vector3(d[0], d[1], d[2]).transformDirection(this.#camera.matrixWorldInverse);
    const length = Math.hypot(d[0] ?? 0, d[1] ?? 0, d[2] ?? 0) / this.#mmPerPx;
    return { x: v.x * length, y: -v.y * length };
  }

  /** The point of the last that lies at a place in the picture, px; nothing where the last is not. */
  pick(x: number, y: number): readonly [number, number, number] | undefined {
    const { width, height } = this.#size;
    const caster = new THREE.Raycaster();
    caster.setFromCamera(new THREE.Vector2((2 * x) / width - 1, 1 - (2 * y) / height), this.#camera);
    return this.#bvh?.raycastFirst(caster.ray, THREE.FrontSide)?.point.toArray();
  }

  /** The point of the last nearest to `p`. */
  onto(p: readonly number[]): readonly [number, number, number] {
    const at = new THREE.Vector3(p[0], p[1], p[2]);
    return (this.#bvh?.closestPointToPoint(at)?.point ?? at).toArray();
  }

  /** The points of a line on the last (x y z …) moved outward by `mm`, so that it is seen on top of it. */
  lifted(points: Float64Array, mm: number, closed: boolean): Float64Array {
    const { geometry } = this.#last;
    const [index, normals] = [geometry.index, geometry.getAttribute("normal")];
    if (!this.#bvh || !index) return points;
    const up = new Float64Array(points.length);
    const [at, normal, one] = [new THREE.Vector3(), new THREE.Vector3(), new THREE.Vector3()];
    for (let i = 0; i < points.length; i += 3) {
      const hit = this.#bvh.closestPointToPoint(at.fromArray(points, i));
      if (!hit) continue;
      normal.set(0, 0, 0);
      for (let k = 0; k < 3; k++) normal.add(one.fromBufferAttribute(normals, index.getX(3 * hit.faceIndex + k)));
      normal.normalize().toArray(up, i);
    }
    // Evened along the line: over a rough scan, or where it changes from one side of an edge to the other, it would be drawn ragged.
    const out = points.slice();
    const n = points.length / 3;
    for (let i = 0; i < n; i++) {
      normal.set(0, 0, 0);
      for (let j = -evenOver; j <= evenOver; j++) normal.add(one.fromArray(up, 3 * (closed ? (i + j + n) % n : Math.min(n - 1, Math.max(0, i + j)))));
      at.fromArray(points, 3 * i).addScaledVector(normal.normalize(), mm).toArray(out, 3 * i);
    }
    return out;
  }

  /** Moves a point by px of the picture, along the picture. */
  moved(p: readonly number[], dx: number, dy: number): readonly [number, number, number] {
    const across = new THREE.Vector3(dx * this.#mmPerPx, -dy * this.#mmPerPx, 0).applyQuaternion(this.#camera.quaternion);
    return new THREE.Vector3(p[0], p[1], p[2]).add(across).toArray();
  }

  /** From where to where the last reaches across the picture, px. */
  span(): { readonly left: number; readonly right: number } {
    let [left, right] = [Infinity, -Infinity];
    const position = this.#last.geometry.getAttribute("position");
    const v = new THREE.Vector3();
    for (let i = 0; i < (position?.count ?? 0); i += 41) {
      const { x } = v.fromBufferAttribute(position!, i).project(this.#camera);
      [left, right] = [Math.min(left, x), Math.max(right, x)];
    }
    return { left: ((left + 1) / 2) * this.#size.width, right: ((right + 1) / 2) * this.#size.width };
  }

  get mmPerPx(): number {
    return this.#mmPerPx;
  }

  ask(): void {
    if (this.#asked !== 0) return;
    this.#asked = requestAnimationFrame(() => {
      this.#asked = 0;
      this.#aim();
      this.#renderer.render(this.#scene, this.#camera);
      this.#onFrame();
    });
  }

  #isSeen(p: readonly number[]): boolean {
    if (!this.#bvh) return true;
    const back = this.#camera.getWorldDirection(new THREE.Vector3()).negate();
    // Begin a little off the surface, toward the viewer and away from the middle, or the outline would hide its own points.
    const from = new THREE.Vector3(p[0], p[1], p[2]).sub(this.#centre).multiplyScalar(1.01).add(this.#centre).addScaledVector(back, 3);
    return this.#bvh.raycastFirst(new THREE.Ray(from, back), THREE.DoubleSide) === null;
  }

  #aim(): void {
    const { width, height } = this.#size;
    const [t, r] = [(this.#eye.turnDeg * Math.PI) / 180, (this.#eye.riseDeg * Math.PI) / 180];
    const away = new THREE.Vector3(Math.cos(t) * Math.cos(r), Math.sin(t) * Math.cos(r), Math.sin(r));
    const camera = this.#camera;
    [camera.left, camera.right] = [(-width / 2) * this.#mmPerPx, (width / 2) * this.#mmPerPx];
    [camera.bottom, camera.top] = [(-height / 2) * this.#mmPerPx, (height / 2) * this.#mmPerPx];
    camera.position.copy(this.#centre).addScaledVector(away, 600);
    camera.lookAt(this.#centre);
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    // The picture has no vanishing point, so that this moves nothing across it.
    this.#lines.position.copy(away).multiplyScalar(nearer);
    // Daylight from over the left shoulder of whoever looks.
    const left = new THREE.Vector3(-1, 0, 0).transformDirection(camera.matrixWorld);
    this.#light.position.copy(away).addScaledVector(left, 0.7).add(new THREE.Vector3(0, 0, 0.9));
  }

  #fat(line: SceneLine, points: Float64Array): Line2 {
    const made = new Line2(new LineGeometry().setPositions(Float32Array.from(points)), this.#ink(line));
    if (line.dash) made.computeLineDistances();
    return made;
  }

  /** One for each look, kept: with its last material a shader goes too, and making that anew at every move of a drag costs more than the drawing. */
  #ink({ colour, widthPx, dash }: SceneLine): LineMaterial {
    const key = `${colour} ${widthPx} ${dash?.join(" ")}`;
    const known = this.#inks.get(key);
    if (known) return known;
    const ink = new LineMaterial({ color: new THREE.Color(colour), linewidth: widthPx, dashed: dash !== undefined, dashSize: dash?.[0] ?? 1, gapSize: dash?.[1] ?? 0 });
    this.#inks.set(key, ink);
    return ink;
  }

  #dropLines(): void {
    for (const child of this.#lines.children) (child as Line2).geometry.dispose();
    this.#lines.clear();
  }
}

/** Mesh with smooth normals, its vertices lifted by `lift` mm along them. */
function geometryOf(mesh: Mesh, lift: number): THREE.BufferGeometry {
  const geometry = new THREE.BufferGeometry();
  const position = new THREE.BufferAttribute(Float32Array.from(mesh.positions), 3);
  geometry.setAttribute("position", position);
  geometry.setIndex(new THREE.BufferAttribute(mesh.triangles.slice(), 1));
  geometry.computeVertexNormals();
  if (lift !== 0) {
    const normal = geometry.getAttribute("normal");
    const array = position.array as Float32Array;
    for (let i = 0; i < array.length; i++) array[i]! += lift * (normal.array[i] ?? 0);
  }
  return geometry;
}

function segments(lines: readonly Float64Array[]): Float64Array {
  const out: number[] = [];
  for (const line of lines) for (let i = 3; i < line.length; i += 3) for (let k = -3; k < 3; k++) out.push(line[i + k]!);
  return Float64Array.from(out);
}

function linear(rgb: Uint8Array): Float32Array {
  const colour = new THREE.Color();
  const out = new Float32Array(rgb.length);
  for (let i = 0; i < rgb.length; i += 3) colour.setRGB(rgb[i]! / 255, rgb[i + 1]! / 255, rgb[i + 2]! / 255, THREE.SRGBColorSpace).toArray(out, i);
  return out;
}
