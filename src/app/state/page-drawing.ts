import { times, type PdfMatrix } from "#sheets/readback/pdf-matrix.ts";

/** A page as it is printed: its size on paper, mm, and the content stream that a printer runs. */
export interface PrintedPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly content: string;
}

/** What is drawn on a page, in mm, y up from the lower left corner of the paper. */
export type PageMark =
  | { readonly kind: "line"; readonly d: string; readonly widthMm: number; readonly dashMm: readonly number[]; readonly clip: number | undefined }
  | { readonly kind: "fill"; readonly d: string; readonly clip: number | undefined }
  | { readonly kind: "words"; readonly text: string; readonly sizeMm: number; readonly bold: boolean; readonly matrix: PdfMatrix; readonly clip: number | undefined };

export interface PageDrawing {
  readonly marks: readonly PageMark[];
  /** Outside such a box nothing is printed; marks name theirs by number. */
  readonly clips: readonly string[];
}

const mmPerPoint = 25.4 / 72;

interface State {
  readonly matrix: PdfMatrix;
  readonly width: number;
  readonly dash: readonly number[];
  readonly clip: number | undefined;
}

/** Runs the operators of our sheets' content streams, as a printer does, into lines, fills and words. */
export function pageDrawing({ content }: PrintedPage): PageDrawing {
  const marks: PageMark[] = [];
  const clips: string[] = [];
  const saved: State[] = [];
  let state: State = { matrix: [mmPerPoint, 0, 0, mmPerPoint, 0, 0], width: mmPerPoint, dash: [], clip: undefined };
  let operands: string[] = [];
  let d = "";
  let face = { bold: false, size: 0 };
  let text: PdfMatrix = [1, 0, 0, 1, 0, 0];
  const n = (i: number): number => Number(operands[i]);
  const at = (x: number, y: number): string => `${fixed(state.matrix[0] * x + state.matrix[2] * y + state.matrix[4])} ${fixed(state.matrix[1] * x + state.matrix[3] * y + state.matrix[5])}`;
  const line = (): void => {
    const by = scaleOf(state.matrix);
    if (d) marks.push({ kind: "line", d, widthMm: state.width * by, dashMm: state.dash.map((v) => v * by), clip: state.clip });
    d = "";
  };
  const operators: Readonly<Record<string, () => void>> = {
    q: () => saved.push(state),
    Q: () => (state = saved.pop() ?? state),
    cm: () => (state = { ...state, matrix: times([n(0), n(1), n(2), n(3), n(4), n(5)], state.matrix) }),
    w: () => (state = { ...state, width: n(0) }),
    d: () => (state = { ...state, dash: (operands[0] ?? "").replace(/[[\]]/g, "").trim().split(/\s+/).filter(Boolean).map(Number) }),
    m: () => (d += `M${at(n(0), n(1))}`),
    l: () => (d += `L${at(n(0), n(1))}`),
    c: () => (d += `C${at(n(0), n(1))} ${at(n(2), n(3))} ${at(n(4), n(5))}`),
    h: () => (d += "Z"),
    re: () => (d += `M${at(n(0), n(1))}L${at(n(0) + n(2), n(1))}L${at(n(0) + n(2), n(1) + n(3))}L${at(n(0), n(1) + n(3))}Z`),
    S: line,
    s: () => {
      if (d) d += "Z";
      line();
    },
    f: () => {
      if (d) marks.push({ kind: "fill", d, clip: state.clip });
      d = "";
    },
    W: () => {
      // A box within a box: ours are never narrower than the one outside, so the inner counts.
      clips.push(d);
      state = { ...state, clip: clips.length - 1 };
    },
    n: () => (d = ""),
    Tf: () => (face = { bold: operands[0] === "/Bold", size: n(1) }),
    Tm: () => (text = [n(0), n(1), n(2), n(3), n(4), n(5)]),
    Tj: () => marks.push({ kind: "words", text: lettersOf(operands[0] ?? ""), sizeMm: face.size, bold: face.bold, matrix: times(text, state.matrix), clip: state.clip }),
  };
  for (const [token] of content.matchAll(/\[[^\]]*\]|<[^>]*>|\/[^\s/[\]<>()]+|[^\s/[\]<>()]+/g)) {
    if (/^[-+.\d[</]/.test(token)) operands.push(token);
    else {
      operators[token.replace(/\*$/, "")]?.();
      operands = [];
    }
  }
  return { marks, clips };
}

const fixed = (v: number): string => String(Number(v.toFixed(3)));
const scaleOf = ([a, b, c, d]: PdfMatrix): number => Math.sqrt(Math.abs(a * d - b * c));

/** A hexadecimal string in Windows Latin 1, the letters of the plain faces. */
function lettersOf(hex: string): string {
  const digits = hex.replace(/[<>\s]/g, "");
  return new TextDecoder("windows-1252").decode(Uint8Array.from({ length: digits.length / 2 }, (_, i) => Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16)));
}
