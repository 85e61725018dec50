/** A sheet as long-wave radiation meets it, from either side: it reflects what it neither lets through nor takes up. */
export interface RadiantLayer {
  /** Share that passes straight through [1]. */
  readonly transmittance: number;
  /** Share that is taken up, and emissivity [1]. */
  readonly emissivity: number;
}

/** Bounces between sheets that reflect little die away within ten or so; these are for mirrors. */
const mostBounces = 10_000;
const diedAway = 1e-15;

/**
 * How sheets, one behind the other between two opaque surfaces, exchange long-wave radiation: each with its neighbours,
 * through those that let it pass, and with all reflections. Faces are numbered from the first surface (0) by way of two
 * faces for each sheet (1 and 2 for the first) to the last surface (2 n + 1). The entry for a and b, row by row, is the
 * share of what a black surface would send out that a sends out and b takes up; the heat from a to b is that times
 * σ (Ta⁴ − Tb⁴). The matrix is symmetric and each row adds up to the emissivity of its face. Without a sheet it holds the
 * exchange emissivity of parallel planes. Grey and diffuse; sheets that are large against their gaps.
 *
 * Worked out by following what each face sends out until it has all been taken up (net radiation method, as Incropera,
 * section 13.3, has it for opaque surfaces).
 *
 * @param surface emissivity of the two opaque surfaces [1]
 */
export function exchangeThrough(layers: readonly RadiantLayer[], surface: number): Float64Array {
  const gaps = layers.length + 1;
  const faces = 2 * gaps;
  const factors = new Float64Array(faces * faces);
  for (let sender = 0; sender < faces; sender++) {
    const emissivity = layers[Math.ceil(sender / 2) - 1]?.emissivity ?? surface;
    // Even faces look outward, odd ones inward: both into the gap of half their number.
    const sentOutward = (gap: number): number => (sender === 2 * gap ? emissivity : 0);
    const sentInward = (gap: number): number => (sender === 2 * gap + 1 ? emissivity : 0);
    const outward = new Float64Array(gaps);
    const inward = new Float64Array(gaps);
    for (let bounce = 0; bounce < mostBounces; bounce++) {
      let moved = 0;
      const set = (stream: Float64Array, gap: number, value: number): void => {
        moved = Math.max(moved, Math.abs(value - stream[gap]!));
        stream[gap] = value;
      };
      for (let gap = 0; gap < gaps; gap++) {
        const before = layers[gap - 1];
        set(
          outward,
          gap,
          sentOutward(gap) +
            (before
              ? before.transmittance * outward[gap - 1]! + reflectanceOf(before) * inward[gap]!
              : (1 - surface) * inward[gap]!),
        );
      }
      for (let gap = gaps - 1; gap >= 0; gap--) {
        const behind = layers[gap];
        set(
          inward,
          gap,
          sentInward(gap) +
            (behind
              ? behind.transmittance * inward[gap + 1]! + reflectanceOf(behind) * outward[gap]!
              : (1 - surface) * outward[gap]!),
        );
      }
      if (moved < diedAway) break;
    }
    for (let gap = 0; gap < gaps; gap++) {
      factors[sender * faces + 2 * gap] = (layers[gap - 1]?.emissivity ?? surface) * inward[gap]!;
      factors[sender * faces + 2 * gap + 1] = (layers[gap]?.emissivity ?? surface) * outward[gap]!;
    }
  }
  return factors;
}

const reflectanceOf = ({ transmittance, emissivity }: RadiantLayer): number => 1 - transmittance - emissivity;
