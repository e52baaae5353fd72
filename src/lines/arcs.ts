import { must } from "#base/bug.ts";
import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import { Sectioner, type Section } from "#mesh/section.ts";
import { curveLength, nearestOnSegment, pointOn } from "#last/surface-curve.ts";

/**
 * A vertical half plane in which a tape is laid up from the feather line: through the vertical line at (axisX, 0), in the
 * direction (dirX, dirY). Along the flanks the planes are square to the last's axis; round heel and toe they fan out.
 */
export interface Station {
  readonly axisX: number;
  readonly dirX: number;
  readonly dirY: number;
}

/** The tape's way from the feather line up; `reachesAxis` when it ends over the axis. */
export interface Arc extends SurfaceCurve {
  readonly axisX: number;
  readonly reachesAxis: boolean;
}

/** So many tapes are remembered; more than a long drag lays. */
const remembered = 2000;

/** Lays tapes on one last. What was laid is remembered: while a line is dragged the same places are asked for again and again. */
export class Arcs {
  readonly #sectioner: Sectioner;
  readonly #laid = new Map<string, Arc>();
  /** Centres of the heel and toe fans on the axis, as x. */
  readonly heelX: number;
  readonly toeX: number;

  constructor(last: Last) {
    this.#sectioner = new Sectioner(last.mesh);
    const length = last.landmarks.toePoint[0] - last.landmarks.seatPoint[0];
    // About the middles of the heel's and the toe's rounding in plan.
    this.heelX = last.landmarks.seatPoint[0] + 0.11 * length;
    this.toeX = last.landmarks.seatPoint[0] + 0.88 * length;
  }

  /** The station whose plane passes through a point of the feather line. */
  stationOf(foot: Point3): Station {
    const [x, y] = foot;
    const axisX = x < this.heelX ? this.heelX : x > this.toeX ? this.toeX : x;
    const dx = x - axisX;
    const size = Math.sqrt(dx * dx + y * y);
    must(size > 0, "a feather point on the axis of its own fan");
    return { axisX, dirX: dx / size, dirY: y / size };
  }

  /** The arc up from a feather point, at most `maxLength` long. */
  from(foot: Point3, maxLength: number): Arc {
    const key = `${foot.join(" ")} ${maxLength}`;
    const known = this.#laid.get(key);
    if (known) return known;
    const arc = this.#lay(foot, maxLength);
    if (this.#laid.size >= remembered) this.#laid.clear();
    this.#laid.set(key, arc);
    return arc;
  }

  #lay(foot: Point3, maxLength: number): Arc {
    const station = this.stationOf(foot);
    const origin: Point3 = [station.axisX, 0, 0];
    const sections = this.#sectioner.cut(origin, [-station.dirY, station.dirX, 0]);
    const start = nearest(sections, foot);
    const up = walk(start, foot, station, maxLength, 1);
    const down = walk(start, foot, station, maxLength, -1);
    return rise(up) >= rise(down) ? up : down;
  }
}

interface Start {
  readonly section: Section;
  /** The segment from point `segment` to the next. */
  readonly segment: number;
}

function nearest(sections: readonly Section[], foot: Point3): Start {
  let best: Start | undefined;
  let least = Infinity;
  for (const section of sections) {
    const n = section.points.length / 3;
    for (let i = 0; i < (section.closed ? n : n - 1); i++) {
      const { square } = nearestOnSegment(section.points, i, (i + 1) % n, foot);
      if (square < least) {
        least = square;
        best = { section, segment: i };
      }
    }
  }
  must(best, "no section through a feather point");
  return best;
}

/** Follows the section from the foot until the axis, the end of the section, or the greatest length. */
function walk({ section, segment }: Start, foot: Point3, station: Station, maxLength: number, step: 1 | -1): Arc {
  const p = section.points;
  const n = p.length / 3;
  const out: number[] = [...foot];
  const length: number[] = [0];
  const reach = (x: number, y: number) => (x - station.axisX) * station.dirX + y * station.dirY;
  let [x, y, z] = foot;
  let i = step === 1 ? segment + 1 : segment;
  for (let count = 0; count < n; count++, i += step) {
    if (section.closed) i = (i + n) % n;
    else if (i < 0 || i >= n) break;
    let nx = p[3 * i]!, ny = p[3 * i + 1]!, nz = p[3 * i + 2]!;
    const before = reach(x, y), after = reach(nx, ny);
    const ends = after <= 0;
    if (ends) {
      const t = before > after ? before / (before - after) : 0;
      nx = x + t * (nx - x);
      ny = y + t * (ny - y);
      nz = z + t * (nz - z);
    }
    let d = Math.sqrt((nx - x) ** 2 + (ny - y) ** 2 + (nz - z) ** 2);
    const sofar = length[length.length - 1]!;
    const tooFar = sofar + d > maxLength;
    if (tooFar) {
      const t = (maxLength - sofar) / d;
      nx = x + t * (nx - x);
      ny = y + t * (ny - y);
      nz = z + t * (nz - z);
      d = maxLength - sofar;
    }
    if (d > 1e-9) {
      out.push(nx, ny, nz);
      length.push(sofar + d);
    }
    if (tooFar || ends) return { points: Float64Array.from(out), arc: Float64Array.from(length), reachesAxis: ends && !tooFar, axisX: station.axisX };
    x = nx;
    y = ny;
    z = nz;
  }
  return { points: Float64Array.from(out), arc: Float64Array.from(length), reachesAxis: false, axisX: station.axisX };
}

/** Height of the arc 15 mm along above its foot: the bottom stays low, the wall rises. */
function rise(arc: Arc): number {
  return pointOn(arc, Math.min(15, curveLength(arc)))[2] - arc.points[2]!;
}
