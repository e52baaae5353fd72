const TEN: readonly number[] = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22];
const NEWLINE = 10;
const RETURN = 13;
const BACKSLASH = 92;

const isSpace = (c: number): boolean => c === 32 || c === 9 || c === 11 || c === 12;
const isEnd = (c: number): boolean => c === NEWLINE || c === RETURN;

/**
 * Walks over text held as bytes, line by line and word by word, without making strings. Numbers of up to 15 digits and an
 * exponent within ±22 are exact by one multiplication or division (Clinger 1990); others go through the engine's own parser.
 */
export class TextCursor {
  readonly bytes: Uint8Array;
  at: number;
  line = 1;
  constructor(bytes: Uint8Array, at = 0) {
    this.bytes = bytes;
    this.at = at;
  }

  get done(): boolean {
    return this.at >= this.bytes.length;
  }

  /** Skips blanks inside the line (and a backslash that continues it); true when something is left on the line. */
  more(): boolean {
    const { bytes } = this;
    while (this.at < bytes.length) {
      const c = bytes[this.at]!;
      if (isSpace(c)) this.at++;
      else if (c === BACKSLASH && this.at + 1 < bytes.length && isEnd(bytes[this.at + 1]!)) {
        this.at++;
        this.nextLine();
      } else return !isEnd(c);
    }
    return false;
  }

  /** Goes to the start of the next line. */
  nextLine(): void {
    const { bytes } = this;
    while (this.at < bytes.length && !isEnd(bytes[this.at]!)) this.at++;
    if (this.at < bytes.length) {
      if (bytes[this.at] === RETURN && bytes[this.at + 1] === NEWLINE) this.at++;
      this.at++;
      this.line++;
    }
  }

  /** Skips blanks and line ends. */
  skipBlank(): void {
    while (!this.done && !this.more()) {
      if (this.done) return;
      this.nextLine();
    }
  }

  /** Goes past the word under the cursor if it is `word` in either case (`word` in lower case). */
  take(word: string): boolean {
    const { bytes, at } = this;
    for (let i = 0; i < word.length; i++) {
      const c = bytes[at + i];
      if (c === undefined || (c | 32) !== word.charCodeAt(i)) return false;
    }
    const after = bytes[at + word.length];
    if (after !== undefined && !isSpace(after) && !isEnd(after)) return false;
    this.at += word.length;
    return true;
  }

  /** The next word of the line, "" when there is none. */
  word(): string {
    if (!this.more()) return "";
    const start = this.at;
    this.skipWord();
    return asciiText(this.bytes, start, this.at);
  }

  skipWord(): void {
    const { bytes } = this;
    while (this.at < bytes.length && !isSpace(bytes[this.at]!) && !isEnd(bytes[this.at]!)) this.at++;
  }

  /** The next number of the line; NaN when there is none or the word is none. */
  number(): number {
    if (!this.more()) return NaN;
    const { bytes } = this;
    const start = this.at;
    let at = start;
    let c = bytes[at]!;
    const negative = c === 45;
    if (c === 45 || c === 43) c = bytes[++at]!;
    let mantissa = 0;
    let digits = 0;
    let scale = 0;
    for (; c >= 48 && c <= 57; c = bytes[++at]!) {
      mantissa = mantissa * 10 + (c - 48);
      if (mantissa > 0) digits++;
    }
    let any = at > start + (negative ? 1 : 0);
    if (c === 46) {
      const point = at;
      for (c = bytes[++at]!; c >= 48 && c <= 57; c = bytes[++at]!) {
        mantissa = mantissa * 10 + (c - 48);
        if (mantissa > 0) digits++;
        scale--;
      }
      any ||= at > point + 1;
    }
    if (any && (c === 101 || c === 69)) {
      let exponent = 0;
      c = bytes[++at]!;
      const down = c === 45;
      if (c === 45 || c === 43) c = bytes[++at]!;
      for (; c >= 48 && c <= 57; c = bytes[++at]!) exponent = exponent * 10 + (c - 48);
      scale += down ? -exponent : exponent;
    }
    this.at = at;
    const ended = c === undefined || isSpace(c) || isEnd(c);
    if (!ended || !any || digits > 15 || scale > 22 || scale < -22) return this.#slowNumber(start);
    const value = scale < 0 ? mantissa / TEN[-scale]! : mantissa * TEN[scale]!;
    return negative ? -value : value;
  }

  /** A whole number, ending before whatever is no digit; NaN when there is none. */
  integer(): number {
    if (!this.more()) return NaN;
    const { bytes } = this;
    let c = bytes[this.at]!;
    const negative = c === 45;
    if (c === 45 || c === 43) c = bytes[++this.at]!;
    let value = 0;
    let any = false;
    for (; c >= 48 && c <= 57; c = bytes[++this.at]!) {
      value = value * 10 + (c - 48);
      any = true;
    }
    return any ? (negative ? -value : value) : NaN;
  }

  #slowNumber(start: number): number {
    this.at = start;
    this.skipWord();
    const text = asciiText(this.bytes, start, this.at);
    if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text)) return NaN;
    return Number(text);
  }
}

/** Bytes as text, one character a byte: enough for formats whose own words are ASCII. */
export function asciiText(bytes: Uint8Array, from = 0, to = bytes.length): string {
  const parts: string[] = [];
  for (let i = from; i < to; i += 8192) parts.push(String.fromCharCode(...bytes.subarray(i, Math.min(to, i + 8192))));
  return parts.join("");
}
