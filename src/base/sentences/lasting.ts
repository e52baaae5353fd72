export const lastingSentences = {};
