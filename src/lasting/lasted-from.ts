import { askedEnds, type EndsGauge } from "./ends.ts";
import { draftEnds } from "./draft-ends.ts";
import type { Hands } from "./hands.ts";
import { judgeLasted } from "./judge-lasted.ts";
import type { Lasted, Trouble } from "./lasted.ts";
import type { PullInput } from "./pull-input.ts";
import type { DraftPlace } from "./pulls.ts";
import { looseFlanks, overStretched, pleatsAt, type AtRest } from "./troubles.ts";

/** What came of it, where the hands have left it. */
export function lastedFrom(input: PullInput, { gauge, drafts: taken, hands }: { readonly gauge: EndsGauge; readonly drafts: readonly DraftPlace[]; readonly hands: Hands }): Lasted {
  const { cut, last, lines, fabric, settings, margins } = input;
  const { pulled, reached, frames } = hands, { sheet, ring, sheetOf } = pulled;
  const { most, least } = sheet.strains(), positions = sheet.positions();
  const standOff = sheet.heights().map((h) => Math.max(0, h));
  const rest: AtRest = { cut, sheetOf, positions, standOff, most, least };
  const onShell = pulled.shellPositions();
  const { ends, asideMm } = gauge.measure(onShell);
  const drafts = draftEnds(taken, { ring, over: cut.over, onLast: cut.onLast, positions: onShell, margins, heldN: pulled.heldN() });
  const loose = looseFlanks(rest), stretched = overStretched(rest, fabric), pleats = pleatsAt(rest, ring, fabric.gatherLimit);
  const asked = askedEnds(lines);
  return {
    triangles: cut.triangles,
    positions,
    source: cut.source,
    most,
    least,
    ...waysOf(cut.triangles, cut.flat, positions, settings.upperTurnDeg),
    standOff,
    drafts,
    ends,
    asked,
    troubles: [...loose, ...pleats, ...stretched].map(({ kind, at, by, spans }: Trouble) => ({ kind, at, by, ...(spans && { spans }) })),
    frames,
    settled: reached.settled,
    steps: reached.steps,
    moveMm: reached.moveMm,
    residualN: reached.residualN,
    findings: judgeLasted({ last, fabric, ends, asked, asideMm, drafts, loose, pleats, stretched, reached, tornAt: (v) => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!] }),
  };
}

/** Stretch of each triangle along the upper's direction of least stretch and across it: how long a unit of the flat that way has become. */
function waysOf(triangles: Uint32Array, flat: Float64Array, x: Float64Array, turnDeg: number): Pick<Lasted, "along" | "across"> {
  const cos = Math.cos((turnDeg * Math.PI) / 180), sin = Math.sin((turnDeg * Math.PI) / 180);
  const along = new Float64Array(triangles.length / 3), across = along.slice();
  for (let t = 0; t < along.length; t++) {
    const [a, b, c] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
    const ux = flat[2 * b]! - flat[2 * a]!, uy = flat[2 * b + 1]! - flat[2 * a + 1]!, vx = flat[2 * c]! - flat[2 * a]!, vy = flat[2 * c + 1]! - flat[2 * a + 1]!;
    const det = ux * vy - uy * vx;
    const length = (dx: number, dy: number): number => {
      const p = (dx * vy - dy * vx) / det, q = (ux * dy - uy * dx) / det;
      let square = 0;
      for (let d = 0; d < 3; d++) square += (p * (x[3 * b + d]! - x[3 * a + d]!) + q * (x[3 * c + d]! - x[3 * a + d]!)) ** 2;
      return Math.sqrt(square);
    };
    along[t] = length(cos, sin);
    across[t] = length(-sin, cos);
  }
  return { along, across };
}
