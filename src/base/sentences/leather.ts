import { sentence } from "../sentence.ts";

const mm = (value: number): string => `${value.toFixed(1)} mm`;
const percent = (value: number): string => `${value.toFixed(1)} %`;
const ways: Readonly<Record<string, string>> = { along: "along", across: "across", bias: "at 45 degrees" };

const times = (value: number): string => (value.toFixed(1) === "1.0" ? "as much" : `${value < 0.1 ? value.toFixed(2) : value.toFixed(1)} times as much`);

const header = "way,width mm,between marks mm,load,unit,length mm,after a minute mm";

export const leatherSentences = {
  "leather-law-impossible": sentence("stop", (d: { along: number; across: number; bias: number; poisson: number }) =>
    `No leather answers like this: ${d.along.toFixed(2)} N/mm along, ${d.across.toFixed(2)} across, ${d.bias.toFixed(2)} at 45 degrees, ${d.poisson.toFixed(2)} times as narrow as long. Read the strips again, above all the one at 45 degrees.`,
  ),

  "leather-thin": sentence("look", (d: { layer: string; thicknessMm: number; leastMm: number }) =>
    `The ${d.layer} is said to be ${mm(d.thicknessMm)} thick, and no leather is. What it gives is worked out for ${mm(d.leastMm)}: say how thick it is cut.`,
  ),

  "leather-distension": sentence("stop", (d: { mm: number }) =>
    `A distension of ${d.mm} mm cannot be read in the ball test: its ring is 25 mm wide. Give the height in mm at which the grain cracked, 1 to 25.`,
  ),

  // The rows of a file or of a table that was pasted in.
  "strips-not-text": sentence("stop", (_: Record<string, never>) => `This is no plain text. Save the table from your spreadsheet as CSV and name that file.`),
  "strips-elsewhere": sentence("stop", (d: { file: string }) => `${d.file} is a table. If it holds readings of strips, go to the station Leather and drop it there, or open it under the leather that was tested; if it holds prices or what lies on the shelf, drop it at the station Making.`),
  "strips-no-rows": sentence("stop", (_: Record<string, never>) => `There are no readings in it. The first row names the columns, ${header}; under it stands a row for every reading.`),
  "strips-no-header": sentence("stop", (d: { missing: readonly string[] }) => `The first row does not name ${d.missing.length === 1 ? "the column" : "the columns"} ${d.missing.join(", ")}. It should read: ${header}`),
  "strips-too-many": sentence("stop", (d: { strips: number; readings: number }) => `Too many rows: at most ${d.strips} strips with ${d.readings} readings each are read. An empty line begins a new strip.`),
  "strip-row-spilt": sentence("look", (d: { row: number; cells: number; columns: number; commas: boolean }) => {
    const more = d.cells > d.columns ? `Row ${d.row} has ${d.cells} cells under ${d.columns} columns` : `Row ${d.row} has its numbers under the wrong columns`;
    return d.commas ? `${more} and is left out: its decimal commas part the cells too. Part the cells by semicolons, or write the numbers with points.` : `${more} and is left out. Look for a sign too many between its cells.`;
  }),
  "strip-cell-empty": sentence("look", (d: { where: string }) => `${d.where} is empty; the row is left out. Write a number.`),
  "strip-cell-above": sentence("look", (d: { where: string; row: number }) => `${d.where} is empty, which means the same as above, and row ${d.row} has nothing there that can be used; the row is left out.`),
  "strip-cell-number": sentence("look", (d: { where: string; got: string; commas: boolean }) => `${d.where}: "${d.got}" is no number; the row is left out. Write it like 104.5${d.commas ? "" : " or 104,5"}.`),
  "strip-cell-zero": sentence("look", (d: { where: string; got: string }) => `${d.where}: ${d.got} is too little; the row is left out. Write a number above 0.`),
  "strip-cell-unit": sentence("look", (d: { where: string; got: string }) => `${d.where}: ${d.got === "" ? "the unit of the load is not said" : `"${d.got}" is no unit of load here`}; the row is left out. Write N, g, kg, oz or lb.`),
  "strip-cell-units": sentence("look", (d: { where: string; got: string; unit: string }) => `${d.where}: "${d.got}" stands beside the unit ${d.unit}; the row is left out. Write one of the two units.`),
  "strip-cell-way": sentence("look", (d: { where: string; got: string }) => `${d.where}: ${d.got === "" ? "the way of the strip is not said" : `"${d.got}" is no way of a strip`}; the row is left out. Write along, across or 45.`),

  // Strips and their readings; `where` names the row and column of a file, or the strip and its reading.
  "strip-width": sentence("look", (d: { where: string; widthMm: number; least: number; most: number }) => `${d.where}: a strip ${mm(d.widthMm)} wide is left out. Measure its width at three places and write the mean, ${d.least} to ${d.most} mm.`),
  "strip-gauge": sentence("look", (d: { where: string; gaugeMm: number; least: number; most: number }) => `${d.where}: ${mm(d.gaugeMm)} between the marks; the strip is left out. Write the length between the marks before any load, ${d.least} to ${d.most} mm.`),
  "strip-empty": sentence("look", (d: { where: string }) => `${d.where} has no readings. Hang a load on it, wait ten seconds, read the length between the marks.`),
  "strip-load": sentence("look", (d: { where: string; loadN: number }) => `${d.where}: a load of ${d.loadN.toFixed(1)} N is left out: no such strip bears or feels it. Look at its unit, and write what hangs on the strip, bottle and clamp included.`),
  "strip-shorter": sentence("look", (d: { where: string; gaugeMm: number; lengthMm: number; growth: boolean }) =>
    `${d.where}: the strip would be shorter under load (${mm(d.lengthMm)}) than without (${mm(d.gaugeMm)}); the reading is left out. ${d.growth ? `Write the whole length between the marks, like ${(d.gaugeMm + d.lengthMm).toFixed(1)}, not by how much it grew.` : "Read it again."}`,
  ),
  "strip-beyond-break": sentence("look", (d: { where: string; percent: number; known: string; breakPercent: number }) => `${d.where}: ${percent(d.percent)} longer, and ${d.known} tears at ${d.breakPercent.toFixed(0)} % or before; the reading is left out. Look at the length, and whether the clamp slipped.`),
  "strip-falls": sentence("look", (d: { where: string; beside: string; loadN: number; lengthMm: number; lighterN: number; longerMm: number }) => `${d.where}: ${mm(d.lengthMm)} under ${d.loadN.toFixed(1)} N, but ${mm(d.longerMm)} under only ${d.lighterN.toFixed(1)} N. The lighter one is ${d.beside[0]!.toLowerCase()}${d.beside.slice(1)}. One of the two is misread; read both again.`),
  "strip-set-longer": sentence("look", (d: { where: string; afterMm: number; lengthMm: number }) => `${d.where}: longer a minute after (${mm(d.afterMm)}) than under load (${mm(d.lengthMm)}). That length is left out; read it again, or look whether the two are swapped.`),
  "strip-set-shorter": sentence("look", (d: { where: string; afterMm: number; gaugeMm: number }) => `${d.where}: shorter a minute after (${mm(d.afterMm)}) than before any load (${mm(d.gaugeMm)}). That length is left out; read it again.`),
  "strips-none": sentence("look", (d: { known: string }) => `None of the readings can be used, so the leather is taken as ${d.known}, with a wide band.`),
  "strip-reading-off": sentence("look", (d: { where: string; restMm: number }) => `${d.where}: ${mm(Math.abs(d.restMm))} ${d.restMm > 0 ? "longer" : "shorter"} than the other readings let expect. It is counted all the same; read it again.`),
  "strip-ways-crossed": sentence("look", (d: { alongPercent: number; acrossPercent: number }) => `The strip across gives less (${percent(d.acrossPercent)} under 10 N on 20 mm) than the one along (${percent(d.alongPercent)}). Along is the way that gives least: look at the arrow on the skin, and swap the two where they are mixed up.`),
  "strip-bias-tight": sentence("look", (d: { biasPercent: number }) => `The strip at 45 degrees gives only ${percent(d.biasPercent)} under 10 N on 20 mm, far less than leather with the other two strips usually does. Look at its angle and read it again.`),
  "strip-way-missing": sentence("note", (d: { way: string; known: string }) => `No strip ${ways[d.way]} was read. What it gives is taken from the others as ${d.known} usually has it, with a wide band.`),
  "strip-one-reading": sentence("note", (d: { way: string }) => `Only one reading ${ways[d.way]}: the band stays wide. Four loads from light to 30 N on 20 mm make it narrow.`),
  "strip-light": sentence("note", (d: { mostN: number; wantedN: number }) => `The heaviest load is ${d.mostN.toFixed(0)} N for 20 mm of width, less than hands pull when lasting. Go up to 30 N, at least to ${d.wantedN.toFixed(0)} N.`),
  "strip-reloaded": sentence("note", (d: { where: string }) => `${d.where}: a light load after a heavy one. The strip has set by then and reads longer. Go from light to heavy once, read each length twice, and repeat on fresh strips.`),
  "strip-unlike": sentence("note", (d: { known: string; nearest: string; along: number; across: number }) => {
    const like = d.nearest === d.known ? "" : ` Among those known it gives most like ${d.nearest}.`;
    return `Under a firm pull this leather gives ${times(d.along)} along and ${times(d.across)} across as ${d.known} usually does.${like}`;
  }),
  "strip-far-off": sentence("look", (d: { known: string; along: number; across: number }) => {
    const slip = Math.max(d.along, d.across) > 1 ? "Were the loads kilograms and written as grams, or is the length between the marks too short?" : "Were the loads lighter than written, such as grams written as kilograms, or are the lengths read elsewhere than between the marks?";
    return `By these strips the leather gives ${times(d.along)} along and ${times(d.across)} across as ${d.known} usually does, and no skin is so far from its kind. ${slip} Mend them, or take the strips out, before you cut by them.`;
  }),
  "strip-loads-tiny": sentence("look", (d: { mostN: number }) => `The heaviest load is ${d.mostN.toFixed(2)} N for 20 mm of width, and so little tells nothing. Were the loads kilograms and written as grams? Mend their unit, or take the strips out, before you cut by them. Good loads go up to 30 N, or 3 kg.`),
  "strips-stay": sentence("look", (d: { layer: string; option: string; before: string; known: string; strips: number }) =>
    `The ${d.layer} is now ${d.known}, and ${d.strips === 1 ? "the strip that was read as" : `the ${d.strips} strips that were read as`} ${d.before} ${d.strips === 1 ? "stays" : "stay"}: what it gives goes by ${d.strips === 1 ? "it" : "them"}. Is it another skin, then add ${d.option} none.`,
  ),
};
