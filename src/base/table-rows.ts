// Tables as a spreadsheet saves them: rows of cells parted by commas, semicolons or tabs (RFC 4180 and its usual relatives).

/** What cells are parted by: the one of semicolon, tab and comma that the first row has most of. */
export function separatorOf(first: string): string {
  const count = (sign: string): number => first.split(sign).length;
  return [";", "\t", ","].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

/** A line that says something: not empty, no remark, and not the line by which some spreadsheets name their separator. */
export const isTold = (line: string): boolean => line.trim() !== "" && !line.trim().startsWith("#") && !/^"?sep=.?"?$/i.test(line.trim());

/** Whether this is something else than text: a picture, or the spreadsheet's own file, which is a zip. */
export const isNoText = (text: string): boolean => text.includes("\u0000") || text.startsWith("PK");

/** The lines of a text, whatever ends them, without the mark of byte order. */
export const linesOf = (text: string): string[] => text.replace(/^\uFEFF/, "").split(/\r\n|\r|\n/);

/** The cells of a line; one in double quotes may hold the separator, and "" for a quote (RFC 4180). */
export function cellsOf(line: string, separator: string): string[] {
  const cells: string[] = [];
  for (let at = 0; at <= line.length; ) {
    const quoted = /^\s*"((?:[^"]|"")*)"\s*/.exec(line.slice(at));
    if (quoted && (at + quoted[0].length === line.length || line.startsWith(separator, at + quoted[0].length))) {
      cells.push(quoted[1]!.replaceAll('""', '"').trim());
      at += quoted[0].length + 1;
      continue;
    }
    const end = line.indexOf(separator, at);
    cells.push(line.slice(at, end < 0 ? undefined : end).trim());
    at = end < 0 ? line.length + 1 : end + 1;
  }
  return cells;
}

/** A line of cells parted by commas, quoted where they have to be, so that `cellsOf` reads them back. */
export const lineOf = (cells: readonly string[]): string => cells.map((cell) => (/[",;\t#]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(",");
