/** What follows the chapters in the book: id and title, in order. */
export const atTheEnd = [
  ['the-bench', 'The bench of this guide'],
  ['cautions', 'Cautions'],
  ['symbols', 'Symbols and units'],
  ['glossary', 'Glossary'],
  ['sources', 'Sources'],
] as const;
