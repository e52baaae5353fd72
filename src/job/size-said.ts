/** Outside these a bare number is of another system (UK, US, centimetres of the foot); as `completeMeasures` has them. */
const [least, most] = [28, 48];

const parts: Readonly<Record<string, number>> = { "½": 0.5, "1/2": 0.5, "⅓": 1 / 3, "1/3": 1 / 3, "⅔": 2 / 3, "2/3": 2 / 3 };

/** The EU size out of what the maker wrote ("41", "EU 41", "38½", "38,5", "38 1/2"); nothing where it is no EU size or no number. */
export function sizeSaid(size: string): number | undefined {
  const [, whole, decimals, part] = /^\s*(?:eu\s*)?(\d{2})(?:([.,]\d+)|\s*(½|⅓|⅔|(?<=\s)(?:1\/2|1\/3|2\/3)))?\s*$/i.exec(size) ?? [];
  return whole === undefined ? undefined : inRange(Number(whole + (decimals ?? "").replace(",", ".")) + (part === undefined ? 0 : parts[part]!));
}

const inRange = (sizeEu: number): number | undefined => (sizeEu >= least && sizeEu <= most ? sizeEu : undefined);
