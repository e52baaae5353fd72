import { growing, ruleTable, rulesOf } from "./rule-table.ts";
import { marksTold, stripsTold } from "./marks.ts";
import { isPairName, type Pairs } from "./pairs.ts";
import { shownOn } from "./pictures.ts";

/** Blocks of a page that are made: everything between `<!-- made: what words … -->` and `<!-- end -->`. */
const block = /<!-- made: ([a-z]+)([^>]*) -->\n[\s\S]*?<!-- end -->/g;

/** Names of the rules that a page shows. */
export const rulesOn = (page: string): readonly string[] => [...page.matchAll(block)].flatMap(([, what, words]) => (what === "rules" ? split(words!) : []));
const split = (words: string): readonly string[] => words.trim().split(/\s+/).filter(Boolean);

export interface PageText {
  readonly file: string;
  readonly text: string;
}

/** A page with all its made blocks made anew; what stands outside them stays. `others` are the pages that an index tells of. */
export function filled(page: PageText, pairs: Pairs, others: readonly PageText[]): string {
  const rules = rulesOf(pairs.usual), grow = growing(pairs.usual);
  return page.text.replaceAll(block, (_, what: string, rest: string) => {
    const words = split(rest);
    return `<!-- made: ${what}${rest} -->\n${made(what, words)}\n<!-- end -->`;
  });

  function made(what: string, words: readonly string[]): string {
    switch (what) {
      case "rules": return ruleTable(words, rules, grow);
      case "marks": return marksTold(words.flatMap((name) => shownOn(name, pairs)));
      case "strips": return words.filter(isPairName).map((name) => stripsTold(pairs[name].strips)).join("\n\n");
      case "index": return indexOf(words, others);
      default: throw new Error(`${page.file}: nothing is known of a made block "${what}".`);
    }
  }
}

/** One row a page, in the order named: its small picture, its heading, its first paragraph. */
function indexOf(names: readonly string[], pages: readonly PageText[]): string {
  const rows = names.map((name) => {
    const page = pages.find(({ file }) => file === `${name}.md`);
    const [, heading, first] = /^# (.+)\n\n(.+)\n/.exec(page?.text ?? "") ?? [];
    if (!heading || !first) throw new Error(`The index names ${name}.md, which is not there or does not begin with a heading and a sentence.`);
    return `| [![${heading}](pictures/small/${name}.svg)](${name}.md) | [${heading}](${name}.md) | ${first} |`;
  });
  return ["| | part | what it is for |", "| --- | --- | --- |", ...rows].join("\n");
}
