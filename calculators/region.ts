/** A station's climate: what the guide needs to know of a place. Temperatures in °C. */
export interface Station {
  readonly id: string;
  readonly name: string;
  /** Mean over the years of each winter's lowest temperature. */
  readonly usualLowest: number;
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
}

/** What a rule set asks of the circuit of a heating cable. */
export type RuleSetId = 'us' | 'iec';

/** An office's region, as the calculators need it. Money in the region's currency. */
export interface Region {
  readonly id: string;
  readonly name: string;
  readonly languages: readonly string[];
  readonly units: 'metric' | 'us';
  readonly paper: 'a4' | 'letter';
  readonly mains: { readonly voltage: number; readonly frequency: number; readonly rules: RuleSetId };
  readonly tariff: { /** per joule */ readonly price: number; readonly currency: string };
  readonly stations: readonly Station[];
  readonly cautions: readonly string[];
  readonly codeReferences: readonly string[];
  readonly office: {
    readonly name: string;
    readonly contacts: readonly { readonly who: string; readonly how: string }[];
  };
}
