import type { PieceSettings } from "./settings.ts";
import { inOrder, widthAt, type Station } from "./zones.ts";
import type { FeatherWay, HalfWay } from "./edges/feather-way.ts";
import { edgeLength, type NetUpper } from "./net-upper.ts";

/** How far to either side of the toe point the toe's own margin runs out, mm. */
export const toeReachMm = 40;

/** The upper's lasting margin at a running length of the feather; blended between zones, docs/method/pieces.md. */
export function lastingMargin(net: NetUpper, settings: PieceSettings): (s: number) => number {
  const { places } = net;
  const medial = lastingStations(settings, settings.lastingInnerWaistMm, {
    joint: places.jointMedial - places.toe,
    waist: places.waistMedial - places.toe,
    breast: places.breastMedial - places.toe,
    seat: edgeLength(net.feather) - places.toe,
  });
  const lateral = lastingStations(settings, settings.lastingOuterWaistMm, {
    joint: places.toe - places.jointLateral,
    waist: places.toe - places.waistLateral,
    breast: places.toe - places.breastLateral,
    seat: places.toe,
  });
  return (s) => (s >= places.toe ? widthAt(medial, s - places.toe) : widthAt(lateral, places.toe - s));
}

function lastingStations(settings: PieceSettings, waistMm: number, half: HalfWay): readonly Station[] {
  return inOrder([
    { s: 0, mm: settings.lastingToeMm },
    { s: toeReachMm, mm: settings.lastingToeSidesMm },
    { s: (toeReachMm + half.joint) / 2, mm: settings.lastingForepartMm },
    { s: half.joint, mm: settings.lastingForepartMm },
    { s: half.waist, mm: waistMm },
    { s: half.breast, mm: settings.lastingHeelMm },
    { s: half.seat, mm: settings.lastingHeelMm },
  ]);
}

/** The same over all panels of an upper, so that both banks of a seam have one margin where they meet; by number of panel and edge. */
export function lastingMargins(way: FeatherWay, settings: PieceSettings): (panel: number, edge: number) => (s: number) => number {
  const stations = {
    medial: lastingStations(settings, settings.lastingInnerWaistMm, way.halves.medial),
    lateral: lastingStations(settings, settings.lastingOuterWaistMm, way.halves.lateral),
  };
  return (panel, edge) => (s) => {
    const { half, mm } = way.at(panel, edge, s);
    return widthAt(stations[half], mm);
  };
}

/** How far the lining's feather lies inside the upper's: all of it at the toe, nothing from the joint on. */
export function liningToeIn(net: NetUpper, settings: PieceSettings): (s: number) => number {
  const { places } = net;
  const toNothing = (joint: number): readonly Station[] => inOrder([{ s: 0, mm: settings.liningToeInMm }, { s: joint, mm: 0 }]);
  const medial = toNothing(places.jointMedial - places.toe);
  const lateral = toNothing(places.toe - places.jointLateral);
  return (s) => (s >= places.toe ? widthAt(medial, s - places.toe) : widthAt(lateral, places.toe - s));
}
