import { must } from "#base/bug.ts";
import { vertexCount, type Mesh } from "./mesh.ts";
import { neighbours, nextCorner, previousCorner } from "./neighbours.ts";

/**
 * A manifold mesh that is being changed: edges split, turned and drawn together. Layout as in {@link neighbours}: half-edge 3·t + k runs
 * from corner k of triangle t to the next. Dead triangles have corner −1, dead vertices leave −1; both stay as gaps until `taken`.
 */
export class EditMesh {
  positions: Float64Array;
  corners: Int32Array;
  twin: Int32Array;
  leaving: Int32Array;
  /** Slots in use, dead ones too. */
  vertices: number;
  triangles: number;
  #mark: Int32Array;
  #stamp = 0;

  /** Throws a Bug when an edge joins more than two triangles or neighbours disagree in their turning sense. Each point must belong to one fan. */
  constructor(mesh: Mesh) {
    const { twin, leaving, crowdedEdges, turnedEdges } = neighbours(mesh);
    must(crowdedEdges === 0 && turnedEdges === 0, "an edit mesh must be manifold and turned alike");
    this.positions = mesh.positions.slice();
    this.corners = Int32Array.from(mesh.triangles);
    this.twin = twin;
    this.leaving = leaving;
    this.vertices = vertexCount(mesh);
    this.triangles = mesh.triangles.length / 3;
    this.#mark = new Int32Array(this.vertices);
  }

  isOpen(v: number): boolean {
    return this.twin[this.leaving[v]!] === -1;
  }

  squareLength(h: number): number {
    const p = this.positions;
    const a = 3 * this.corners[h]!;
    const b = 3 * this.corners[nextCorner(h)]!;
    return (p[a]! - p[b]!) ** 2 + (p[a + 1]! - p[b + 1]!) ** 2 + (p[a + 2]! - p[b + 2]!) ** 2;
  }

  /** The vertices around `v`, counter-clockwise, into `out`; how many. */
  ringInto(out: number[], v: number): number {
    const start = this.leaving[v]!;
    let n = 0;
    let h = start;
    for (;;) {
      out[n++] = this.corners[nextCorner(h)]!;
      const back = previousCorner(h);
      h = this.twin[back]!;
      if (h === start) break;
      if (h < 0) {
        out[n++] = this.corners[back]!;
        break;
      }
    }
    return n;
  }

  valence(v: number): number {
    const start = this.leaving[v]!;
    let n = 0;
    for (let h = start; ; ) {
      n++;
      h = this.twin[previousCorner(h)]!;
      if (h === start) return n;
      if (h < 0) return n + 1;
    }
  }

  joined(v: number, w: number): boolean {
    const start = this.leaving[v]!;
    for (let h = start; ; ) {
      if (this.corners[nextCorner(h)] === w) return true;
      const back = previousCorner(h);
      h = this.twin[back]!;
      if (h === start) return false;
      if (h < 0) return this.corners[back] === w;
    }
  }

  /** Puts a new vertex on half-edge `h` and cuts its triangles in two; the vertex. The first half of `h` keeps its number. */
  split(h: number, x: number, y: number, z: number): number {
    const m = this.#newVertex(x, y, z);
    const g = this.twin[h]!;
    const e = this.#splitSide(h, m);
    if (g < 0) {
      this.twin[e] = -1;
      this.leaving[m] = e;
      return m;
    }
    const f = this.#splitSide(g, m);
    this.#link(h, f);
    this.#link(e, g);
    this.leaving[m] = e;
    return m;
  }

  /** One triangle (a, b, c) of edge h = a→b becomes (a, m, c) in place and (m, b, c) new; gives the new half-edge m→b. */
  #splitSide(h: number, m: number): number {
    const h1 = nextCorner(h);
    const b = this.corners[h1]!;
    const c = this.corners[previousCorner(h)]!;
    const e = this.#newTriangle(m, b, c);
    this.corners[h1] = m;
    this.#link(e + 1, this.twin[h1]!);
    this.#link(h1, e + 2);
    if (this.leaving[b] === h1) this.leaving[b] = e + 1;
    return e;
  }

  /** Whether the edge of `h` can be turned without folding two triangles into one. */
  canFlip(h: number): boolean {
    const g = this.twin[h]!;
    if (g < 0) return false;
    const c = this.corners[previousCorner(h)]!;
    const d = this.corners[previousCorner(g)]!;
    return c !== d && !this.joined(c, d);
  }

  /** Turns the edge of `h` to join the two corners opposite to it; call {@link canFlip} first. `h` then runs d→c. */
  flip(h: number): void {
    const { corners, twin, leaving } = this;
    const g = twin[h]!;
    const [h1, h2, g1, g2] = [nextCorner(h), previousCorner(h), nextCorner(g), previousCorner(g)];
    const [a, b, c, d] = [corners[h]!, corners[g]!, corners[h2]!, corners[g2]!];
    const [bc, ca, ad, db] = [twin[h1]!, twin[h2]!, twin[g1]!, twin[g2]!];
    corners[h] = d;
    corners[h1] = c;
    corners[h2] = a;
    corners[g] = c;
    corners[g1] = d;
    corners[g2] = b;
    this.#link(h1, ca);
    this.#link(h2, ad);
    this.#link(g1, db);
    this.#link(g2, bc);
    if (leaving[a] === h || leaving[a] === g1) leaving[a] = h2;
    if (leaving[b] === g || leaving[b] === h1) leaving[b] = g2;
    if (leaving[c] === h2) leaving[c] = h1;
    if (leaving[d] === g2) leaving[d] = g1;
  }

  /** Whether drawing the start of `h` on to its end keeps the surface a surface (link condition). */
  canCollapse(h: number): boolean {
    const { corners, twin } = this;
    const g = twin[h]!;
    const a = corners[h]!;
    const b = corners[nextCorner(h)]!;
    if (g >= 0 && this.isOpen(a) && this.isOpen(b)) return false;
    if (twin[nextCorner(h)] === -1 && twin[previousCorner(h)] === -1) return false;
    if (g >= 0 && twin[nextCorner(g)] === -1 && twin[previousCorner(g)] === -1) return false;
    const ringA: number[] = [];
    const n = this.ringInto(ringA, a);
    const mark = this.#marks();
    const stamp = ++this.#stamp;
    for (let i = 0; i < n; i++) mark[ringA[i]!] = stamp;
    const ringB: number[] = [];
    const m = this.ringInto(ringB, b);
    let common = 0;
    for (let i = 0; i < m; i++) if (mark[ringB[i]!] === stamp) common++;
    return common === (g >= 0 ? 2 : 1) && !(g >= 0 && n === 3 && m === 3);
  }

  /** Draws the start of half-edge `h` on to its end, which keeps its place; call {@link canCollapse} first. */
  collapse(h: number): void {
    const { corners, twin } = this;
    const g = twin[h]!;
    const a = corners[h]!;
    const b = corners[nextCorner(h)]!;
    const start = this.leaving[a]!;
    for (let e = start; ; ) {
      corners[e] = b;
      e = twin[previousCorner(e)]!;
      if (e === start || e < 0) break;
    }
    const handle = this.#closeSide(h);
    if (g >= 0) this.#closeSide(g);
    this.leaving[a] = -1;
    this.#settle(b, handle);
  }

  /** Joins the two outer edges of h's triangle and kills it; a living half-edge that leaves b. */
  #closeSide(h: number): number {
    const { corners, twin } = this;
    const [h1, h2] = [nextCorner(h), previousCorner(h)];
    const [x1, x2] = [twin[h1]!, twin[h2]!];
    const c = corners[h2]!;
    if (x1 >= 0) twin[x1] = x2;
    if (x2 >= 0) twin[x2] = x1;
    corners[h] = corners[h1] = corners[h2] = -1;
    this.#settle(c, x1 >= 0 ? x1 : nextCorner(x2)); // x1 runs c→b, x2 runs b→c
    return x2 >= 0 ? x2 : nextCorner(x1);
  }

  /** Notes a half-edge that leaves `v`, at an open vertex the first of its fan. */
  #settle(v: number, h: number): void {
    let e = h;
    while (this.twin[e]! >= 0) {
      e = nextCorner(this.twin[e]!);
      if (e === h) break;
    }
    this.leaving[v] = e;
  }

  #link(h: number, g: number): void {
    this.twin[h] = g;
    if (g >= 0) this.twin[g] = h;
  }

  #newVertex(x: number, y: number, z: number): number {
    if (this.vertices * 3 + 3 > this.positions.length) {
      const wider = new Float64Array(this.positions.length * 2 + 30);
      wider.set(this.positions);
      this.positions = wider;
      const leaving = new Int32Array(wider.length / 3).fill(-1);
      leaving.set(this.leaving.subarray(0, this.vertices));
      this.leaving = leaving;
    }
    const v = this.vertices++;
    this.positions[3 * v] = x;
    this.positions[3 * v + 1] = y;
    this.positions[3 * v + 2] = z;
    return v;
  }

  #newTriangle(a: number, b: number, c: number): number {
    const e = this.triangles * 3;
    if (e + 3 > this.corners.length) {
      const corners = new Int32Array(this.corners.length * 2 + 30).fill(-1);
      const twin = new Int32Array(corners.length).fill(-1);
      corners.set(this.corners);
      twin.set(this.twin);
      [this.corners, this.twin] = [corners, twin];
    }
    this.triangles++;
    this.corners[e] = a;
    this.corners[e + 1] = b;
    this.corners[e + 2] = c;
    return e;
  }

  #marks(): Int32Array {
    if (this.#mark.length < this.vertices) this.#mark = new Int32Array(this.vertices * 2);
    return this.#mark;
  }

  /** What is alive, as a plain mesh; `from[v]` is the number here of vertex v there. */
  taken(): { mesh: Mesh; from: Uint32Array } {
    const number = new Int32Array(this.vertices).fill(-1);
    const from = new Uint32Array(this.vertices);
    let n = 0;
    for (let v = 0; v < this.vertices; v++) if (this.leaving[v]! >= 0) [number[v], from[n++]] = [n, v];
    const positions = new Float64Array(n * 3);
    for (let i = 0; i < n; i++) for (let k = 0; k < 3; k++) positions[3 * i + k] = this.positions[3 * from[i]! + k]!;
    const triangles = new Uint32Array(this.triangles * 3);
    let m = 0;
    for (let h = 0; h < this.triangles * 3; h += 3) {
      if (this.corners[h]! < 0) continue;
      for (let k = 0; k < 3; k++) triangles[m++] = number[this.corners[h + k]!]!;
    }
    return { mesh: { positions, triangles: triangles.slice(0, m) }, from: from.slice(0, n) };
  }
}
