/** One block of a JPEG: its kind (the byte after FF) and where its content lies, without marker and length. */
export interface JpegBlock {
  readonly kind: number;
  readonly from: number;
  /** First byte after it; the end of the file where the length says more than there is. */
  readonly to: number;
}

/** Blocks that are a marker and nothing else: TEM, RST0 … RST7, SOI (ITU-T T.81, table B.1). */
const standsAlone = (kind: number): boolean => kind === 0x01 || (kind >= 0xd0 && kind <= 0xd8);
const startOfScan = 0xda;
const endOfImage = 0xd9;

/** The blocks before the picture's data, which begins after the kind DA; ends early where the bytes make no block (ITU-T T.81, B.1.1). */
export function* blocksOf(jpeg: Uint8Array): Generator<JpegBlock> {
  let at = 2;
  while (jpeg[at] === 0xff) {
    // Any number of further FF may stand before the kind (B.1.1.2).
    while (jpeg[at + 1] === 0xff) at++;
    const kind = jpeg[at + 1];
    if (kind === undefined || kind === startOfScan || kind === endOfImage) return;
    at += 2;
    if (standsAlone(kind)) continue;
    if (at + 2 > jpeg.length) return;
    // Big-endian, counted with its own two bytes.
    const length = (jpeg[at]! << 8) | jpeg[at + 1]!;
    if (length < 2) return;
    yield { kind, from: at + 2, to: Math.min(at + length, jpeg.length) };
    at += length;
  }
}
