/** Takes the mean shift and the mean turn out of a step: what remains changes the shape. Rotation is linearised about uv. */
export function removeRigidInto(step: Float64Array, uv: Float64Array): void {
  const count = uv.length / 2;
  let [su, sv, cu, cv] = [0, 0, 0, 0];
  for (let i = 0; i < uv.length; i += 2) {
    su += step[i]!;
    sv += step[i + 1]!;
    cu += uv[i]!;
    cv += uv[i + 1]!;
  }
  su /= count;
  sv /= count;
  cu /= count;
  cv /= count;
  let turn = 0;
  let inertia = 0;
  for (let i = 0; i < uv.length; i += 2) {
    const x = uv[i]! - cu;
    const y = uv[i + 1]! - cv;
    turn += x * step[i + 1]! - y * step[i]!;
    inertia += x * x + y * y;
  }
  turn /= inertia;
  for (let i = 0; i < uv.length; i += 2) {
    step[i]! -= su - turn * (uv[i + 1]! - cv);
    step[i + 1]! -= sv + turn * (uv[i]! - cu);
  }
}

/** Largest distance any point goes from `before` to `after` when the best fitting rigid motion between them is left out, mm. */
export function largestMove(before: Float64Array, after: Float64Array): number {
  const count = before.length / 2;
  let [bu, bv, au, av] = [0, 0, 0, 0];
  for (let i = 0; i < before.length; i += 2) {
    bu += before[i]!;
    bv += before[i + 1]!;
    au += after[i]!;
    av += after[i + 1]!;
  }
  bu /= count;
  bv /= count;
  au /= count;
  av /= count;
  let dot = 0;
  let cross = 0;
  for (let i = 0; i < before.length; i += 2) {
    const [x, y, p, q] = [before[i]! - bu, before[i + 1]! - bv, after[i]! - au, after[i + 1]! - av];
    dot += x * p + y * q;
    cross += x * q - y * p;
  }
  const length = Math.sqrt(dot * dot + cross * cross);
  const [c, s] = length > 0 ? [dot / length, cross / length] : [1, 0];
  let most = 0;
  for (let i = 0; i < before.length; i += 2) {
    const [x, y] = [before[i]! - bu, before[i + 1]! - bv];
    const [p, q] = [after[i]! - au - (c * x - s * y), after[i + 1]! - av - (s * x + c * y)];
    most = Math.max(most, p * p + q * q);
  }
  return Math.sqrt(most);
}

/** Moves uv so that vertex a lies at the origin and vertex b on the positive u axis. */
export function placeInto(uv: Float64Array, a: number, b: number): void {
  const [ou, ov] = [uv[2 * a]!, uv[2 * a + 1]!];
  const [du, dv] = [uv[2 * b]! - ou, uv[2 * b + 1]! - ov];
  const length = Math.sqrt(du * du + dv * dv);
  if (!(length > 0)) return;
  const [c, s] = [du / length, dv / length];
  for (let i = 0; i < uv.length; i += 2) {
    const [x, y] = [uv[i]! - ou, uv[i + 1]! - ov];
    uv[i] = c * x + s * y;
    uv[i + 1] = c * y - s * x;
  }
  uv[2 * b + 1] = 0;
}
