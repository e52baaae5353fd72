import { must } from "#base/bug.ts";
import type { BlockPattern } from "#solve/block-pattern.ts";
import { distanceInSpace } from "./distance.ts";
import type { LengthTerms } from "./length-terms.ts";

/** Terms that say what must stay true besides the least stretch everywhere. */
export interface FlattenTerms {
  /**
   * Edges a-b that should keep their length, or come to `scale` times it (1 where none is given): adds
   * Σ weight · (ℓ_flat / ℓ_space − scale)².
   */
  readonly edges?: { readonly a: Uint32Array; readonly b: Uint32Array; readonly weight: Float64Array; readonly scale?: Float64Array };
  /** Pairs of vertices to be brought to a distance: adds Σ weight · (distance − targetMm)² / area. */
  readonly ties?: readonly { readonly a: number; readonly b: number; readonly targetMm: number; readonly weight: number }[];
}

/** What a run may have other than at construction, in the same order; pattern, order of elimination and memory stay. */
export interface ChangedTerms {
  readonly edges?: { readonly weight?: Float64Array; readonly scale?: Float64Array };
  readonly ties?: readonly { readonly targetMm: number; readonly weight: number }[];
}

/** Makes room in the pattern for what the terms join. */
export function joinInto(pattern: BlockPattern, { edges, ties = [] }: FlattenTerms): void {
  const join = (a: number, b: number): void => {
    must(a !== b && a < pattern.size && b < pattern.size, "an edge or tie joins two different vertices");
    pattern.slot(a, b);
  };
  for (let k = 0; k < (edges?.a.length ?? 0); k++) join(edges!.a[k]!, edges!.b[k]!);
  for (const { a, b } of ties) join(a, b);
}

/** The terms as distances in the plane: edges first, then ties. `area` in mm². */
export function lengthTermsOf({ edges, ties = [] }: FlattenTerms, changed: ChangedTerms, positions: Float64Array, area: number): LengthTerms {
  const count = edges?.a.length ?? 0;
  const all = count + ties.length;
  const weight = changed.edges?.weight ?? edges?.weight;
  const scale = changed.edges?.scale ?? edges?.scale;
  must((weight?.length ?? 0) === count && (scale?.length ?? count) === count, "a weight and a scale for every edge");
  must((changed.ties?.length ?? ties.length) === ties.length, "as many ties as at construction");
  const terms = { a: new Uint32Array(all), b: new Uint32Array(all), target: new Float64Array(all), stiffness: new Float64Array(all) };
  for (let k = 0; k < count; k++) {
    const [a, b] = [edges!.a[k]!, edges!.b[k]!];
    const length = distanceInSpace(positions, a, b);
    const times = scale ? scale[k]! : 1;
    must(length > 0, "an edge that must keep its length has none");
    must(times > 0 && times < Infinity, "an edge is scaled by a positive number");
    terms.a[k] = a;
    terms.b[k] = b;
    terms.target[k] = times * length;
    terms.stiffness[k] = weight![k]! / (length * length);
  }
  ties.forEach((tie, k) => {
    const now = changed.ties?.[k] ?? tie;
    terms.a[count + k] = tie.a;
    terms.b[count + k] = tie.b;
    terms.target[count + k] = now.targetMm;
    terms.stiffness[count + k] = now.weight / area;
  });
  return terms;
}
