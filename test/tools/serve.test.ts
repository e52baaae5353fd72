// The little server gives out what lies in its folder, with the right types, and nothing else.
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
// @ts-expect-error plain module without types
import { serve as serveUntyped } from "../../tools/serve.mjs";

interface Served {
  readonly server: { close: () => void; closeAllConnections: () => void };
  readonly port: number;
  readonly address: string;
}
const serve = serveUntyped as (dir: string, port?: number) => Promise<Served>;

const home = mkdtempSync(join(tmpdir(), "lastwise-serve-"));
const shown = join(home, "shown");
let served: Served;

/** Asks without tidying the path, as a browser would not but an attacker might. */
function get(path: string, method = "GET"): Promise<{ status: number; type: string; body: string }> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: "localhost", port: served.port, path, method }, (answer) => {
      let body = "";
      answer.on("data", (part: Buffer) => (body += part.toString("latin1")));
      answer.on("end", () => resolve({ status: answer.statusCode ?? 0, type: answer.headers["content-type"] ?? "", body }));
    });
    asked.on("error", reject).end();
  });
}

beforeAll(async () => {
  mkdirSync(join(shown, "deep"), { recursive: true });
  for (const name of ["index.html", "a.mjs", "b.wasm", "c.woff2", "d.css", "deep/index.html", "e f.txt"]) writeFileSync(join(shown, name), name);
  writeFileSync(join(home, "secret.txt"), "secret");
  symlinkSync(join(home, "secret.txt"), join(shown, "link.txt"));
  served = await serve(shown, 0);
});
afterAll(() => {
  served.server.closeAllConnections();
  served.server.close();
  rmSync(home, { recursive: true, force: true });
});

test.each([
  ["/", "text/html; charset=utf-8", "index.html"],
  ["/deep/", "text/html; charset=utf-8", "deep/index.html"],
  ["/a.mjs?v=1", "text/javascript; charset=utf-8", "a.mjs"],
  ["/b.wasm", "application/wasm", "b.wasm"],
  ["/c.woff2", "font/woff2", "c.woff2"],
  ["/d.css", "text/css; charset=utf-8", "d.css"],
  ["/e%20f.txt", "text/plain; charset=utf-8", "e f.txt"],
])("%s is given as %s", async (path, type, body) => {
  expect(await get(path)).toEqual({ status: 200, type, body });
});

test.each(["/nothing", "/deep", "/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/deep/../../secret.txt", "/link.txt", "/%00", "/%E0%A4%A"])("%s is not given", async (path) => {
  const { status, body } = await get(path);
  expect(status).toBe(404);
  expect(body).not.toContain("secret");
});

test("only reading is allowed, and a taken port moves on to the next", async () => {
  expect((await get("/", "POST")).status).toBe(405);
  expect(await get("/", "HEAD")).toMatchObject({ status: 200, body: "" });
  const second = await serve(shown, served.port);
  expect(second.port).toBeGreaterThan(served.port);
  expect(second.address).toBe(`http://localhost:${second.port}/`);
  second.server.close();
});
