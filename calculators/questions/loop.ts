import { loopLength, loopPath, loopVolume, loopWallMass, pipeOf } from '../bench/geometry.ts';
import type { Bench } from '../bench/fields.ts';
import { fluidDensity, loopHeatCapacity, loopMix, type LoopMix } from '../bench/loop-mix.ts';
import { amount, calculator, care, sentence, stop, type Warning } from '../calculator.ts';
import type { Celsius } from '../quantities/temperature.ts';
import { cite } from '../sources.ts';

/** Least air space in a vented loop without a stand-pipe, as a share of its volume [1]: twice what 30 % glycol swells. */
const leastHeadspace = 0.03;

/** Kept free in a stand-pipe above the highest level [m] (design rule of this guide). */
const freeAtTop = 0.05;

/** Coefficient of expansion of PVC [1/K]: 5.2 to 5.4e-5 (supplier pages), about the value in the table of pipes. */
const growthSpread = [5.2 / 5.3, 5.4 / 5.3] as const;

/**
 * How far the wall goes along with the fluid from filling to the hottest [1]. It lies between the fluid and colder air, and
 * its middle is colder than the fluid by up to a sixth of what lies between the two (films of 100 inside and 10 W/(m²·K)
 * outside, 3 mm of PVC); air that is twice as far below makes it a third (assumption).
 */
const leastFollowing = 2 / 3;

/** Temperature at which plain water is densest [°C]: IAPWS SR6-08, 3.98 °C. */
const densestWater = 3.98;

/** The temperature of a room that is never filled is looked for up to here [°C]: hotter than any of these pipes may get. */
const hottestLooked = 95;

/**
 * The loop temperature [°C] at which the fluid has swollen, from filling, into `room` [m³] of a loop of `volume` [m³]; null
 * where that is hotter than a loop may get.
 */
function fullAt(fluid: LoopMix, fillTemperature: Celsius, volume: number, room: number): Celsius | null {
  const filled = fluidDensity(fluid, fillTemperature);
  const fits = (t: Celsius): boolean => volume * (filled / fluidDensity(fluid, t) - 1) <= room;
  if (fits(hottestLooked)) return null;
  // Water below 3.98 °C shrinks first; from there on the volume only grows, so halving the interval closes in.
  let low: number = Math.max(fillTemperature, densestWater);
  let high: number = hottestLooked;
  for (let round = 0; round < 30; round++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** The longest run without a bend [m]: what grows along one side of the bench. */
function longestRun(bench: Bench): number {
  if (bench.loop.run === 'straight') return loopLength(bench);
  const path = loopPath(bench);
  return Math.max(
    ...path.slice(1).map(([x, y], index) => Math.hypot(x - path[index]![0], y - path[index]![1])),
  );
}

export default calculator({
  id: 'loop',
  question: 'What does the loop hold, and how far does it rise?',
  summary:
    'Volume, weight and stored heat of the filled loop, and the room that its fluid needs as it warms.',
  reads: [
    'loop.pipe',
    'loop.expansion',
    'loop.standpipeDiameter',
    'loop.standpipeHeight',
    'loop.fillTemperature',
    'loop.hottest',
    'mix.antifreeze',
    'mix.share',
    'mix.protectTo',
    'loop.length',
    'loop.run',
    'loop.inset',
    'frame.length',
    'frame.width',
    'cable.diameter',
  ],
  figures: {
    length: {
      label: 'Length of the loop',
      quantity: 'length',
      symbol: 'L',
      explain: 'Along the middle of the pipe.',
    },
    volume: {
      label: 'Volume of the loop',
      quantity: 'volume',
      symbol: 'V',
      explain: 'All that the pipe holds, full to the level at filling. The stand-pipe is not in it.',
    },
    fluidMass: {
      label: 'Mass of the fluid',
      quantity: 'mass',
      symbol: 'm',
      explain: 'At the temperature when filling.',
    },
    pipeMass: {
      label: 'Mass of the pipe',
      quantity: 'mass',
      explain: 'Wall only, without fittings and cable.',
    },
    filledMassPerLength: {
      label: 'Weight per length of filled pipe',
      quantity: 'massPerLength',
      explain: 'Fluid and pipe. Times the distance between two supports it is what one support carries.',
    },
    heatCapacity: {
      label: 'Heat held for each degree',
      quantity: 'heatCapacity',
      symbol: 'C',
      explain:
        'What the filled loop gives back for each degree that it cools. The wet pots hold several times as much.',
    },
    expansionVolume: {
      label: 'Expansion from filling to hottest',
      quantity: 'volume',
      symbol: '\\Delta V',
      explain:
        'By how much the fluid swells between the temperature when filling and the hottest that the loop may get. The pipe grows too and takes up a part of it; that part is left in hand.',
    },
    contractionVolume: {
      label: 'Contraction from filling to coldest',
      quantity: 'volume',
      explain:
        'By how much the fluid shrinks down to the coldest that it must stay liquid at. The stand-pipe must hold this much at filling, or air is drawn in.',
    },
    rise: {
      label: 'Rise in the stand-pipe',
      quantity: 'size',
      symbol: 'h',
      explain:
        'Above the level at filling, at the hottest, as if the pipe did not grow: the safe figure, for the room that you leave. Empty without a stand-pipe.',
    },
    likelyRise: {
      label: 'Rise in the stand-pipe that you will see',
      quantity: 'size',
      explain:
        'The same with the growth of the pipe, which makes room for a part of the fluid. Mark this one: a level that stands lower tells of a leak. The range is how far the wall warms along with the fluid. Empty without a stand-pipe.',
    },
    fillLevel: {
      label: 'Height to fill the stand-pipe to',
      quantity: 'size',
      symbol: 'h_f',
      explain:
        'Above the top of the loop, at the temperature when filling: as far as the level falls down to the coldest. Less, and the loop draws air. Empty without a stand-pipe.',
    },
    standpipeLength: {
      label: 'Length of stand-pipe to buy',
      quantity: 'size',
      symbol: '\\ell_s',
      explain:
        'The height to fill to, and above it the free height that you gave, or the rise and 50 mm (2 in) where that is more. Empty without a stand-pipe.',
    },
    headspace: {
      label: 'Air space to leave',
      quantity: 'volume',
      explain:
        'Left at the high point under a vent when filling: the expansion, and never less than 3 % of the volume. Empty with a stand-pipe.',
    },
    fullAt: {
      label: 'Stand-pipe or air space full at',
      quantity: 'temperature',
      symbol: 'T_{\\text{full}}',
      explain:
        'The loop temperature at which the room for expansion is used up. A limit thermostat that the cable and the pipe would let stand higher must be set no higher than this, or the loop spills on the day that it is needed.',
    },
    pipeGrowth: {
      label: 'Growth of the longest run',
      quantity: 'size',
      symbol: '\\Delta L',
      explain:
        'By how much the longest straight run of pipe grows from the coldest to the hottest. Let it slide on its supports and leave this much room at the ends.',
    },
  },
  formulas: [
    {
      tex: String.raw`V = \tfrac{\pi}{4}\,D_i^2\,L,\qquad m = \rho(T_{\text{fill}})\,V`,
      words:
        'Volume is the bore of the pipe, of inside diameter Di, times the length. Mass is density times volume.',
      cites: [cite('iapws-sr6', 'density of water'), cite('melinder2010', 'density of glycol mixes')],
    },
    {
      tex: String.raw`\Delta V = V\left(\frac{\rho(T_{\text{fill}})}{\rho(T_{\text{hot}})} - 1\right),\qquad h = \frac{\Delta V}{\tfrac{\pi}{4}\,d_s^2}`,
      words:
        'The mass stays the same, so the volume grows as the density falls. What does not fit in the pipe stands in the stand-pipe of inside diameter ds.',
      cites: [cite('melinder2010', 'density by temperature'), cite('iapws-sr6', 'density by temperature')],
    },
    {
      tex: String.raw`h_{\text{likely}} = \frac{\Delta V - 3\,\alpha\,V\,(T_{\text{hot}} - T_{\text{fill}})}{\tfrac{\pi}{4}\,d_s^2}`,
      words:
        'A pipe that grows by its coefficient of expansion α along each side holds three times as much more by volume; what is left over rises in the stand-pipe.',
      cites: [cite('pvc-supplier', 'expansion 5.2 to 5.4e-5 per K')],
    },
    {
      tex: String.raw`\ell_s = h_f + \max(h + 0.05\,\text{m},\;h_{\text{free}}),\qquad h_f = \frac{V}{\tfrac{\pi}{4}\,d_s^2}\left(1 - \frac{\rho(T_{\text{fill}})}{\rho(T_{\text{cold}})}\right)`,
      words:
        'The stand-pipe must hold what the fluid shrinks by, and above that what it swells by and a little more.',
      cites: [
        cite('melinder2010', 'density by temperature'),
        cite('assumption', 'design rule: 50 mm free above the highest level'),
      ],
    },
    {
      tex: String.raw`V\left(\frac{\rho(T_{\text{fill}})}{\rho(T_{\text{full}})} - 1\right) = V_{\text{room}}`,
      words:
        'The stand-pipe or the air space is full at the temperature at which the fluid has swollen by the room that there is.',
      cites: [cite('melinder2010', 'density by temperature'), cite('iapws-sr6', 'density by temperature')],
    },
    {
      tex: String.raw`\Delta L = \alpha\,L_{\text{run}}\,(T_{\text{hot}} - T_{\text{cold}})`,
      words:
        'Plastic pipe grows by its coefficient of expansion times its length and the change of temperature.',
      cites: [cite('pvc-supplier', 'expansion 5.2 to 5.4e-5 per K')],
    },
  ],
  cites: [
    cite('assumption', 'air space of at least 3 %: about twice what 30 % glycol swells from 10 to 40 °C'),
  ],
  cautions: ['open-loop', 'heat-and-plastic'],
  compute({ bench }) {
    const { loop, mix } = bench;
    const fluid = loopMix(bench);
    const length = loopLength(bench);
    const volume = loopVolume(bench);
    const density = fluidDensity(fluid, loop.fillTemperature);
    const fluidMass = density * volume;
    const pipeMass = loopWallMass(bench);
    // A loop that was filled warmer than it is said to get has no expansion; that it is wrong is said below.
    const hottest = Math.max(loop.hottest, loop.fillTemperature);
    const smallest =
      fluid.antifreeze === 'none' ? densestWater : Math.max(mix.protectTo, fluid.coldestLiquid);
    const coldest = Math.min(smallest, loop.fillTemperature);
    const expansionVolume = volume * (density / fluidDensity(fluid, hottest) - 1);
    // Very weak mixes swell a little as they come near to freezing, as water does: then nothing is drawn in.
    const contractionVolume = Math.max(0, volume * (1 - density / fluidDensity(fluid, coldest)));
    const bore = (Math.PI / 4) * loop.standpipeDiameter ** 2;
    const rise = expansionVolume / bore;
    /** Above the level at filling, with a pipe that grows by this much of its coefficient. */
    const riseWith = (growth: number): number =>
      rise - (3 * growth * pipeOf(bench).expansion * volume * (hottest - loop.fillTemperature)) / bore;
    const fillLevel = contractionVolume / bore;
    const hasStandpipe = loop.expansion === 'standpipe';
    const headspace = Math.max(expansionVolume, leastHeadspace * volume);
    const room = loop.expansion === 'standpipe' ? bore * loop.standpipeHeight : headspace;
    const full = fullAt(fluid, loop.fillTemperature, volume, room);
    const { highestService } = pipeOf(bench);
    const warnings: Warning[] = [];
    if (loop.fillTemperature > loop.hottest) {
      const text = sentence`The loop is filled at ${amount(loop.fillTemperature, 'temperature')} and is said to get no warmer than ${amount(loop.hottest, 'temperature')}. Correct the one or the other: the room for expansion is worked out between them.`;
      warnings.push(stop('fill-above-hottest', text));
    }
    if (loop.expansion === 'standpipe' && rise > loop.standpipeHeight) {
      const text = sentence`The level would rise ${amount(rise, 'size')} and the stand-pipe has ${amount(loop.standpipeHeight, 'size')} of free height: it would spill. Take a wider or a taller stand-pipe, and let its overflow run into a can.`;
      warnings.push(stop('standpipe-too-short', text));
    }
    // Middle to middle of the two runs along the bench; a straight run has no other beside it.
    const apart = Math.max(0, bench.frame.width - 2 * loop.inset);
    const thick = pipeOf(bench).outsideDiameter + 2 * bench.cable.diameter;
    if (loop.run !== 'straight' && apart < thick) {
      const text = sentence`The two runs of pipe would lie ${amount(apart, 'size')} apart, middle to middle, and a wound pipe is ${amount(thick, 'size')} thick. Set the loop nearer to the edge of the bench, or lay one straight run.`;
      warnings.push(stop('runs-touch', text));
    }
    if (loop.expansion === 'headspace') {
      const text = sentence`Leave ${amount(headspace, 'volume')} of air at the high point of the loop under a vent that stays open. A full pipe without it bursts at a joint.`;
      warnings.push(care('headspace', text));
    }
    return {
      figures: {
        length: { value: length },
        volume: { value: volume },
        fluidMass: { value: fluidMass },
        pipeMass: { value: pipeMass },
        filledMassPerLength: { value: (fluidMass + pipeMass) / length },
        heatCapacity: { value: loopHeatCapacity(bench) },
        expansionVolume: { value: expansionVolume },
        contractionVolume: { value: contractionVolume },
        rise: hasStandpipe ? { value: rise } : null,
        likelyRise: hasStandpipe
          ? {
              value: riseWith(1),
              low: riseWith(growthSpread[1]),
              high: riseWith(leastFollowing * growthSpread[0]),
            }
          : null,
        fillLevel: hasStandpipe ? { value: fillLevel } : null,
        standpipeLength: hasStandpipe
          ? { value: fillLevel + Math.max(rise + freeAtTop, loop.standpipeHeight) }
          : null,
        headspace: loop.expansion === 'headspace' ? { value: headspace } : null,
        fullAt:
          full === null || full > highestService
            ? { value: highestService, beyond: 'above' }
            : { value: full },
        pipeGrowth: {
          value: longestRun(bench) * pipeOf(bench).expansion * (hottest - mix.protectTo),
        },
      },
      warnings,
    };
  },
});
