// The only statement of who may look at whom. It generates the lint rules (tools/lint.mjs) and is proven by
// test/architecture.test.ts. A folder may import from itself and from the folders listed; data flows down the list.
export const layers = {
  base: [],
  plane: ["base"],
  solve: ["base"],
  mesh: ["base", "plane", "solve"],
  flatten: ["base", "plane", "solve", "mesh"],
  last: ["base", "plane", "solve", "mesh"],
  lines: ["base", "plane", "solve", "mesh", "flatten", "last"],
  shell: ["base", "plane", "solve", "mesh", "flatten", "last", "lines"],
  pieces: ["base", "plane", "solve", "mesh", "last", "lines", "shell"],
  sheets: ["base", "plane", "mesh", "last", "lines", "shell", "pieces"],
  job: ["base", "plane", "solve", "mesh", "flatten", "last", "lines", "shell", "pieces", "sheets"],
  app: ["base", "plane", "solve", "mesh", "flatten", "last", "lines", "shell", "pieces", "sheets", "job"],
  cli: ["base", "plane", "solve", "mesh", "flatten", "last", "lines", "shell", "pieces", "sheets", "job"],
};

/** Folders that make up the core: they compile without DOM and without Node types. */
export const core = ["base", "plane", "solve", "mesh", "flatten", "last", "lines", "shell", "pieces", "sheets", "job"];
