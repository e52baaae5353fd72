export const loopSentences = {};
