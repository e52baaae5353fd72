import { breastShare } from "#last/heel-breast.ts";
import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import { arcNearest, curveOf, nearestOnSegment, pointOn } from "#last/surface-curve.ts";
import { footAtX, halves, type Half } from "#lines/feather.ts";
import type { Lines } from "#lines/lines.ts";
import { nearestOn } from "#plane/along.ts";
import type { LaidPanel, PanelEdge } from "#shell/panel.ts";
import type { LaidPanels } from "#shell/panels.ts";
import type { Shell } from "#shell/shell.ts";
import { edgeLength, type Edge } from "./net-upper.ts";
import type { NetPlace, PlaceName } from "./panel.ts";

export const quarterNames = ["quarter 1/4", "quarter 1/2", "quarter 3/4"] as const satisfies readonly PlaceName[];

/** A place of the last on the feather line or topline of one half. */
interface PlaceOnLast {
  readonly name: PlaceName;
  readonly half: Half;
  readonly role: "feather" | "topline";
  readonly at: Point3;
}

/** A place carried to the edge, of all panels, that it lies nearest to on the last. */
interface Carried extends PlaceOnLast {
  readonly panel: number;
  readonly edge: number;
  readonly flat: readonly [number, number];
}

/** The named places of the last on the panels' edges. */
export class PanelPlaces {
  readonly #panels: readonly LaidPanel[];
  readonly #carried: readonly Carried[];
  readonly #sign: 1 | -1;

  constructor(last: Last, lines: Lines, { panels, opened }: LaidPanels, sign: 1 | -1) {
    this.#panels = panels;
    this.#sign = sign;
    this.#carried = placesOnLast(last, lines, opened.onLast).map((place) => ({ ...place, ...nearestEdge(panels, place, sign) }));
  }

  /** Places on the net edges of panel `p`, edge by edge and along each. */
  on(p: number, edges: readonly Edge[]): readonly NetPlace[] {
    const found: NetPlace[] = this.#carried.filter(({ panel }) => panel === p).map(({ name, half, edge, flat }) => ({ name, half, edge, s: this.#along(edges[edge]!, flat) }));
    return [...found, ...this.#corners(p, edges), ...this.#onAxis(p, edges)].sort((a, b) => a.edge - b.edge || a.s - b.s);
  }

  #along({ line, arc }: Edge, [x, y]: readonly [number, number]): number {
    return nearestOn(line, arc, x, y).s;
  }

  /** Ends of feather line and topline where a bank begins: seat and back point, or a seam's. */
  #corners(p: number, edges: readonly Edge[]): readonly NetPlace[] {
    const own = this.#panels[p]!.panel.edges, n = own.length;
    return own.flatMap(({ role }, k) => {
      if (role !== "feather" && role !== "topline") return [];
      const named = (bank: PanelEdge, s: number): NetPlace => ({ name: bank.role !== "back" ? "seam" : role === "feather" ? "seat" : "back", ...(bank.half && { half: bank.half }), edge: k, s });
      return [named(own[(k + n - 1) % n]!, 0), named(own[(k + 1) % n]!, edgeLength(edges[k]!))];
    });
  }

  /** Toe and throat, and where the back runs closed through the panel seat and back point. */
  #onAxis(p: number, edges: readonly Edge[]): readonly NetPlace[] {
    const { panel, uv } = this.#panels[p]!;
    const ends = (row: Uint32Array | undefined, first: PlaceName, last: PlaceName) => (row ? ([[first, row[0]!], [last, row[row.length - 1]!]] as const) : []);
    return [...ends(panel.centre, "toe", "throat"), ...ends(panel.back, "seat", "back")].map(([name, v]) => {
      const edge = panel.edges.findIndex(({ vertices }) => vertices.includes(v));
      return { name, edge, s: this.#along(edges[edge]!, [uv[2 * v]!, this.#sign * uv[2 * v + 1]!]) };
    });
  }
}

function placesOnLast(last: Last, lines: Lines, { mesh: { positions: p }, edges: e }: Shell): readonly PlaceOnLast[] {
  const curve = (ids: Uint32Array): SurfaceCurve => curveOf(Array.from(ids).flatMap((v) => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!]));
  return halves.flatMap((half) => {
    const medial = half === "medial";
    const feather = curve(medial ? e.featherMedial : e.featherLateral);
    const joint = medial ? last.landmarks.jointMedial : last.landmarks.jointLateral;
    const seatX = feather.points[0]!, toeX = feather.points[feather.points.length - 3]!;
    const breast = footAtX(feather, seatX + breastShare * (toeX - seatX))?.along ?? 0;
    const onFeather = (name: PlaceName, at: Point3): PlaceOnLast => ({ name, half, role: "feather", at });
    const onTopline = (name: PlaceName, at: Point3): PlaceOnLast => ({ name, half, role: "topline", at });
    return [
      onFeather("joint", joint),
      onFeather("waist", pointOn(feather, (arcNearest(feather, joint) + breast) / 2)),
      onFeather("breast", pointOn(feather, breast)),
      ...lines.quarterHeights[half].map(({ at }, k) => onTopline(quarterNames[k]!, at)),
      onTopline("lowest", medial ? lines.lowestMedial.at : lines.lowestLateral.at),
    ];
  });
}

/** The edge of the right kind and half that lies nearest on the last, and the place on the flat, as of a right one. */
function nearestEdge(panels: readonly LaidPanel[], { role, half, at }: PlaceOnLast, sign: 1 | -1): Pick<Carried, "panel" | "edge" | "flat"> {
  let least = Infinity;
  let best: Pick<Carried, "panel" | "edge" | "flat"> = { panel: 0, edge: 0, flat: [0, 0] };
  panels.forEach(({ panel: { edges, onLast }, uv }, panel) =>
    edges.forEach((own, edge) => {
      if (own.role !== role || (own.half !== undefined && own.half !== half)) return;
      for (let k = 0; k + 1 < own.vertices.length; k++) {
        const [v, w] = [own.vertices[k]!, own.vertices[k + 1]!];
        const { share, square } = nearestOnSegment(onLast.positions, v, w, at);
        if (square >= least) continue;
        least = square;
        best = { panel, edge, flat: [uv[2 * v]! + share * (uv[2 * w]! - uv[2 * v]!), sign * (uv[2 * v + 1]! + share * (uv[2 * w + 1]! - uv[2 * v + 1]!))] };
      }
    }),
  );
  return best;
}
