/** What a bench is to heat: nodes that hold it, boundaries that stay put, links that carry it. SI, °C. */
export interface Network {
  readonly nodes: readonly { readonly id: string; /** [J/K] */ readonly capacity: number }[];
  readonly boundaries: readonly { readonly id: string; readonly temperature: number }[];
  readonly links: readonly Link[];
  readonly heat: readonly { readonly node: string; /** [W] */ readonly power: number }[];
}

export interface Link {
  readonly from: string;
  readonly to: string;
  /** [W/K] */
  readonly conductance: number;
  /** The way that the heat takes, as a reader knows it. */
  readonly path: string;
}
