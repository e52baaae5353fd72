/** The words of a list that are most like a text, best first, three at most; none where all are far off. */
export function nearestWords(text: string, words: readonly string[]): readonly string[] {
  const asked = text.trim().toLowerCase();
  const ranked = words.map((word) => ({ word, off: editsBetween(asked, word), shared: asked.split(/[^\p{L}]+/u).some((part) => part.length > 3 && word.includes(part)) }));
  return ranked
    .filter(({ word, off, shared }) => shared || off <= Math.max(1, Math.floor(word.length / 3)))
    .sort((a, b) => a.off - b.off)
    .slice(0, 3)
    .map(({ word }) => word);
}

/** How many letters have to be put in, taken out or changed to make one text the other (Levenshtein 1966). */
function editsBetween(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) row.push(Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    above = row;
  }
  return above.at(-1)!;
}
