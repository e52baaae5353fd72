import { expect, test } from "vitest";
import { isPicture, Shelf } from "#app/state/shelf.ts";

const bytes = (...b: number[]): Uint8Array => Uint8Array.from(b);

test("files of one name and other content lie side by side, the same file once", () => {
  const shelf = new Shelf();
  expect([shelf.take("last.stl", bytes(1)), shelf.take("last.stl", bytes(2)), shelf.take("last.stl", bytes(1)), shelf.take("last.stl", bytes(2))]).toEqual(["last.stl", "last 2.stl", "last.stl", "last 2.stl"]);
  expect([...shelf.files.keys()]).toEqual(["last.stl", "last 2.stl"]);
});

test("what nothing speaks of any more is let go", () => {
  const shelf = new Shelf();
  shelf.take("kept.stl", bytes(1));
  shelf.take("refused.stl", bytes(2));
  shelf.keepOnly(new Set(["kept.stl", "never seen.stl"]));
  expect([...shelf.files.keys()]).toEqual(["kept.stl"]);
});

test("pictures are told by their ending, in any writing", () => {
  for (const name of ["a.jpg", "b.JPEG", "tape.side.png", "IMG_1.HEIC", "a.heif", "a.avif", "a.webp", "a.tif", "a.tiff", "a.bmp", "a.gif", "a.pdf"]) expect(isPicture(name), name).toBe(true);
  for (const name of ["a.stl", "png", "b.png.obj", "job.lastwise"]) expect(isPicture(name), name).toBe(false);
  expect(isPicture("shared picture", "image/heic")).toBe(true);
});
