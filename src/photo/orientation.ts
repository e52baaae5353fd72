/**
 * How a JPEG's pixels must be turned to stand upright: the Exif tag 0x0112, 1 … 8 (Exif 2.3, JEITA CP-3451C), 1 where it is
 * missing. Read by hand: it is the one tag that is needed.
 */
export function orientationOf(jpeg: Uint8Array): number {
  const view = new DataView(jpeg.buffer, jpeg.byteOffset, jpeg.byteLength);
  // Segments: FF, kind, length (big-endian, with itself). The picture's data begins with kind DA.
  for (let at = 2; at + 4 <= jpeg.length && jpeg[at] === 0xff && jpeg[at + 1] !== 0xda; at += 2 + view.getUint16(at + 2)) {
    // Any number of further FF may stand before the kind (ITU-T T.81, B.1.1.2).
    while (at + 5 <= jpeg.length && jpeg[at + 1] === 0xff) at++;
    if (jpeg[at + 1] === 0xda) return 1;
    if (jpeg[at + 1] === 0xe1 && at + 20 < jpeg.length && view.getUint32(at + 4) === 0x45786966) return tagOf(view, at + 10);
  }
  return 1;
}

/** Looks through the first directory of the TIFF block that begins at `start`. */
function tagOf(view: DataView, start: number): number {
  const little = view.getUint16(start) === 0x4949;
  const at = start + view.getUint32(start + 4, little);
  if (at + 2 > view.byteLength) return 1;
  const count = view.getUint16(at, little);
  for (let i = 0; i < count && at + 14 + 12 * i <= view.byteLength; i++) {
    if (view.getUint16(at + 2 + 12 * i, little) !== 0x0112) continue;
    const value = view.getUint16(at + 10 + 12 * i, little);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}
