export const needsSentences = {};
