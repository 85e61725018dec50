/** The language of a tag: "es" of "es-ES". By itself, as pages need it and do not read catalogues. */
export const languageOf = (tag: string): string => tag.split('-')[0] ?? tag;
