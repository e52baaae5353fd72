import { fitLinear } from "#solve/least-squares.ts";
import { cardHalves, cardSheet, markerMm, squareMm, type CardPaper } from "./card.ts";
import { onPlane, type Fit } from "./fit-placing.ts";
import { lightOfValue } from "./grey.ts";
import type { Picture } from "./picture.ts";
import { toPicture } from "./placing.ts";

/** Terms of a smooth field over the card: 1, x, y, x², xy, y², with x and y in units of 200 mm from the card's middle. */
export type Field = Float64Array;

function termsAt(x: number, y: number): readonly [number, number, number, number, number, number] {
  const u = (x - 180) / 200, v = (y - 125) / 200;
  return [1, u, v, u * u, u * v, v * v];
}

export function fieldAt(f: Field, x: number, y: number): number {
  const u = (x - 180) / 200, v = (y - 125) / 200;
  return f[0]! + u * (f[1]! + u * f[3]! + v * f[4]!) + v * (f[2]! + v * f[5]!);
}

/** Fits a field to values at places, in rounds that leave out what lies far from the rest. */
function fitField(xy: ArrayLike<number>, values: ArrayLike<number>): Field {
  const rows = new Float64Array(6 * values.length);
  for (let i = 0; i < values.length; i++) rows.set(termsAt(xy[2 * i]!, xy[2 * i + 1]!), 6 * i);
  let weights = new Float64Array(values.length).fill(1);
  let field = fitLinear(rows, 6, values, weights);
  for (let round = 0; round < 3; round++) {
    const off = Float64Array.from(values, (v, i) => Math.abs(v - fieldAt(field, xy[2 * i]!, xy[2 * i + 1]!)));
    const spread = 1.4826 * off.slice().sort()[off.length >> 1]! + 1e-6;
    weights = off.map((d) => (d < 3 * spread ? 1 : 0));
    field = fitLinear(rows, 6, values, weights);
  }
  return field;
}

/** The light that white paper sends back, for red, green and blue, over the whole card: what is divided out of the picture. */
export function whiteOfCard(picture: Picture, paper: CardPaper, fit: Fit): readonly [Field, Field, Field] {
  const of = lightOfValue();
  const xy: number[] = [];
  const values: [number[], number[], number[]] = [[], [], []];
  const edge = (squareMm - markerMm) / 4;
  for (const half of cardHalves) {
    for (const { xMm, yMm } of cardSheet(paper, half).markers) {
      for (const [dx, dy] of [[squareMm / 2, edge], [squareMm / 2, squareMm - edge], [edge, squareMm / 2], [squareMm - edge, squareMm / 2]] as const) {
        const spot = onPlane({ half, xMm: xMm + dx, yMm: yMm + dy }, fit.joint);
        const [px, py] = toPicture(fit.placing, ...spot).map(Math.round) as [number, number];
        if (px < 0 || py < 0 || px >= picture.width || py >= picture.height) continue;
        xy.push(...spot);
        for (const c of [0, 1, 2] as const) values[c].push(of[picture.rgba[4 * (py * picture.width + px) + c]!]!);
      }
    }
  }
  return [fitField(xy, values[0]), fitField(xy, values[1]), fitField(xy, values[2])];
}
