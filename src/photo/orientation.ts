import { blocksOf } from "./jpeg-blocks.ts";

const app1 = 0xe1;
const short = 3, long = 4;

/**
 * How a JPEG's pixels must be turned to stand upright: the Exif tag 0x0112, 1 … 8 (Exif 2.32, CIPA DC-008, 4.6.4), 1 where it is
 * missing or makes no sense. Whatever stands there never throws: an odd note beside a sound picture is no damage. Read by hand:
 * it is the one tag that is needed.
 */
export function orientationOf(jpeg: Uint8Array): number {
  for (const { kind, from, to } of blocksOf(jpeg)) {
    if (kind !== app1 || !isExif(jpeg.subarray(from, to))) continue;
    const tiff = jpeg.subarray(from + 6, to);
    return tagOf(new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength));
  }
  return 1;
}

/** "Exif" and a zero; the padding after it is not looked at (4.7.2). Other notes of the same kind, such as XMP, begin otherwise. */
const isExif = (b: Uint8Array): boolean => b.length >= 6 && b[0] === 0x45 && b[1] === 0x78 && b[2] === 0x69 && b[3] === 0x66 && b[4] === 0;

/** Looks through the first directory of a TIFF block (TIFF 6.0, section 2): order of bytes, 42, place of the directory, entries of twelve bytes. */
function tagOf(tiff: DataView): number {
  if (tiff.byteLength < 8) return 1;
  const order = tiff.getUint16(0);
  if (order !== 0x4949 && order !== 0x4d4d) return 1;
  const little = order === 0x4949;
  const directory = tiff.getUint32(4, little);
  if (directory + 2 > tiff.byteLength) return 1;
  const count = tiff.getUint16(directory, little);
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + 12 * i;
    if (entry + 12 > tiff.byteLength) return 1;
    if (tiff.getUint16(entry, little) !== 0x0112) continue;
    // It should be a short; some programs write a long.
    const type = tiff.getUint16(entry + 2, little);
    const value = type === short ? tiff.getUint16(entry + 8, little) : type === long ? tiff.getUint32(entry + 8, little) : 1;
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}
