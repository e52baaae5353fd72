// In which order the files of tests are run.
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The files that take longest, the longest first: begun last, one of them would keep a single core busy while the others idle. */
const long = [
  "browser/tape", "browser/app", "browser/scan", "browser/refused",
  "photo/trace-photo", "last/from-scan-invariance", "last/feet", "cli/measure", "last/unscanned", "last/torn-last", "cli/good-runs", "cli/pictures",
  "last/feather-pull", "cli/bad-input", "mesh/topology", "pieces/real-last", "last/outlines", "job/taped", "mesh/remesh", "last/from-measures",
].map((name) => `/test/${name}.test.ts`);

/** The known long files first; then as Vitest does by itself: what failed, then what took longest when it was run here before. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification): number => {
      const at = long.findIndex((name) => moduleId.endsWith(name));
      return at < 0 ? long.length : at;
    };
    return (await super.sort(files)).sort((a, b) => place(a) - place(b));
  }
}
