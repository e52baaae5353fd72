export const calendarSentences = {};
