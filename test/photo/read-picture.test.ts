// Reading pictures: orientation as cameras write it (Exif 2.3), every kind of PNG that the writer used here can make, refusals.
import { encode as encodePng } from "fast-png";
import { encode as encodeJpeg } from "jpeg-js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { orientationOf } from "#photo/orientation.ts";
import { readPicture } from "#photo/read-picture.ts";

const wide = 1000, high = 8;

/** Red at the left end of the upper edge, green at its right end, blue at the left end of the lower edge, the rest grey. */
function flag(): Uint8Array {
  const rgba = new Uint8Array(4 * wide * high).fill(128);
  const put = (x0: number, y0: number, rgb: readonly number[]): void => {
    for (let y = y0; y < y0 + high / 2; y++) for (let x = x0; x < x0 + 200; x++) rgba.set([...rgb, 255], 4 * (y * wide + x));
  };
  put(0, 0, [230, 20, 20]);
  put(wide - 200, 0, [20, 200, 20]);
  put(0, high / 2, [20, 20, 230]);
  return rgba;
}

/** A JPEG with an Exif block that says how it lies, big- or little-endian. */
function turnedJpeg(orientation: number, little: boolean): Uint8Array {
  const plain = encodeJpeg({ width: wide, height: high, data: flag() }, 95).data;
  const u16 = (v: number): number[] => (little ? [v & 255, v >> 8] : [v >> 8, v & 255]);
  const u32 = (v: number): number[] => (little ? [...u16(v & 65535), ...u16(v >>> 16)] : [...u16(v >>> 16), ...u16(v & 65535)]);
  const tiff = [...(little ? [0x49, 0x49] : [0x4d, 0x4d]), ...u16(42), ...u32(8), ...u16(2), ...u16(0x0100), ...u16(3), ...u32(1), ...u16(7), 0, 0, ...u16(0x0112), ...u16(3), ...u32(1), ...u16(orientation), 0, 0, ...u32(0)];
  const block = [0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff];
  const length = block.length + 2;
  return Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, length >> 8, length & 255, ...block, ...plain.subarray(2)]);
}

/** Which of red, green, blue is strongest near a corner of the picture; "none" on grey. */
function cornerOf(bytes: Uint8Array, right: boolean, lower: boolean): string {
  const { width, height, rgba } = readPicture("a.jpg", bytes);
  const x = right ? width - 2 : 1, y = lower ? height - 2 : 1;
  const [r, g, b] = rgba.subarray(4 * (y * width + x)) as unknown as [number, number, number];
  return r > g + 60 && r > b + 60 ? "red" : g > r + 60 && g > b + 60 ? "green" : b > r + 60 && b > g + 60 ? "blue" : "none";
}

describe("pictures from cameras", () => {
  // Where the file's upper left, upper right and lower left come to lie, by the eight values of the standard.
  const lies: Readonly<Record<number, readonly [red: string, green: string, blue: string]>> = {
    1: ["upper left", "upper right", "lower left"], 2: ["upper right", "upper left", "lower right"], 3: ["lower right", "lower left", "upper right"], 4: ["lower left", "lower right", "upper left"],
    5: ["upper left", "lower left", "upper right"], 6: ["upper right", "lower right", "upper left"], 7: ["lower right", "upper right", "lower left"], 8: ["lower left", "upper left", "lower right"],
  };
  test.each(Object.keys(lies).map(Number))("orientation %i stands upright", (orientation) => {
    for (const little of [true, false]) {
      const bytes = turnedJpeg(orientation, little);
      const { width, height } = readPicture("a.jpg", bytes);
      expect([width, height]).toEqual(orientation > 4 ? [high, wide] : [wide, high]);
      const corners = new Map<string, string>();
      for (const right of [false, true]) for (const lower of [false, true]) corners.set(cornerOf(bytes, right, lower), `${lower ? "lower" : "upper"} ${right ? "right" : "left"}`);
      expect(["red", "green", "blue"].map((c) => corners.get(c))).toEqual([...lies[orientation]!]);
    }
  });

  // Fill bytes before a marker: ITU-T T.81, B.1.1.2.
  test("fill bytes before a block do not hide how the picture lies", () => {
    const plain = turnedJpeg(6, false);
    for (const fill of [1, 3]) {
      const { width, height } = readPicture("a.jpg", Uint8Array.from([0xff, 0xd8, ...new Array<number>(fill).fill(0xff), ...plain.subarray(2)]));
      expect([width, height]).toEqual([high, wide]);
    }
  });

  // Built by hand after ITU-T T.81 (blocks), TIFF 6.0 section 2 (directory) and Exif 2.32 (tag 0x0112, a short).
  const app1 = (...content: readonly number[]): readonly number[] => [0xff, 0xe1, (content.length + 2) >> 8, (content.length + 2) & 255, ...content];
  const exif = (...tiff: readonly number[]): readonly number[] => app1(0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff);
  const with1 = (...blocks: readonly number[]): Uint8Array => Uint8Array.from([0xff, 0xd8, ...blocks, ...encodeJpeg({ width: wide, height: high, data: flag() }, 95).data.subarray(2)]);
  const entry = (type: number, ...value: readonly number[]): readonly number[] => [0x01, 0x12, 0, type, 0, 0, 0, 1, ...value];
  const header = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8];

  test.each([
    ["an Exif block that ends after its name", exif()],
    ["one that ends in the middle of the header", exif(0x4d, 0x4d, 0)],
    ["an order of bytes that there is not", exif(0x41, 0x41, 0, 42, 0, 0, 0, 8, 0, 1, ...entry(3, 0, 6, 0, 0))],
    ["a directory beyond the end", exif(0x4d, 0x4d, 0, 42, 0xff, 0xff, 0xff, 0xf0)],
    ["a directory that says more than there is", exif(...header, 0xff, 0xff, 0, 1)],
    ["an entry that is cut off", exif(...header, 0, 1, 0x01, 0x12, 0, 3, 0, 0)],
    ["a turn that there is not", exif(...header, 0, 1, ...entry(3, 0, 9, 0, 0))],
    ["a turn written as text", exif(...header, 0, 1, ...entry(2, 0x36, 0, 0, 0))],
    ["a note of another program", app1(...[..."http://ns.adobe.com/xap/1.0/"].map((c) => c.charCodeAt(0)), 0)],
    ["an empty note", app1()],
  ])("%s does no harm: the picture is read as it lies", (_, block) => {
    const { width, height } = readPicture("a.jpg", with1(...block));
    expect([width, height]).toEqual([wide, high]);
  });

  test("the turn is found behind another program's note, and where it is written as a long", () => {
    expect(orientationOf(with1(...app1(0x68, 0x74, 0x74, 0x70, 0, 0), ...exif(...header, 0, 1, ...entry(3, 0, 6, 0, 0))))).toBe(6);
    expect(orientationOf(with1(...exif(...header, 0, 1, ...entry(4, 0, 0, 0, 8))))).toBe(8);
    // A marker without length (TEM, table B.1) and fill bytes on the way.
    expect(orientationOf(with1(0xff, 0x01, 0xff, 0xff, ...exif(...header, 0, 1, ...entry(3, 0, 3, 0, 0))))).toBe(3);
  });

  test("no bytes whatever make reading the turn throw", () => {
    const start = Uint8Array.from([0xff, 0xd8, ...exif(...header, 0, 1, ...entry(3, 0, 6, 0, 0))]);
    fc.assert(fc.property(fc.integer({ min: 2, max: start.length }), fc.uint8Array({ maxLength: 60 }), fc.integer({ min: 2, max: start.length - 1 }), fc.integer({ min: 0, max: 255 }), (cut, rest, at, odd) => {
      const bytes = Uint8Array.from([...start.subarray(0, cut), ...rest]);
      if (at < bytes.length) bytes[at] = odd;
      const turn = orientationOf(bytes);
      expect(Number.isInteger(turn) && turn >= 1 && turn <= 8).toBe(true);
    }), { seed: 112, numRuns: 3000 });
  });

  test("PNG of 16 bits, grey, and see-through", () => {
    const grey = readPicture("a.png", encodePng({ width: 1000, height: 2, depth: 16, channels: 1, data: new Uint16Array(2000).map((_, i) => (i % 2 === 0 ? 65535 : 257 * 100)) }));
    expect([...grey.rgba.subarray(0, 8)]).toEqual([255, 255, 255, 255, 100, 100, 100, 255]);
    const clear = readPicture("a.png", encodePng({ width: 1000, height: 1, depth: 8, channels: 4, data: new Uint8Array(4000).fill(0) }));
    expect([...clear.rgba.subarray(0, 4)]).toEqual([255, 255, 255, 255]);
    const rgb = readPicture("a.png", encodePng({ width: 1000, height: 1, depth: 8, channels: 3, data: new Uint8Array(3000).map((_, i) => (i % 3) * 40) }));
    expect([...rgb.rgba.subarray(0, 4)]).toEqual([0, 40, 80, 255]);
  });

  test("PNG of one bit, each row from a new byte", () => {
    // Width 1001: the second row begins in the middle of nothing.
    const data = new Uint8Array(2 * 126);
    data[0] = 0b10100000;
    data[126] = 0b01000000;
    const { rgba, width } = readPicture("a.png", encodePng({ width: 1001, height: 2, depth: 1, channels: 1, data }));
    expect([0, 1, 2, width, width + 1].map((p) => rgba[4 * p])).toEqual([255, 0, 255, 0, 255]);
  });
});

describe("what is no usable picture is refused with advice", () => {
  const code = (bytes: Uint8Array): string => {
    try {
      readPicture("a", bytes);
    } catch (error) {
      if (error instanceof Refusal) return error.finding.code;
      throw error;
    }
    return "none";
  };
  const box = (brand: string): Uint8Array => Uint8Array.from([0, 0, 0, 24, ...`ftyp${brand}`].map((c) => (typeof c === "string" ? c.charCodeAt(0) : c)));

  test("other kinds are named", () => {
    for (const brand of ["heic", "heix", "mif1", "avif"]) expect(code(box(brand))).toBe("picture-other-kind");
    for (const text of ["%PDF-1.7", "GIF89a", "RIFF1234WEBPVP8 ", "BM123456", "solid last"]) expect(code(new TextEncoder().encode(text))).toBe("picture-other-kind");
    expect(code(new Uint8Array())).toBe("picture-empty");
  });

  test("cut short, shaken bytes, far too large, far too small", () => {
    const jpeg = turnedJpeg(1, true);
    expect(code(jpeg.subarray(0, 300))).toBe("picture-damaged");
    const png = encodePng({ width: 1000, height: 3, depth: 8, channels: 3, data: new Uint8Array(9000) });
    expect(code(png.subarray(0, png.length - 20))).toBe("picture-damaged");
    // Said in words for makers: nothing of what the libraries say of their own insides.
    expect(() => readPicture("a", png.subarray(0, png.length - 20))).toThrow(/^a is damaged or cut short\. Copy it from the camera again[^()]*$/);
    const huge = png.slice();
    new DataView(huge.buffer).setUint32(16, 60_000);
    new DataView(huge.buffer).setUint32(20, 60_000);
    expect(code(huge)).toBe("picture-too-large");
    // The size of a JPEG is told before it is unpacked, behind fill bytes too (ITU-T T.81, B.1.1.2 and B.2.2).
    const frame = [0xff, 0xc0, 0, 11, 8, 0xea, 0x60, 0xea, 0x60, 1, 1, 0x11, 0];
    for (const fill of [[], [0xff], [0xff, 0xff, 0xff]]) expect(code(Uint8Array.from([0xff, 0xd8, ...fill, ...frame]))).toBe("picture-too-large");
    expect(code(encodePng({ width: 640, height: 480, depth: 8, channels: 1, data: new Uint8Array(640 * 480) }))).toBe("picture-too-small");
  });
});
