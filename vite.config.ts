import react from "@vitejs/plugin-react";
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { defineConfig, runnerImport, type Plugin } from "vite";

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
        .replace("BUILT_DIGEST", digest.digest("hex").slice(0, 16));
      if (/BUILT_(FILES|DIGEST)/.test(worker.code)) throw new Error("the service worker was not filled in");
    },
  };
}

/** Works out the demonstration pair while the app is built, so that the page opens with it and does not have to wait. */
function demoPair(): Plugin {
  return {
    name: "demo-pair",
    apply: "build",
    async generateBundle() {
      const { module } = await runnerImport<{ demoPairBytes: () => Uint8Array }>(`${app}/demo/demo-pair.ts`, { configFile: false, root: app, logLevel: "error" });
      this.emitFile({ type: "asset", fileName: "demo-pair.bin", source: module.demoPairBytes() });
    },
  };
}

/** Puts the licences of all packages that the app is made from beside it, as most of them ask. */
function licences(): Plugin {
  return {
    name: "licences",
    apply: "build",
    generateBundle() {
      const root = new URL("./", import.meta.url);
      const { dependencies } = JSON.parse(readFileSync(new URL("package.json", root), "utf8")) as { dependencies: Record<string, string> };
      const texts = Object.keys(dependencies).map((name) => {
        const home = new URL(`node_modules/${name}/`, root);
        const file = readdirSync(home).find((f) => /^licen[cs]e/i.test(f));
        const { license } = JSON.parse(readFileSync(new URL("package.json", home), "utf8")) as { license?: string };
        return `${name}\n\n${file ? readFileSync(new URL(file, home), "utf8").trim() : `Licence: ${license}`}\n`;
      });
      const colours = "The colour scale broc\n\nCopyright (c) 2020 Fabio Crameri. MIT licence; its terms are those of the MIT texts in this file.\n";
      this.emitFile({ type: "asset", fileName: "licences.txt", source: [...texts, colours].join(`\n${"-".repeat(72)}\n\n`) });
    },
  };
}

const app = fileURLToPath(new URL("src/app", import.meta.url));

export default defineConfig({
  root: app,
  base: "./",
  publicDir: `${app}/public`,
  plugins: [react(), demoPair(), licences(), fileListInServiceWorker()],
  worker: { format: "es" },
  build: {
    outDir: fileURLToPath(new URL("dist/app", import.meta.url)),
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2000,
    rolldownOptions: {
      input: { index: `${app}/index.html`, "service-worker": `${app}/service-worker.ts` },
      output: { entryFileNames: (chunk) => (chunk.name === "service-worker" ? "service-worker.js" : "assets/[name]-[hash].js") },
    },
  },
});
