import { joined, nearestOn, partBetween, reversed } from "#plane/along.ts";
import type { Half } from "#lines/feather.ts";
import type { Polyline } from "#plane/outline.ts";
import { edgeLength, edgeOf, edgePoint } from "#pieces/net-upper.ts";
import type { NetEdge, NetPanel, NetPlace } from "#pieces/panel.ts";
import type { GroundName, Xy } from "#pieces/piece.ts";

// Panels cut off a whole flat upper along straight lines, and put together again at the back: for what is asked of pieces it does not
// matter that no last lies under them.

interface Parted {
  readonly vamp: NetPanel;
  readonly inner: NetPanel;
  readonly outer: NetPanel;
}

/** Where the seam of one half runs: from the topline, so far behind the throat, to the feather line, so far behind the joint. */
interface Way {
  readonly topline: number;
  readonly feather: number;
}

function wayOf(whole: NetPanel, half: Half): Way {
  const at = (name: NetPlace["name"], of?: Half): number => whole.places.find((p) => p.name === name && p.half === of)!.s;
  const sign = half === "medial" ? 1 : -1;
  return { topline: at("throat") - sign * 45, feather: at("joint", half) + sign * 22 };
}

/** Vamp and two quarters in the flat coordinates of the whole. */
export function quartersOf(whole: NetPanel): Parted {
  const [feather, backMedial, topline, backLateral] = whole.edges as readonly [NetEdge, NetEdge, NetEdge, NetEdge];
  const ways = { medial: wayOf(whole, "medial"), lateral: wayOf(whole, "lateral") };
  const part = (edge: NetEdge, from: number, to: number): Polyline => partBetween(edge.line, edge.arc, from, to);
  const seam = (half: Half): Polyline => straight(edgePoint(feather, ways[half].feather), edgePoint(topline, ways[half].topline));
  const [end, top] = [edgeLength(feather), edgeLength(topline)];
  const side = (half: Half, up: boolean): NetEdge => ({ ...edgeOf(up ? seam(half) : reversed(seam(half))), role: "side", half, seam: `${half} side` });
  const made = (line: Polyline, role: NetEdge["role"], half?: Half): NetEdge => ({ ...edgeOf(line), role, ...(half && { half }) });
  return {
    vamp: panelOf("vamp", whole, [
      made(part(feather, ways.lateral.feather, ways.medial.feather), "feather"),
      side("medial", true),
      made(part(topline, ways.medial.topline, ways.lateral.topline), "topline"),
      side("lateral", false),
    ], whole.centre),
    inner: panelOf("inner quarter", whole, [made(part(feather, ways.medial.feather, end), "feather", "medial"), backMedial, made(part(topline, 0, ways.medial.topline), "topline", "medial"), side("medial", false)]),
    outer: panelOf("outer quarter", whole, [made(part(feather, 0, ways.lateral.feather), "feather", "lateral"), side("lateral", true), made(part(topline, ways.lateral.topline, top), "topline", "lateral"), backLateral]),
  };
}

/** One panel open at the inner waist: the inner quarter turned to the outer half's back and joined there. */
export function openedAtWaist(whole: NetPanel): NetPanel {
  const { vamp, inner, outer } = quartersOf(whole);
  const [from, to] = [inner.edges[1]!, outer.edges[3]!];
  const turn = bringing([edgePoint(from, 0), edgePoint(from, edgeLength(from))], [edgePoint(to, edgeLength(to)), edgePoint(to, 0)]);
  const moved = (edge: NetEdge): Polyline => turn(edge.line);
  const seam = { role: "inner waist", half: "medial", seam: "waist" } as const;
  const edges: readonly NetEdge[] = [
    { ...edgeOf(joined([moved(inner.edges[0]!), outer.edges[0]!.line, vamp.edges[0]!.line])), role: "feather" },
    { ...edgeOf(vamp.edges[1]!.line), ...seam },
    { ...edgeOf(joined([vamp.edges[2]!.line, outer.edges[2]!.line, moved(inner.edges[2]!)])), role: "topline" },
    { ...edgeOf(moved(inner.edges[3]!)), ...seam },
  ];
  const points: readonly (readonly [NetPlace, Xy])[] = [
    ...inner.places.map((p): [NetPlace, Xy] => [p, firstOf(turn({ xy: Float64Array.of(...edgePoint(inner.edges[p.edge]!, p.s)) }))]),
    ...[vamp, outer].flatMap((panel) => panel.places.map((p): [NetPlace, Xy] => [p, edgePoint(panel.edges[p.edge]!, p.s)])),
  ];
  const onFeather = new Set(["seat", "breast", "waist", "joint", "toe"]);
  const places = points.map(([{ name, half }, [x, y]]): NetPlace => {
    const edge = onFeather.has(name) ? 0 : 2;
    return { name, ...(half && { half }), edge, s: nearestOn(edges[edge]!.line, edges[edge]!.arc, x, y).s };
  });
  return { name: "whole", edges, places, ...(whole.centre && { centre: whole.centre }) };
}

const firstOf = ({ xy }: Polyline): Xy => [xy[0]!, xy[1]!];

/** A straight line of points 2 mm apart. */
function straight(a: Xy, b: Xy): Polyline {
  const n = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 2);
  return { xy: Float64Array.from(Array.from({ length: n + 1 }, (_, i) => [a[0] + ((b[0] - a[0]) * i) / n, a[1] + ((b[1] - a[1]) * i) / n]).flat()) };
}

/** Turns and moves so that one pair of points comes to lie on another equally far apart. */
function bringing([a, b]: readonly [Xy, Xy], [c, d]: readonly [Xy, Xy]): (line: Polyline) => Polyline {
  const angle = Math.atan2(d[1] - c[1], d[0] - c[0]) - Math.atan2(b[1] - a[1], b[0] - a[0]);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ({ xy }) => {
    const out = new Float64Array(xy.length);
    for (let i = 0; i < xy.length; i += 2) {
      const [x, y] = [xy[i]! - a[0], xy[i + 1]! - a[1]];
      out.set([c[0] + cos * x - sin * y, c[1] + sin * x + cos * y], i);
    }
    return { xy: out };
  };
}

/** The whole's places that lie on a panel's feather line and topline. */
function panelOf(name: GroundName, whole: NetPanel, edges: readonly NetEdge[], centre?: NetPanel["centre"]): NetPanel {
  const places = whole.places.flatMap((place): readonly NetPlace[] => {
    const [x, y] = edgePoint(whole.edges[place.edge]!, place.s);
    const edge = edges.findIndex((e) => e.role === whole.edges[place.edge]!.role);
    const foot = nearestOn(edges[edge]!.line, edges[edge]!.arc, x, y);
    return foot.distance < 1e-6 ? [{ ...place, edge, s: foot.s }] : [];
  });
  return { name, edges, places, ...(centre && { centre }) };
}
