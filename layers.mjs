// The only statement of who may look at whom. It generates the lint rules (tools/lint.mjs) and is proven by
// test/architecture.test.ts. A folder may import from itself and from the folders listed; data flows down the list.
export const layers = {
  base: [],
  plane: ["base"],
  solve: ["base"],
  photo: ["base", "plane", "solve"],
  mesh: ["base", "plane", "solve"],
  wrap: ["base", "plane", "solve", "mesh"],
  flatten: ["base", "plane", "solve", "mesh"],
  last: ["base", "plane", "solve", "mesh"],
  tape: ["base", "plane", "solve", "photo", "last"],
  lines: ["base", "plane", "solve", "mesh", "flatten", "last"],
  shell: ["base", "plane", "solve", "mesh", "wrap", "flatten", "last", "lines"],
  leather: ["base", "plane", "solve"],
  pieces: ["base", "plane", "solve", "mesh", "last", "tape", "lines", "shell"],
  lasting: ["base", "plane", "solve", "mesh", "wrap", "flatten", "last", "lines", "shell", "leather", "pieces"],
  making: ["base", "plane", "last", "lines", "shell", "leather", "pieces", "lasting"],
  sheets: ["base", "plane", "photo", "mesh", "last", "tape", "lines", "shell", "leather", "pieces", "lasting", "making"],
  job: ["base", "plane", "solve", "photo", "mesh", "flatten", "last", "tape", "lines", "shell", "leather", "pieces", "lasting", "making", "sheets"],
  app: ["base", "plane", "solve", "photo", "mesh", "flatten", "last", "tape", "lines", "shell", "leather", "pieces", "lasting", "making", "sheets", "job"],
  cli: ["base", "plane", "solve", "photo", "mesh", "flatten", "last", "tape", "lines", "shell", "leather", "pieces", "lasting", "making", "sheets", "job"],
};

/** Folders that make up the core: they compile without DOM and without Node types. */
export const core = ["base", "plane", "solve", "photo", "mesh", "wrap", "flatten", "last", "tape", "lines", "shell", "leather", "pieces", "lasting", "making", "sheets", "job"];
