import { within } from '../range.ts';
import type { Soil } from '../tables/soils.ts';
import { iceConductivity, poreWaterConductivity } from './ice.ts';

/**
 * Mineral soil by its moisture: Johansen 1975, as Farouki 1981 recommends it (from memory; the dry branch was also seen in
 * open code). Good to some 25 %, which is what a soil changes within a few metres. Moisture is the share of the pores that
 * water fills, 0 to 1.
 */

/** Density of the grains [kg/m³]. */
const grains = 2700;

/** Conductivities [W/(m·K)] of quartz and of other minerals (in soil with little quartz). */
const quartz = 7.7;
const otherMinerals = 2;
const otherMineralsLittleQuartz = 3;
const littleQuartz = 0.2;

/** Share of the volume that is pores [1]. */
export const porosity = ({ dryDensity }: Pick<Soil, 'dryDensity'>): number => 1 - dryDensity / grains;

/** Conductivity of dry soil [W/(m·K)]: (0.135 ρ + 64.7) / (2700 − 0.947 ρ), good to 20 %. */
const dry = (density: number): number => (0.135 * density + 64.7) / (grains - 0.947 * density);

/** Below these Johansen says nothing; the line goes on straight to dry soil. */
const leastMoisture = { coarse: 0.05, fine: 0.1 } as const;
const slope = { coarse: 0.7, fine: 1 } as const;

/** How far moisture brings the conductivity from that of dry to that of soaked soil [1]. */
function kersten({ grain }: Soil, moisture: number, frozen: boolean): number {
  if (frozen) return moisture;
  const from = leastMoisture[grain];
  const curve = (filled: number): number => slope[grain] * Math.log10(filled) + 1;
  return moisture < from ? (curve(from) * moisture) / from : curve(moisture);
}

/**
 * Conductivity of soil [W/(m·K)] at a moisture of 0 to 1, thawed or frozen: λ = λ_dry + (λ_soaked − λ_dry) Ke. Soaked it is
 * the geometric mean of grains and water, Ke = 1 + log S (fine) or 1 + 0.7 log S (coarse grains), S when frozen. For 1200
 * to 2000 kg/m³. Throws `OutOfRange`.
 */
export function soilConductivity(soil: Soil, moisture: number, frozen = false): number {
  within('dry density of the soil [kg/m³]', soil.dryDensity, 1200, 2000);
  within('moisture of the soil [1]', moisture, 0, 1);
  const others = soil.quartz < littleQuartz ? otherMineralsLittleQuartz : otherMinerals;
  const solid = quartz ** soil.quartz * others ** (1 - soil.quartz);
  const pores = porosity(soil);
  const soaked = solid ** (1 - pores) * (frozen ? iceConductivity : poreWaterConductivity) ** pores;
  const whenDry = dry(soil.dryDensity);
  return whenDry + (soaked - whenDry) * kersten(soil, moisture, frozen);
}

/** Heat capacities by volume [J/(m³·K)]: of minerals (de Vries 1963, from memory) and of water at 0 to 10 °C. */
const mineralsByVolume = 2.0e6;
const waterByVolume = 4.19e6;

/** Heat capacity of thawed soil by volume [J/(m³·K)]: of its grains and its water. */
export function soilHeatCapacity(soil: Pick<Soil, 'dryDensity'>, moisture: number): number {
  within('moisture of the soil [1]', moisture, 0, 1);
  const pores = porosity(soil);
  return (1 - pores) * mineralsByVolume + pores * moisture * waterByVolume;
}
