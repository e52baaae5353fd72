import type { Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { UpperLayer } from "#leather/leather.ts";
import { readStripCsv } from "#leather/strip-csv.ts";
import type { Desk } from "./desk.ts";
import { bytesOf } from "./read-file.ts";
import { addStrips } from "./state/leather-edits.ts";
import { layerWords } from "./state/leather-words.ts";

type Says = Readonly<Partial<Record<UpperLayer, readonly Finding[]>>>;

/** Takes tables of strips, opened, pasted or dropped on the page, and tells what was found in the last one of each layer. */
class StripTables {
  #says: Says = {};
  readonly #ears = new Set<() => void>();

  readonly listen = (ear: () => void): (() => void) => {
    this.#ears.add(ear);
    return () => this.#ears.delete(ear);
  };
  readonly look = (): Says => this.#says;

  take(desk: Desk, layer: UpperLayer, text: string): void {
    const { strips, findings } = this.#read(text);
    this.#says = { ...this.#says, [layer]: findings };
    for (const ear of this.#ears) ear();
    const of = layerWords[layer];
    if (strips.length > 0) desk.change(addStrips(desk.job, layer, strips), strips.length === 1 ? `a strip of the ${of}` : `${strips.length} strips of the ${of}`);
  }

  async open(desk: Desk, layer: UpperLayer, file: File): Promise<void> {
    this.take(desk, layer, new TextDecoder().decode(await bytesOf(file)));
  }

  #read(text: string): Pick<ReturnType<typeof readStripCsv>, "strips" | "findings"> {
    try {
      return readStripCsv(text);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return { strips: [], findings: [error.finding] };
    }
  }
}

export const stripTables = new StripTables();
