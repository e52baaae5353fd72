/** `note` is told, `look` must be looked at before cutting, `stop` means that the input cannot be used. */
export type Severity = "note" | "look" | "stop";
