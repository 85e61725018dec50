/** Which column of a logger's file holds what. */

/** What a column can hold; the names are those of the fields of readings. */
export const loggedIds = ['outside', 'house', 'under', 'loop', 'roots', 'power'] as const;
export type LoggedId = (typeof loggedIds)[number];

export const temperatureUnits = ['°C', '°F'] as const;
export type LoggedTemperatureUnit = (typeof temperatureUnits)[number];
/** `kWh` and `Wh` are the readings of a meter that counts up. */
export const powerUnits = ['W', 'kW', 'Wh', 'kWh'] as const;
export type LoggedPowerUnit = (typeof powerUnits)[number];

/** Words by which growers call the places, as they stand in the heads of columns. */
const wordsFor: Readonly<Record<LoggedId, readonly string[]>> = {
  outside: ['outside', 'outdoor', 'outdoors', 'external', 'exterior', 'ambient', 'out'],
  house: ['house', 'greenhouse', 'tunnel', 'inside', 'indoor', 'indoors', 'room'],
  under: ['under', 'underneath', 'underbench', 'below', 'beneath'],
  loop: ['loop', 'pipe', 'water', 'fluid'],
  roots: ['root', 'roots', 'rootzone', 'pot', 'pots', 'soil', 'medium', 'substrate'],
  power: ['power', 'watt', 'watts', 'energy', 'meter', 'w', 'kw', 'wh', 'kwh'],
};

/** Letters and digits of a head in small letters, as words. */
const wordsOf = (head: string): string[] => head.toLowerCase().match(/\p{L}+/gu) ?? [];

/** What a head may mean: nothing known, one thing, or several. */
export function meaningsOf(head: string): LoggedId[] {
  const words = new Set(wordsOf(head));
  return loggedIds.filter((id) => wordsFor[id].some((word) => words.has(word)));
}

/**
 * The unit of temperatures that a text names; undefined where it names none, or both. The sign of degrees is often lost
 * between programs: "Â°F", "ºF" and "?F" are taken as "°F" too.
 */
export function temperatureUnitIn(text: string): LoggedTemperatureUnit | undefined {
  const found = new Set<LoggedTemperatureUnit>();
  const sign = /(?:[°º˚\uFFFD?]|\bdeg(?:rees?)?\.?)\s*([CF])(?![\p{L}])/giu;
  const alone = /(?:^|[\s([_,;/])([CF])(?=$|[\s)\],;/])/gu;
  const word = /\b(celsius|fahrenheit)\b/giu;
  for (const one of [sign, alone, word])
    for (const [, letter = ''] of text.matchAll(one)) found.add(/^c/iu.test(letter) ? '°C' : '°F');
  return found.size === 1 ? [...found][0] : undefined;
}

/** The unit of power or of counted energy that a text names. */
export function powerUnitIn(text: string): LoggedPowerUnit | undefined {
  const words = wordsOf(text);
  const has = (...spellings: string[]): boolean => spellings.some((one) => words.includes(one));
  if (has('kwh')) return 'kWh';
  if (has('wh')) return 'Wh';
  if (has('kw')) return 'kW';
  return has('w', 'watt', 'watts') ? 'W' : undefined;
}

/** A column of a file with what it holds; null where it is not one of ours. */
export interface Column {
  /** From 1. */
  readonly number: number;
  readonly head: string;
  readonly holds: LoggedId | null;
}

/** A column of which the head does not tell what it holds. */
export interface Unclear {
  readonly column: number;
  readonly head: string;
  /** Its head has words for several things; another column says the same; no head of the file says anything. */
  readonly why: 'several-meanings' | 'said-twice' | 'nothing-known';
}

/**
 * What each column holds, by its head or as chosen, and which are not clear.
 *
 * @param heads of the columns that hold no stamps, with their numbers
 * @param chosen what a reader has said of columns by their number
 */
export function matchColumns(
  heads: readonly { readonly number: number; readonly head: string }[],
  chosen: Readonly<Record<number, LoggedId | 'none'>> = {},
): { readonly columns: readonly Column[]; readonly unclear: readonly Unclear[] } {
  const unclear: Unclear[] = [];
  const columns = heads.map(({ number, head }): Column => {
    const choice = chosen[number];
    if (choice !== undefined) return { number, head, holds: choice === 'none' ? null : choice };
    const meanings = meaningsOf(head);
    if (meanings.length > 1) unclear.push({ column: number, head, why: 'several-meanings' });
    return { number, head, holds: meanings.length === 1 ? (meanings[0] ?? null) : null };
  });
  for (const id of loggedIds) {
    const same = columns.filter(({ holds }) => holds === id);
    if (same.length > 1)
      unclear.push(...same.map(({ number: column, head }) => ({ column, head, why: 'said-twice' as const })));
  }
  if (unclear.length === 0 && columns.every(({ holds }) => holds === null)) {
    const open = columns.filter(({ number }) => chosen[number] === undefined);
    unclear.push(
      ...open.map(({ number: column, head }) => ({ column, head, why: 'nothing-known' as const })),
    );
  }
  return { columns, unclear };
}
