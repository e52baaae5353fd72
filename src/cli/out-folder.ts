// The folder that receives the results: all of them or none. They are written apart, on the same disk, and moved into place
// at the end; until then nothing that lay in the folder is touched.
import { existsSync, mkdirSync, renameSync, rmSync, rmdirSync, statfsSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { codeOf } from "./input.ts";

/** The sheets of one pair take 1 to 3 MB; below this there is no point in starting. */
const roomNeeded = 8e6;

export interface ResultFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Makes sure, before the long work, that results can be written to `named`; throws a Refusal when not. Leaves no trace. */
export function checkRoom(named: string): void {
  inFolder(named, (apart) => writeFileSync(join(apart, "room"), ""));
}

/** Writes all files and moves them into place; on any failure throws and everything is as it was before. */
export function keepResults(named: string, files: readonly ResultFile[]): void {
  const path = resolve(named);
  inFolder(named, (apart) => {
    for (const { name, bytes } of files) writeFileSync(join(apart, name), bytes);
    if (existsSync(path)) moveInto(path, apart, files);
    else renameSync(apart, path);
  });
}

/** Lets `use` work in a folder apart, beside or inside the wanted one, and removes what is left of it afterwards. */
function inFolder(named: string, use: (apart: string) => void): void {
  const path = resolve(named);
  const made: string[] = [];
  let apart: string | undefined;
  try {
    if (existsSync(path) && !statSync(path).isDirectory()) throw new Refusal(finding("folder-is-file", { folder: named }));
    const home = existsSync(path) ? path : dirname(path);
    makeFolders(home, made);
    const { bavail, bsize } = statfsSync(home);
    if (bavail * bsize < roomNeeded) throw new Refusal(finding("disk-full", { folder: named }));
    const own = join(home, `.${basename(path)}-unfinished-${process.pid}-${Date.now().toString(36)}`);
    mkdirSync(own);
    apart = own;
    use(own);
  } catch (error) {
    throw worded(named, error);
  } finally {
    if (apart) rmSync(apart, { recursive: true, force: true });
    removeEmptyFolders(made);
  }
}

function moveInto(path: string, apart: string, files: readonly ResultFile[]): void {
  const done: string[] = [];
  const former = (name: string) => join(apart, `former-${name}`);
  const folder = files.find(({ name }) => existsSync(join(path, name)) && statSync(join(path, name)).isDirectory());
  if (folder) throw new Refusal(finding("folder-unusable", { folder: path, why: `it holds a folder called ${folder.name}` }));
  try {
    for (const { name } of files) {
      const place = join(path, name);
      if (existsSync(place)) renameSync(place, former(name));
      done.push(name);
      renameSync(join(apart, name), place);
    }
  } catch (error) {
    for (const name of done) {
      rmSync(join(path, name), { force: true });
      if (existsSync(former(name))) renameSync(former(name), join(path, name));
    }
    throw error;
  }
}

function worded(folder: string, error: unknown): unknown {
  const code = codeOf(error);
  if (code === "ENOSPC" || code === "EDQUOT") return new Refusal(finding("disk-full", { folder }));
  if (code === "EACCES" || code === "EPERM" || code === "EROFS") return new Refusal(finding("folder-no-permission", { folder }));
  if (code === "ENOTDIR" || code === "EEXIST") return new Refusal(finding("folder-is-file", { folder }));
  return code ? new Refusal(finding("folder-unusable", { folder, why: code })) : error;
}

function makeFolders(path: string, made: string[]): void {
  if (existsSync(path)) return;
  makeFolders(dirname(path), made);
  mkdirSync(path);
  made.push(path);
}

/** Removes the folders that were made on the way, deepest first, as long as they are empty. */
function removeEmptyFolders(made: readonly string[]): void {
  for (const path of [...made].reverse()) {
    try {
      rmdirSync(path);
    } catch {
      return;
    }
  }
}
