/** Whether a file is a table by its name. */
export const isTable = (name: string): boolean => /\.(csv|tsv|txt)$/i.test(name);
