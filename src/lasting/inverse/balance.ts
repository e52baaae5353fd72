/** What loads leave over that no shape of the sheet could answer: it is carried by the last, spread over the area. */
export interface Balance {
  /** Force along and across the flat sheet, N, and turn about its middle, N·mm. */
  readonly alongN: number;
  readonly acrossN: number;
  readonly turnNmm: number;
}

/** Takes shift and turn out of a gradient, spread over the area of each vertex. */
export function balanceInto(gradient: Float64Array, uv: Float64Array, areas: Float64Array): Balance {
  let whole = 0, cu = 0, cv = 0, fu = 0, fv = 0;
  for (let i = 0; i < areas.length; i++) {
    whole += areas[i]!;
    cu += areas[i]! * uv[2 * i]!;
    cv += areas[i]! * uv[2 * i + 1]!;
    fu += gradient[2 * i]!;
    fv += gradient[2 * i + 1]!;
  }
  cu /= whole;
  cv /= whole;
  let turn = 0, inertia = 0;
  for (let i = 0; i < areas.length; i++) {
    const x = uv[2 * i]! - cu, y = uv[2 * i + 1]! - cv;
    turn += x * gradient[2 * i + 1]! - y * gradient[2 * i]!;
    inertia += areas[i]! * (x * x + y * y);
  }
  for (let i = 0; i < areas.length; i++) {
    const x = uv[2 * i]! - cu, y = uv[2 * i + 1]! - cv;
    gradient[2 * i]! -= areas[i]! * (fu / whole - (turn / inertia) * y);
    gradient[2 * i + 1]! -= areas[i]! * (fv / whole + (turn / inertia) * x);
  }
  return { alongN: fu, acrossN: fv, turnNmm: turn };
}
