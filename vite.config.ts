import react from "@vitejs/plugin-react";
import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import { defineConfig, type Plugin } from "vite";

/** Writes the list of all built files into the service worker, so that the app opens without network after one visit. */
function fileListInServiceWorker(): Plugin {
  return {
    name: "file-list-in-service-worker",
    enforce: "post",
    generateBundle(_, bundle) {
      const worker = bundle["service-worker.js"];
      if (worker?.type !== "chunk") throw new Error("the service worker is missing from the build");
      const built = Object.values(bundle).filter((f) => f !== worker && !f.fileName.endsWith(".map"));
      const files = ["./", "icon.svg", "app.webmanifest", ...built.map((f) => f.fileName).filter((f) => f !== "index.html")].sort();
      const digest = createHash("sha256");
      for (const f of built) digest.update(f.fileName).update(f.type === "chunk" ? f.code : f.source);
      worker.code = worker.code
        .replace(/["'`]BUILT_FILES["'`]/, () => JSON.stringify(JSON.stringify(files)))
        .replace(/["'`]BUILT_DIGEST["'`]/, () => JSON.stringify(digest.digest("hex").slice(0, 16)));
    },
  };
}

const app = fileURLToPath(new URL("src/app", import.meta.url));

export default defineConfig({
  root: app,
  base: "./",
  publicDir: `${app}/public`,
  plugins: [react(), fileListInServiceWorker()],
  worker: { format: "es" },
  build: {
    outDir: fileURLToPath(new URL("dist/app", import.meta.url)),
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1500,
    rolldownOptions: {
      input: { index: `${app}/index.html`, "service-worker": `${app}/service-worker.ts` },
      output: { entryFileNames: (chunk) => (chunk.name === "service-worker" ? "service-worker.js" : "assets/[name]-[hash].js") },
    },
  },
});
