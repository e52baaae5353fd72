// Which filter stops what, by European standards; as looked up in November 2026.
import { solventIds, solvents, type SolventId } from "./solvents.ts";

/** Filters for organic vapour, both with a brown ring. */
export type VapourFilter = "A" | "AX";

/** Boiling point above which a solvent is for type A; at or below it, for AX. EN 14387. */
export const filterSplitC = 65;

/** Type for a vapour that boils at `boilsC` °C, after EN 14387:2021 (as told by two sellers of filters). */
export function filterFor(boilsC: number): VapourFilter {
  return boilsC > filterSplitC ? "A" : "AX";
}

/** Classes of type A: up to how many ppm of vapour the standard tests them. What you may work in is another matter. */
export const filterClasses: Readonly<Record<1 | 2 | 3, number>> = { 1: 1000, 2: 5000, 3: 10_000 };

/** Half masks that filter particles, EN 149: least share of a test aerosol that they hold back. */
export const dustMasks: Readonly<Record<"FFP1" | "FFP2" | "FFP3", number>> = { FFP1: 0.8, FFP2: 0.94, FFP3: 0.99 };

export const filterSource = "EN 14387:2021 and EN 149 as told by sellers of masks and filters, looked up in November 2026; that EN 149 says nothing of vapour is from memory";

/** The solvents that one type is for. */
export function solventsFor(type: VapourFilter): readonly SolventId[] {
  return solventIds.filter((id) => filterFor(solvents[id].boilsC) === type);
}

export const vapourFilterWords = `Then a half mask that seals on your face, with organic-vapour filters (brown ring, EN 14387): type A for solvents that boil above ${filterSplitC} °C (${solventsFor("A").join(", ")}), type AX for those that boil at ${filterSplitC} °C or below (${solventsFor("AX").join(", ")}). Class 1 is tested up to ${filterClasses[1]} ppm, class 2 up to ${filterClasses[2]} ppm. Change filters when their maker says, at the latest at the first smell.`;
export const dustMaskWords = "Never a dust mask against vapour: EN 149 (FFP1, FFP2, FFP3) is a standard for particles, and vapour goes straight through.";
