import { pageDrawing, type PrintedPage } from "#app/state/page-drawing.ts";

/** A printed page as a picture, out of what the printer is told: so the guide shows what comes out of it. Its words must be level or upright. */
export function pageSvg(page: PrintedPage, title: string): string {
  const lines: string[] = [], words: string[] = [];
  for (const mark of pageDrawing(page).marks) {
    if (mark.kind === "words") words.push(wordSvg(page.heightMm, mark));
    else if (mark.kind === "line") lines.push(`<path d="${turnedDown(mark.d, page.heightMm)}" stroke-width="${tidy(mark.widthMm)}"${mark.dashMm.length > 0 ? ` stroke-dasharray="${mark.dashMm.map(tidy).join(" ")}"` : ""}/>`);
  }
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${tidy(page.widthMm)} ${tidy(page.heightMm)}" width="${tidy(3.2 * page.widthMm)}">`,
    `<title>${title}</title>`,
    `<rect width="100%" height="100%" fill="#fffdf8"/>`,
    `<g fill="none" stroke="#1a1a1a" stroke-linecap="round" stroke-linejoin="round">`,
    ...lines,
    `</g><g fill="#1a1a1a" font-family="Helvetica, Arial, sans-serif">`,
    ...words,
    "</g></svg>\n",
  ].join("\n");
}

const tidy = (v: number): string => String(Math.round(v * 100) / 100);

/** A path of the page, y up, with y down as pictures have it. */
const turnedDown = (d: string, heightMm: number): string => d.replace(/(-?[\d.]+) (-?[\d.]+)/g, (_, x: string, y: string) => `${tidy(Number(x))} ${tidy(heightMm - Number(y))}`);

function wordSvg(heightMm: number, { text, sizeMm, bold, matrix: [a, b, , , e, f] }: { readonly text: string; readonly sizeMm: number; readonly bold: boolean; readonly matrix: readonly number[] }): string {
  const told = text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  const [x, y] = [tidy(e!), tidy(heightMm - f!)];
  const turn = Math.abs(b!) < 1e-9 && a! > 0 ? "" : ` transform="rotate(${b! > 0 ? -90 : 90} ${x} ${y})"`;
  return `<text x="${x}" y="${y}" font-size="${tidy(sizeMm)}"${bold ? ` font-weight="bold"` : ""}${turn}>${told}</text>`;
}
