import { capitalShare, pdfString } from "../lettering.ts";
import type { Lettering } from "../pen.ts";
import type { PageSize } from "../print-paper.ts";

/** Points of a PDF in one millimetre: 72 in an inch of 25.4 mm. */
export const pointsPerMm = 72 / 25.4;

/** A number as short as it can be at a thousandth of a millimetre. */
export function short(v: number): string {
  const s = v.toFixed(3);
  const cut = s.replace(/\.?0+$/, "");
  return cut === "-0" ? "0" : cut;
}

/**
 * The content stream of one page, written in millimetres with y up from the lower left corner of the paper: its first
 * operator scales to points, and puts right what the maker's printer is out of true. All ink is the same near-black; line widths in mm.
 */
export class PageInk {
  readonly page: PageSize;
  readonly #lines: string[];
  #width = NaN;
  #dash = "";

  constructor(page: PageSize) {
    this.page = page;
    const [[sx, sy], [dx, dy]] = [page.stretch, page.shift];
    const points = (v: number, places: number) => (v === 0 ? "0" : (v * pointsPerMm).toFixed(places));
    this.#lines = [`${points(sx, 12)} 0 0 ${points(sy, 12)} ${points(dx, 6)} ${points(dy, 6)} cm`, "0.1 0.1 0.1 RG 0.1 0.1 0.1 rg 1 J 1 j"];
  }

  content(): string {
    return this.#lines.join("\n");
  }

  style(widthMm: number, dashMm: readonly number[] = []): void {
    const dash = `[${dashMm.map(short).join(" ")}] 0 d`;
    if (widthMm !== this.#width) this.#lines.push(`${short(widthMm)} w`);
    if (dash !== this.#dash) this.#lines.push(dash);
    this.#width = widthMm;
    this.#dash = dash;
  }

  /** Strokes a polyline x0 y0 …, moved by (dx, dy). */
  stroke(xy: ArrayLike<number>, closed = false, dx = 0, dy = 0): void {
    if (xy.length < 4) return;
    const out: string[] = [];
    for (let i = 0; i < xy.length; i += 2) out.push(`${short(xy[i]! + dx)} ${short(xy[i + 1]! + dy)} ${i === 0 ? "m" : "l"}`);
    this.#lines.push(out.join(" ") + (closed ? " s" : " S"));
  }

  /** Strokes a line from a start, moved by (dx, dy); each part two numbers for a straight piece or six for a cubic Bézier. */
  strokeParts(start: readonly [number, number], parts: readonly (readonly number[])[], closed: boolean, dx: number, dy: number): void {
    const at = (numbers: readonly number[]) => numbers.map((v, i) => short(v + (i % 2 === 0 ? dx : dy))).join(" ");
    const drawn = parts.map((part) => `${at(part)} ${part.length === 2 ? "l" : "c"}`);
    this.#lines.push(`${at(start)} m ${drawn.join(" ")} ${closed ? "s" : "S"}`);
  }

  line(x0: number, y0: number, x1: number, y1: number): void {
    this.stroke([x0, y0, x1, y1]);
  }

  box(x: number, y: number, width: number, height: number): void {
    this.#lines.push(`${short(x)} ${short(y)} ${short(width)} ${short(height)} re S`);
  }

  /** Fills boxes, each x, y, width, height; a box inside another stays blank. */
  fill(boxes: readonly (readonly [number, number, number, number])[]): void {
    this.#lines.push(`${boxes.map((b) => `${b.map(short).join(" ")} re`).join(" ")} f*`);
  }

  /** Runs `draw` with everything outside the box hidden. */
  clipped(x: number, y: number, width: number, height: number, draw: () => void): void {
    this.#lines.push(`q ${short(x)} ${short(y)} ${short(width)} ${short(height)} re W n`);
    draw();
    this.#lines.push("Q");
    this.#width = NaN;
    this.#dash = "";
  }

  /** Marks what `draw` writes with a name, by which it is found again when the file is read back. */
  named(name: string, draw: () => void): void {
    this.#lines.push(`/${name} BMC`);
    draw();
    this.#lines.push("EMC");
  }

  write(words: Lettering): void {
    const size = short(words.heightMm / capitalShare);
    const turn = (words.angleDeg * Math.PI) / 180;
    const c = Math.cos(turn), s = Math.sin(turn);
    const matrix = [c, s, -s, c].map((v) => (Math.abs(v) < 1e-9 ? "0" : v.toFixed(6))).join(" ");
    this.#lines.push(`BT /${words.bold ? "Bold" : "Plain"} ${size} Tf ${matrix} ${short(words.xMm)} ${short(words.yMm)} Tm ${pdfString(words.text)} Tj ET`);
  }

  text(text: string, xMm: number, yMm: number, heightMm: number, options: { readonly bold?: boolean; readonly angleDeg?: number } = {}): void {
    this.write({ text, xMm, yMm, heightMm, angleDeg: options.angleDeg ?? 0, bold: options.bold ?? false });
  }
}
