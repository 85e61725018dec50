/** Which columns of a weather file hold outdoor temperatures, by their heads. */

/** Words of a head in small letters; "temp_min" and "TempMin" are two. */
const wordsOf = (head: string): string[] =>
  head
    .replaceAll(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .match(/\p{L}+/gu) ?? [];

/** Words by which services in several languages call the temperature of the air. */
const airWords = [
  ...['temp', 'temps', 'temperature', 'temperatur', 'temperatura', 'température', 'tmp', 't', 'ta', 'tair'],
  ...['airtemp', 'tempc', 'tempf', 'tmpc', 'tmpf', 'tt', 'drybulb', 'outdoor', 'outside', 'lufttemperatur'],
];
const lowWords = [
  'min',
  'minimum',
  'mintemp',
  'tempmin',
  'low',
  'lowest',
  'tmin',
  'tn',
  'tnk',
  'mint',
  'mín',
];
const highWords = [
  'max',
  'maximum',
  'maxtemp',
  'tempmax',
  'high',
  'highest',
  'tmax',
  'tx',
  'txk',
  'maxt',
  'máx',
];
/** Temperatures of something else, and what is no temperature. */
const otherWords = [
  ...[
    'dew',
    'dewp',
    'dewpoint',
    'wet',
    'wetbulb',
    'soil',
    'grass',
    'ground',
    'sea',
    'water',
    'feels',
    'apparent',
  ],
  ...[
    'chill',
    'heat',
    'index',
    'inside',
    'indoor',
    'humidity',
    'pressure',
    'wind',
    'gust',
    'rain',
    'hours',
    'flag',
  ],
  ...['quality', 'rf', 'departure', 'normal', 'boden', 'taupunkt'],
];

const has = (head: string, words: readonly string[]): boolean =>
  wordsOf(head).some((word) => words.includes(word));

export type Matched =
  | { readonly ok: true; readonly kind: 'hours' | 'days'; readonly columns: readonly string[] }
  | { readonly ok: false; readonly words: string };

/**
 * The columns to read: one temperature, or a low and a high.
 *
 * @param heads of all columns
 * @param stampColumns those of the day and the time
 * @param kind what the stamps look like: several a day, or one
 * @param chosen columns that somebody has named
 */
export function matchWeatherColumns(
  heads: readonly string[],
  stampColumns: readonly number[],
  kind: 'hours' | 'days',
  chosen: {
    readonly temperature?: string | undefined;
    readonly low?: string | undefined;
    readonly high?: string | undefined;
  },
): Matched {
  const open = heads.filter((head, at) => !stampColumns.includes(at) && !has(head, otherWords));
  const lows = chosen.low === undefined ? open.filter((head) => has(head, lowWords)) : [chosen.low];
  const highs = chosen.high === undefined ? open.filter((head) => has(head, highWords)) : [chosen.high];
  const airs =
    chosen.temperature === undefined
      ? open.filter((head) => has(head, airWords) && !has(head, [...lowWords, ...highWords]))
      : [chosen.temperature];
  const asksForDays = chosen.low !== undefined || chosen.high !== undefined;
  if (kind === 'hours' && !asksForDays) {
    const [only, second] = airs.length > 0 ? airs : heads.length - stampColumns.length === 1 ? open : [];
    if (only !== undefined && second === undefined) return { ok: true, kind, columns: [only] };
    return second === undefined
      ? { ok: false, words: 'No column is called a temperature: say which with --temperature' }
      : {
          ok: false,
          words: `${airs.map((name) => `"${name}"`).join(' and ')} may be the temperature outside: say which with --temperature`,
        };
  }
  const [low, secondLow] = lows;
  const [high, secondHigh] = highs;
  if (low !== undefined && high !== undefined && secondLow === undefined && secondHigh === undefined)
    return { ok: true, kind: 'days', columns: [low, high] };
  return {
    ok: false,
    words:
      low === undefined || high === undefined
        ? 'A file with one line a day needs a column of lows and one of highs: say which with --low and --high'
        : 'Several columns may be the lows or highs of the days: say which with --low and --high',
  };
}
