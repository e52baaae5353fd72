export const moneySentences = {};
