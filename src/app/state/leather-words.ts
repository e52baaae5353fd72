import type { UpperLayer } from "#leather/leather.ts";

export const layerWords: Readonly<Record<UpperLayer, string>> = { upper: "upper", lining: "lining" };
