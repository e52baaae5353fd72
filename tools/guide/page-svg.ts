import type { PageInk } from "#sheets/pdf/page-ink.ts";

/** The marks by which a page's content stream begins each of its lines, as `PageInk` writes them. */
const word = /^BT \/(Plain|Bold) (\S+) Tf (\S+) (\S+) \S+ \S+ (\S+) (\S+) Tm <([0-9A-Fa-f]*)> Tj ET$/;
const letters = new TextDecoder("windows-1252");

/** A printed page of straight lines and words as a picture: the same ink, so that the guide shows what comes out of the printer. */
export function pageSvg({ page: { widthMm, heightMm }, content }: { readonly page: PageInk["page"]; readonly content: string }, title: string): string {
  const out: string[] = [];
  let width = "0.25", dash = "";
  const up = (y: string): string => tidy(heightMm - Number(y));
  for (const line of content.split("\n")) {
    const style = [...line.matchAll(/(?:^| )(\S+) w(?: |$)/g)].at(-1)?.[1];
    if (/^\S+ w$/.test(line) && style) width = style;
    else if (line.startsWith("[")) dash = line.slice(1, line.indexOf("]"));
    else if (/ (S|s)$/.test(line)) out.push(`<path d="${pathOf(line, up)}" stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ""}/>`);
    else {
      const [, face, size, c, s, x, y, hex] = word.exec(line) ?? [];
      if (hex) out.push(wordSvg(face === "Bold", Number(size), Number(c), Number(s), x!, up(y!), hex));
    }
  }
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${tidy(widthMm)} ${tidy(heightMm)}" width="${tidy(3.2 * widthMm)}">`,
    `<title>${title}</title>`,
    `<rect width="100%" height="100%" fill="#fffdf8"/>`,
    `<g fill="none" stroke="#1a1a1a" stroke-linecap="round" stroke-linejoin="round">`,
    ...out.filter((s) => s.startsWith("<path")),
    `</g><g fill="#1a1a1a" font-family="Helvetica, Arial, sans-serif">`,
    ...out.filter((s) => s.startsWith("<text")),
    "</g></svg>\n",
  ].join("\n");
}

const tidy = (v: number): string => String(Math.round(v * 100) / 100);

/** "x y m x y l … S", or a box "x y w h re S", with y turned down. */
function pathOf(line: string, up: (y: string) => string): string {
  const parts = line.split(" ");
  if (parts.includes("re")) {
    const [x, y, w, h] = parts as [string, string, string, string];
    return `M${tidy(Number(x))} ${up(y)}h${tidy(Number(w))}v${tidy(-Number(h))}h${tidy(-Number(w))}z`;
  }
  let d = "";
  for (let i = 0; i + 2 < parts.length; i += 3) d += `${parts[i + 2] === "m" ? "M" : "L"}${tidy(Number(parts[i]))} ${up(parts[i + 1]!)}`;
  return d + (parts.at(-1) === "s" ? "z" : "");
}

function wordSvg(bold: boolean, size: number, c: number, s: number, x: string, y: string, hex: string): string {
  const text = letters.decode(Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16)));
  const told = text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  const turn = s === 0 && c === 1 ? "" : ` transform="rotate(${Math.round((-Math.atan2(s, c) * 180) / Math.PI)} ${tidy(Number(x))} ${y})"`;
  return `<text x="${tidy(Number(x))}" y="${y}" font-size="${tidy(size)}"${bold ? ` font-weight="bold"` : ""}${turn}>${told}</text>`;
}
