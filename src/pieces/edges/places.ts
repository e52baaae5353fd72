import type { Half } from "#lines/feather.ts";
import { edgePoint } from "../net-upper.ts";
import type { NetEdge, NetPanel, NetPlace, PlaceName } from "../panel.ts";
import type { Xy } from "../piece.ts";

/** A named place of a panel, where it has it. */
export const placeOn = ({ places }: NetPanel, name: PlaceName, half?: Half): NetPlace | undefined => places.find((p) => p.name === name && p.half === half);

export const pointOf = ({ edges }: NetPanel, { edge, s }: Pick<NetPlace, "edge" | "s">): Xy => edgePoint(edges[edge]!, s);

/** Numbers of the panel's edges of one role. */
export const edgesOf = ({ edges }: NetPanel, ...roles: readonly NetEdge["role"][]): readonly number[] => edges.flatMap((e, k) => (roles.includes(e.role) ? [k] : []));
