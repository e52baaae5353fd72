import { lengthField, type Field } from "./measure-field.ts";
import type { MeasureKey } from "./spot.ts";

interface MeasureWords {
  readonly name: string;
  /** The range in which women's flat lasts of adult sizes lie; common practice, no source. Beyond it the last itself says so. */
  readonly field: Field;
  /** What comes of a wrong number; common practice, no source. */
  readonly wrong: string;
}

export const measureFields: Readonly<Record<MeasureKey, MeasureWords>> = {
  stickLengthMm: { name: "stick length", field: lengthField(210, 300, 1), wrong: "A stick held askew reads too much. Every place that is told as a share of the length moves with it." },
  jointGirthMm: { name: "joint girth", field: lengthField(190, 260, 1), wrong: "A slack tape reads 2 or 3 mm too much. Too large, the vamp creases and the foot slides forward; too small, it presses at the joints." },
  waistGirthMm: { name: "waist girth", field: lengthField(185, 260, 1), wrong: "Too large, the sides gape at the waist; too small, their edge cuts in." },
  instepGirthMm: { name: "instep girth", field: lengthField(200, 275, 1), wrong: "It lies above the topline of most pumps, but the rise of the cone behind the throat hangs on it." },
  heelGirthMm: { name: "heel girth", field: lengthField(270, 370, 1), wrong: "A heel measure taken too large is an old cause of a topline that hangs loose." },
  ballWidthMm: { name: "ball width", field: lengthField(65, 100, 0.5), wrong: "Taken over the walls instead of from feather edge to feather edge it is some millimetres too much, and insole and sole come out too broad." },
  seatWidthMm: { name: "seat width", field: lengthField(42, 70, 0.5), wrong: "Too wide, the shoe is slack at the heel; too narrow, the back stands away from the foot." },
  heelHeightMm: { name: "heel height", field: lengthField(5, 30, 0.5), wrong: "It belongs to toe spring: with the last stood on a block of another height, both are wrong." },
  toeSpringMm: { name: "toe spring", field: lengthField(3, 20, 0.5), wrong: "With too little the tip catches in walking, and a low heel needs the more of it; with too much the shoe rocks and the sides gape." },
};

/** The measure as the last itself calls it. */
export const nameOf = <K extends MeasureKey>(key: K): K extends `${infer N}Mm` ? N : never => key.replace(/Mm$/, "") as K extends `${infer N}Mm` ? N : never;
