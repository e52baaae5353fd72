// The drawings that show how strips are cut, marked and hung; the app and the guide show the very same. y runs downward.
import { hang } from "./strip-drawing-hang.ts";
import { Sketch, type StripSketch } from "./strip-sketch.ts";

/** How the three strips are cut, what is drawn on each, and how they hang. */
export const stripDrawing = (): readonly StripSketch[] => [cut(), mark(), hang()];

/** A skin with its backbone, where the pieces come, and the strips beside them. */
function cut(): StripSketch {
  const s = new Sketch("cut", "Where to cut the three strips", 190, 130);
  s.curve("edge", [28, 66, 26, 48, 6, 42, 8, 24, 30, 24, 44, 36, 70, 31, 100, 30, 126, 34, 140, 22, 160, 20, 164, 34, 152, 48, 156, 58, 168, 60, 172, 66, 168, 72, 156, 74, 152, 84, 164, 98, 160, 112, 140, 110, 126, 98, 100, 102, 70, 101, 44, 96, 30, 108, 8, 108, 6, 90, 26, 84], true);
  s.line("dash", [24, 66, 184, 66]).word("backbone", 2, 67.5, "start");
  s.box("pieces", 42, 38, 62, 26).word("pieces come here", 73, 46, "middle");
  s.box("pieces", 42, 68, 62, 26).word("and here", 73, 83, "middle");
  s.strip(128, 58, 32, 4.5, 0);
  s.strip(115, 83, 25, 4.5, 90);
  s.strip(135, 82, 30, 4.5, 45);
  s.size(136, 55.5, 170, 44).word("along", 171, 44, "start");
  s.size(115, 96, 115, 116).word("across", 115, 121, "middle");
  s.size(145, 90, 170, 90).word("at 45°", 171, 91.5, "start");
  s.arrow(52, 54, 94, 54).size(73, 52.5, 73, 48.5).size(73, 41, 73, 16);
  s.word("the way of least stretch: feel it with both hands,", 73, 7, "middle").word("draw an arrow on the flesh side", 73, 13.5, "middle");
  return s.done();
}

/** One strip with its marks and where the clamps hold. */
function mark(): StripSketch {
  const s = new Sketch("mark", "One strip and its marks", 190, 66);
  s.box("edge", 12, 26, 166, 15);
  s.box("grip", 12, 26, 26, 15).box("grip", 152, 26, 26, 15);
  s.line("mark", [43, 26, 43, 41]).line("mark", [147, 26, 147, 41]);
  s.arrow(72, 33.5, 118, 33.5);
  s.span(43, 147, 51, "between the marks: 150 mm, at least 100").span(12, 38, 18, "35 mm").span(152, 178, 18, "35 mm");
  s.word("20 mm wide: measure at three places", 95, 22, "middle");
  s.word("the clamp holds here", 4, 62, "start").word("and here", 165, 62, "middle");
  s.size(25, 57.5, 25, 42).size(165, 57.5, 165, 42);
  return s.done();
}
