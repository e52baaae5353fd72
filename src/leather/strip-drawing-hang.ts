import { Sketch, type StripSketch } from "./strip-sketch.ts";

/** The strip hanging from a table's edge with a bottle on it, the rule beside it, and the times of the two readings. */
export function hang(): StripSketch {
  const s = new Sketch("hang", "How a strip hangs, and when to read it", 190, 170);
  // Table, board and what holds it down.
  s.box("edge", 6, 22, 84, 6).line("edge", [14, 28, 14, 160]).line("edge", [6, 160, 184, 160]);
  s.box("edge", 40, 15, 66, 7).word("a board, weighted down on the table", 8, 10, "start");
  // Upper clamp, strip with its marks, lower clamp.
  s.box("grip", 96, 22, 16, 9);
  s.box("edge", 101, 31, 6, 68).line("mark", [101, 36, 107, 36]).line("mark", [101, 94, 107, 94]);
  s.box("grip", 96, 99, 16, 9);
  s.line("edge", [104, 108, 104, 114]);
  // A bottle, its water, and something soft close below.
  s.curve("edge", [101, 114, 107, 114, 107, 119, 112, 126, 112, 148, 96, 148, 96, 126, 101, 119], true);
  s.line("edge", [96, 130, 112, 130]).line("thin", [98, 134, 104, 134]).line("thin", [103, 139, 110, 139]).line("thin", [98, 144, 105, 144]);
  s.box("pieces", 84, 153, 40, 7).word("a cushion, close below", 127, 155, "start");
  s.word("bottle with water:", 116, 134, "start").word("1 litre is 1 kg, 9.81 N", 116, 140, "start");
  s.word("weigh bottle and clamp with it", 116, 146, "start");
  // The rule, read level with the marks.
  s.box("edge", 112.5, 34, 6, 63);
  for (let y = 36; y <= 94; y += 2) s.line("thin", [112.5, y, (y - 36) % 10 === 0 ? 116.5 : 114.5, y]);
  s.size(152, 36, 119.5, 36).size(152, 94, 119.5, 94).word("zero of the rule at this mark", 153, 34, "middle").word("eye level with", 154, 91, "start").word("this one: read", 154, 97, "start");
  // When.
  s.word("hang the load on gently", 22, 48, "start").word("wait 10 seconds", 22, 58, "start").word("read: length", 22, 68, "start");
  s.word("take the load off", 22, 84, "start").word("wait one minute", 22, 94, "start").word("read: after a minute", 22, 104, "start");
  s.arrow(19, 44, 19, 70, true).arrow(19, 80, 19, 106, true);
  return s.done();
}
