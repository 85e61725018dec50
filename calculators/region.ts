/** A station's climate: what the guide needs to know of a place. Temperatures in °C. */
export interface Station {
  readonly id: string;
  readonly name: string;
  /** Mean over the years of each winter's lowest temperature. */
  readonly usualLowest: number;
  /** How many whole winters that mean is of. */
  readonly winters: number;
  /** Lowest temperature on the record. */
  readonly recordLowest: number;
  /** Exceeded in 99.6 % and 99 % of all hours. */
  readonly exceeded996: number;
  readonly exceeded99: number;
  /** Ground temperature below the floor in the coldest weeks. */
  readonly ground: number;
  /** January to December. */
  readonly months: readonly { readonly meanLow: number; readonly meanHigh: number }[];
  /** Where the numbers come from, in words, with the years. */
  readonly source: string;
  /** What was not read but worked out, and how, in words. */
  readonly method: string;
  /** First and last day of the record, as 2012-01-01, and how many days between them have no reading. */
  readonly firstDay: string;
  readonly lastDay: string;
  readonly daysMissing: number;
  /** How many hours of whole years the marks were taken from; left out where the record is of daily lows and highs. */
  readonly hoursUsed?: number | undefined;
  /** Degree hours of an average year: `sum` [K·s] below each temperature [°C]. */
  readonly degreeHours?: readonly { readonly below: number; readonly sum: number }[] | undefined;
  /** The three days in a row with the lowest mean, the first as 2012-01-01. */
  readonly coldestSnap?:
    { readonly begins: string; readonly mean: number; readonly lowest: number } | undefined;
}

/** What a rule set asks of the circuit of a heating cable. */
export type RuleSetId = 'us' | 'iec';

/** An office's region, as the calculators need it. Money in the region's currency. */
export interface Region {
  readonly id: string;
  readonly name: string;
  /** What this region is, in a sentence or two: an example says here that it is invented. */
  readonly about: string;
  /** Where the office keeps its guide on the web, for the code on a worksheet. */
  readonly guide: string;
  /** BCP 47 tags, the first is that of the region's pages. */
  readonly languages: readonly string[];
  readonly units: 'metric' | 'us';
  readonly paper: 'a4' | 'letter';
  readonly mains: {
    /** [V] */
    readonly voltage: number;
    /** [Hz] */
    readonly frequency: number;
    readonly rules: RuleSetId;
    /** Where voltage, frequency and rules are laid down, in words. */
    readonly source: string;
  };
  readonly tariff: {
    /** per joule */
    readonly price: number;
    /** ISO 4217 code. */
    readonly currency: string;
    /** Whose price it is, and of what day. */
    readonly source: string;
  };
  readonly stations: readonly Station[];
  /** Kinds of plant that are grown here, as rows of the table of plants. */
  readonly plants: readonly string[];
  readonly cautions: readonly string[];
  readonly codeReferences: readonly string[];
  /** The office's own words at places of the guide: `at` is the id of a chapter, or "start". */
  readonly insertions?:
    | readonly {
        readonly at: string;
        readonly kind: 'caution' | 'note';
        readonly title: string;
        readonly text: string;
      }[]
    | undefined;
  /** The office's own colours, each as #rrggbb: links and heat on the light page and on the dark one. */
  readonly colours?:
    | { readonly link: string; readonly heat: string; readonly linkDark: string; readonly heatDark: string }
    | undefined;
  readonly office: {
    readonly name: string;
    readonly contacts: readonly { readonly who: string; readonly how: string }[];
  };
}
