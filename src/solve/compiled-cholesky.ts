import { must } from "#base/bug.ts";
import type { BlockPattern } from "./block-pattern.ts";
import { FRONT, type FrontPlan } from "./front-plan.ts";
import { kernelBytes } from "./kernel-bytes.ts";

// WebAssembly belongs to the language's engines, not to the browser; the core's library of types leaves it out.
interface Engine {
  readonly Memory: new (size: { readonly initial: number }) => { readonly buffer: ArrayBuffer };
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object, imports: object) => { readonly exports: object };
  validate(bytes: Uint8Array): boolean;
}

interface Kernels {
  factor(count: number, block: number, heap: number, fronts: number, relative: number, blocks: number, blocksEnd: number, values: number): number;
  solve(count: number, unknowns: number, heap: number, fronts: number, rows: number, unknownAt: number, x: number, y: number): void;
}

const PAGE = 65536;

// What the engine can do never changes while the program runs, so it is found out once.
let engine: { readonly of: Engine; readonly module: object } | undefined | "unknown" = "unknown";

function theEngine(): { readonly of: Engine; readonly module: object } | undefined {
  if (engine !== "unknown") return engine;
  const { WebAssembly } = globalThis as { readonly WebAssembly?: Engine };
  const bytes = kernelBytes();
  engine = WebAssembly?.validate(bytes) ? { of: WebAssembly, module: new WebAssembly.Module(bytes) } : undefined;
  return engine;
}

/** Whether the engine runs the compiled kernels (WebAssembly with 128-bit lanes). */
export const compiledRuns = (): boolean => theEngine() !== undefined;

/**
 * {@link Cholesky}, its numeric loops compiled (kernels/cholesky.ts): the same plan, the same bits. The plan and the heap lie in a
 * memory of its own that is laid out once.
 */
export class CompiledCholesky {
  readonly plan: FrontPlan;
  readonly #kernels: Kernels;
  readonly #values: Float64Array;
  readonly #x: Float64Array;
  readonly #factor: readonly [number, number, number, number, number, number, number, number];
  readonly #solve: readonly [number, number, number, number, number, number, number, number];

  constructor(pattern: BlockPattern, plan: FrontPlan) {
    const found = theEngine();
    must(found !== undefined, "the engine runs compiled kernels");
    const { count, fronts, rows, relative, blocks, unknownAt, unknowns, heapEntries } = plan;
    let most = 0;
    for (let s = 0; s < count; s++) most = Math.max(most, fronts[s * FRONT.stride + FRONT.below]!);
    let end = 0;
    const room = (bytes: number): number => {
      const at = end;
      end += (bytes + 15) & -16;
      return at;
    };
    const at = {
      heap: room(8 * heapEntries),
      values: room(8 * pattern.valueCount),
      x: room(8 * unknowns),
      y: room(8 * (unknowns + most + 1)),
      ints: [fronts, rows, relative, blocks, unknownAt].map((list) => room(list.byteLength)) as [number, number, number, number, number],
    };
    const memory = new found.of.Memory({ initial: Math.ceil(end / PAGE) });
    this.#kernels = new found.of.Instance(found.module, { env: { memory } }).exports as Kernels;
    [fronts, rows, relative, blocks, unknownAt].forEach((list, k) => new Int32Array(memory.buffer, at.ints[k]!, list.length).set(list));
    this.plan = plan;
    this.#values = new Float64Array(memory.buffer, at.values, pattern.valueCount);
    this.#x = new Float64Array(memory.buffer, at.x, unknowns);
    const [frontsAt, rowsAt, relativeAt, blocksAt, unknownAtAt] = at.ints;
    this.#factor = [count, pattern.block, at.heap, frontsAt, relativeAt, blocksAt, blocksAt + blocks.byteLength, at.values];
    this.#solve = [count, unknowns, at.heap, frontsAt, rowsAt, unknownAtAt, at.x, at.y];
  }

  /** As Cholesky.factor. */
  factor(values: Float64Array): number {
    this.#values.set(values);
    const failed = this.#kernels.factor(...this.#factor);
    return failed < 0 ? -1 : this.plan.unknownAt[failed]!;
  }

  /** As Cholesky.solveInto. */
  solveInto(x: Float64Array, b: Float64Array): Float64Array {
    this.#x.set(b);
    this.#kernels.solve(...this.#solve);
    x.set(this.#x);
    return x;
  }
}
