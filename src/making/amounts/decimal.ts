/**
 * The decimal number that is meant: what sums and products of decimals leave in the seventeenth digit (0.1 + 0.2) is taken off. Never turns
 * the order of two numbers round.
 */
export const decimal = (value: number): number => Number(value.toPrecision(12));

/**
 * An amount of money in words: two decimals, halves away from zero, thousands parted by a no-break space from five digits on.
 * @param currency put behind the number; nothing where it is empty
 */
export function moneyWords(value: number, currency: string): string {
  const [whole = "0", cents = "00"] = hundredths(value).split(".");
  const digits = whole.replace("-", "");
  const grouped = digits.length < 5 ? digits : digits.replaceAll(/\B(?=(\d{3})+$)/g, "\u00A0");
  return `${whole.startsWith("-") ? "−" : ""}${grouped}.${cents}${currency === "" ? "" : `\u00A0${currency}`}`;
}

/** Rounded as by hand: the point is shifted in the digits, since 1.005 × 100 is not 100.5 in binary. */
function hundredths(value: number): string {
  const size = Math.abs(decimal(value));
  // Of so much there are no hundredths left in a number, and it would be written with an exponent.
  if (size >= 1e15) return `${value < 0 ? "-" : ""}${wholeDigits(size)}.00`;
  const cents = size < 0.001 ? 0 : Math.round(Number(`${size}e2`));
  return `${value < 0 && cents > 0 ? "-" : ""}${(cents / 100).toFixed(2)}`;
}

/** Its twelve figures and noughts behind them. */
function wholeDigits(size: number): string {
  const [figures = "", exponent = ""] = size.toExponential(11).split("e");
  return figures.replace(".", "").padEnd(Number(exponent) + 1, "0");
}
