// `npm run guide`: makes anew every picture and every table of rules in docs/guide/parts, from the example pair and the rules themselves.
import { inRoot, runPackage } from "./steps.mjs";
import { setUp } from "./setup.mjs";

setUp();
process.exit(runPackage("tsx", "tsx", [inRoot("tools/guide/write.ts")]));
