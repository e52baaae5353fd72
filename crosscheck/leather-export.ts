// Writes what two layers of leather answer to drawn strains, and flat radii of caps from the one-dimensional truth, for the outside check:
// `tsx crosscheck/leather-export.ts FOLDER` makes FOLDER/leather.json.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { rotated, sumOf } from "#leather/combined.ts";
import { gathering, pleatsOf } from "#leather/gathering.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import { stripForce } from "#leather/uniaxial.ts";
import { flatOfCap } from "../test/support/cap-bvp.ts";

// Invented leathers.
const upper = { along: 40, across: 18, bias: 20, poisson: 0.4, toe: 0.02, early: 0.15 };
const lining = { along: 22, across: 12, bias: 13, poisson: 0.5, toe: 0.035, early: 0.25 };
const turns = [0.3, -0.5] as const;
const limit = -0.04;
const plain = sumOf([rotated(new ToeLaw(upper), Math.cos(turns[0]), Math.sin(turns[0])), rotated(new ToeLaw(lining), Math.cos(turns[1]), Math.sin(turns[1]))]);
const gathers = gathering(plain, limit);

/** Strains on a lattice without chance: from pushed together by a quarter to stretched by a third. */
const strains = Array.from({ length: 60 }, (_, i) => [-0.25 + 0.6 * ((i * 0.618034) % 1), -0.25 + 0.6 * ((i * 0.414214) % 1), -0.25 + 0.5 * ((i * 0.732051) % 1)] as const);
const answers = strains.map(([e1, e2, g]) => {
  const [a, b] = [new Float64Array(9), new Float64Array(9)];
  plain.into(a, e1, e2, g);
  gathers.into(b, e1, e2, g);
  return { strain: [e1, e2, g], plain: [plain.energy(e1, e2, g), ...a.slice(0, 3)], gathered: [gathers.energy(e1, e2, g), ...b.slice(0, 3)], pleats: pleatsOf(gathers, e1, e2, g) };
});

const strips = [0, 20, 45, 70, 90].map((degrees) => {
  const angle = (degrees * Math.PI) / 180;
  const { forcePerMm, width } = stripForce(plain, Math.cos(angle), Math.sin(angle), 1.08);
  return { degrees, stretch: 1.08, forcePerMm, width };
});

const [R, alpha, pull, hole] = [40, 0.9, 1.2, 0.2];
const caps = (["first", "second"] as const).map((radial) => {
  const flat = flatOfCap({ law: new ToeLaw(upper), radial, R, alpha, pull, hole: { at: hole, pull: 0 } });
  return { radial, R, alpha, pull, hole, radius: flat.radius, inner: flat.at(hole).radius, hoop: flat.at(alpha).t2 };
});

writeFileSync(join(process.argv[2]!, "leather.json"), JSON.stringify({ upper, lining, turns, limit, answers, strips, caps }));
