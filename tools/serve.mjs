// Serves a folder to this machine alone. Node's built-ins alone.
import { readFileSync, realpathSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, sep } from "node:path";

const types = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".wasm": "application/wasm",
  ".woff2": "font/woff2",
  ".pdf": "application/pdf",
};

/** The file of `dir` that an address speaks of, or undefined: nothing outside `dir`, no folders, nothing odd. */
export function fileFor(dir, url) {
  let path;
  try {
    path = decodeURIComponent(new URL(url, "http://localhost").pathname);
  } catch {
    return undefined;
  }
  if (path.includes("\0")) return undefined;
  try {
    const home = realpathSync(dir);
    const file = realpathSync(join(home, path.endsWith("/") ? `${path}index.html` : path));
    return file.startsWith(home + sep) && statSync(file).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}

/** Starts serving; resolves to `{ server, address, port }`. When the port is taken, the next ones are tried (0: any free one). */
export async function serve(dir, port = 4173) {
  const server = createServer((request, response) => answer(dir, request, response));
  for (let next = port; ; next++) {
    try {
      const got = await listen(server, next);
      return { server, port: got, address: `http://localhost:${got}/` };
    } catch (error) {
      if (error.code !== "EADDRINUSE" || next >= port + 50) throw error;
    }
  }
}

function listen(server, port) {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "localhost", () => {
      server.off("error", reject);
      resolve(server.address().port);
    });
  });
}

function answer(dir, request, response) {
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.writeHead(405, { Allow: "GET, HEAD" }).end();
    return;
  }
  const file = fileFor(dir, request.url ?? "/");
  const bytes = file && bytesOf(file);
  if (!file || !bytes) {
    response.writeHead(404, { "Content-Type": "text/plain; charset=utf-8" }).end("There is nothing here.\n");
    return;
  }
  response.writeHead(200, {
    "Content-Type": types[extname(file)] ?? "application/octet-stream",
    "Content-Length": bytes.length,
    "Cache-Control": "no-cache",
    "X-Content-Type-Options": "nosniff",
  });
  response.end(request.method === "HEAD" ? undefined : bytes);
}

/** The file whole, or undefined when a build that runs beside us has just taken it away. All our files are small. */
function bytesOf(file) {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}
