import type { Rule } from "#lines/lines.ts";
import type { SeamLineSettings } from "#shell/seam-line.ts";
import { mm, practice } from "./mm.ts";

/** Where the seams of a cut in panels run; mm. */
export interface SeamSettings extends SeamLineSettings {}

export const seamRules: Readonly<Record<keyof SeamSettings, Rule>> = {
  innerSeamBeforeBreastMm: mm("Inner seam before the heel breast", 43, 37, 49, 0.5,
    "Clear of the stiffener and of the heel, where the waist is hollow and the foot does not rub: 40 to 45 % of the length from the heel. Farther forward it comes to the joint.", `40 to 45 % of the length, taken at EU 37: ${practice}; that a whole cut is opened on the inside is told by a method for single cuts`),
  sideSeamBehindThroatMm: mm("Side seams behind the throat", 32, 25, 38, 0.5,
    "Measured straight back. Nearer to the throat and the seam tears, since all the pull of the foot comes on it; farther back and the quarters get too short to hold.", "an early handbook for cordwainers, 1813: 1 to 1½ inches"),
  sideSeamSlantMm: mm("Side seams slant back by", 12, 0, 20, 1,
    "So far behind its upper end each side seam meets the feather line. Slanted back it keeps off the joint and lets the vamp's wing cover it.", practice),
  seamClearOfJointMm: mm("Seams clear of the joint", 10, 6, 20, 0.5,
    "The shoe bends and rubs at the joint: a seam there presses and breaks open.", practice),
};

/** Those of all settings that say where seams run. */
export const seamSettingsOf = (settings: SeamSettings): SeamSettings => Object.fromEntries(Object.keys(seamRules).map((key) => [key, settings[key as keyof SeamSettings]])) as unknown as SeamSettings;
