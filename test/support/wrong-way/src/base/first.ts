import { second } from "./second.ts";

export const first = (): number => second() - 1;
