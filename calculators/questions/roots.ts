import { rootLayers } from '../bench/assemble.ts';
import { mediumVolume } from '../bench/geometry.ts';
import { nightOf, summaryOf } from '../bench/night.ts';
import { expectedParameters } from '../bench/priors.ts';
import { likely } from '../bench/range.ts';
import { designRanges } from '../bench/rest-ranges.ts';
import { designRest } from '../bench/steady.ts';
import { reading, thermalFields } from '../bench/thermal-fields.ts';
import { amount, calculator, sentence, type Warning } from '../calculator.ts';
import { ratedPower } from '../electric/cable.ts';
import { mediumFusionHeat, waterShareOf } from '../properties/medium.ts';
import { cite } from '../sources.ts';
import { media } from '../tables/media.ts';
import { killingTemperature, plants } from '../tables/plants.ts';
import watts from './watts.ts';

/** Water in a medium is counted with this density [kg/m³]. */
const waterDensity = 1000;

/** How far above the temperature that killed roots a grower should stay [K]; about the error of a thermometer in a
 * pot and the spread between plants (assumption). */
const margin = 2;

export default calculator({
  id: 'roots',
  question: 'Do my roots need heat?',
  summary:
    'How cold the roots get on the night you build for, without heat and with it, if that night never ended; and what the water in the pots is worth on a night that ends.',
  reads: [
    'plants.kind',
    'plants.rootAge',
    ...watts.reads,
    ...reading('place.coldHours', ...thermalFields).filter(
      (path) => !(watts.reads as readonly string[]).includes(path),
    ),
  ],
  figures: {
    withoutHeat: {
      label: 'Coldest roots without heat',
      quantity: 'temperature',
      explain: 'The coldest layer of the root zone with the cable off.',
    },
    heatNeeded: {
      label: 'Do they need heat?',
      quantity: 'temperatureDifference',
      explain:
        'Both nights together: the one that you build for, which ends, and cold that stays. The number behind the words is how far the roots would fall below your limit without heat if the cold stayed; less than zero, they would not.',
    },
    withoutHeatOneNight: {
      label: 'Coldest roots without heat, one night',
      quantity: 'temperature',
      explain:
        'Through the cold snap that you build for, with the cable off: the wet pots give up heat of their own, and the night ends.',
    },
    withHeat: {
      label: 'Coldest roots with the heat as it is',
      quantity: 'temperature',
      explain: 'The coldest layer with the cable, the sensor and the set point that you have.',
    },
    under: {
      label: 'Air under the bench with the heat',
      quantity: 'temperature',
      explain: 'What a thermometer under the bench, away from the pipe, would read.',
    },
    loop: {
      label: 'Loop with the heat',
      quantity: 'temperature',
      explain: 'The mean temperature of the fluid. It stands well above the air around it.',
    },
    limit: {
      label: 'Lowest root temperature you accept',
      quantity: 'temperature',
      explain: 'Your own limit, from the bench.',
    },
    killing: {
      label: 'Temperature that killed roots of this kind',
      quantity: 'temperature',
      explain:
        'As published for this kind and age of roots, the warmest where sources differ. Where nothing was found, −3.9 °C (25 °F), as of tender kinds: young roots die at temperatures that old ones live through.',
    },
    potWater: {
      label: 'Water in all the pots',
      quantity: 'mass',
      symbol: 'm',
      explain: 'Volume of the medium times the share of it that is water, at the moisture that you gave.',
    },
    freezingHeat: {
      label: 'Heat that this water gives as it freezes',
      quantity: 'energy',
      symbol: 'Q',
      explain:
        'All of it, of all layers. Do not count on the whole: the layer that is coldest has only its own third and falls below your limit when that is spent, while the others still have theirs. The calculator of a power cut follows each layer; its hours are the ones to count on.',
    },
    layerHeat: {
      label: 'Of that, the share of the coldest layer',
      quantity: 'energy',
      explain:
        'A third of the root zone, with a third of the water. When it is spent that layer is frozen through and cools fast.',
    },
    cableHours: {
      label: 'As much as the cable gives in',
      quantity: 'duration',
      symbol: 't',
      explain: 'The whole of it, at full power by the label, without a pause.',
    },
  },
  formulas: [
    ...watts.formulas,
    {
      tex: String.raw`m = \rho\,\theta\,V \qquad Q = m\,h \qquad t = \frac{Q}{P}`,
      words:
        'The water m in the pots is the density of water times the share θ of the medium that is water times the volume V of the medium. The heat Q that it gives as it freezes is its mass times the heat of freezing h. The time t is that heat over the power P of the cable.',
      cites: [cite('iapws-r10', 'ice at its melting point'), cite('agronomy978528', 'water held by media')],
    },
  ],
  cites: [
    ...plants.unknown.cites,
    cite('dirr-smith', 'young and old roots'),
    cite('havis1976', 'list by species, from memory'),
  ],
  cautions: ['no-flame'],
  compute(situation) {
    const { bench } = situation;
    const { withoutHeat: without, withHeat } = designRanges(situation);
    const rest = designRest(situation, 'thermostat');
    const t = (node: number): number => rest.temperatures[node] ?? NaN;
    const limit = bench.plants.lowestRootTemperature;
    const { kind, rootAge } = bench.plants;
    const medium = media[bench.pots.medium];
    const volume = mediumVolume(bench);
    const water = volume * waterShareOf(medium, bench.pots.moisture) * waterDensity;
    const freezing = volume * mediumFusionHeat(medium, bench.pots.moisture);
    const rated = ratedPower(bench.cable);
    const { t: killing, published } = killingTemperature(kind, rootAge);
    const night = nightOf(situation, expectedParameters(situation), { heat: false });
    const oneNight = summaryOf(situation, night).lowestRoots;
    const [passes, stays] = [amount(oneNight, 'temperature'), amount(without.value, 'temperature')];
    const verdict =
      oneNight < limit
        ? sentence`yes: without heat one such night takes them to ${passes}, and cold that stayed to ${stays}`
        : without.value < limit
          ? sentence`only if the cold stays: without heat one such night takes them to ${passes}, cold that stayed to ${stays}`
          : without.low < limit
            ? sentence`probably not: cold that stayed would take them to ${stays}, but they might come below your limit`
            : sentence`no: without heat even cold that stayed takes them to ${stays} only`;
    const warnings: Warning[] = [];
    const [accepted, kills] = [amount(limit, 'temperature'), amount(killing, 'temperature')];
    const above = amount(margin, 'temperatureDifference');
    if (limit <= killing) {
      warnings.push({
        code: 'limit-kills-roots',
        level: 'stop',
        text: published
          ? sentence`You accept roots at ${accepted}, but ${kills} has killed roots of this kind. Set the limit at least ${above} above that.`
          : sentence`You accept roots at ${accepted}, but ${kills} is taken to kill them. Set the limit at least ${above} above that.`,
      });
    } else if (limit < killing + margin) {
      warnings.push({
        code: 'limit-near-killing',
        level: 'care',
        text: published
          ? sentence`Your limit of ${accepted} is less than ${above} above the ${kills} that has killed roots of this kind.`
          : sentence`Your limit of ${accepted} is less than ${above} above the ${kills} that is taken to kill them.`,
      });
    }
    if (!published && kind !== 'unknown') {
      warnings.push({
        code: 'no-published-limit',
        level: 'care',
        text:
          rootAge === 'young'
            ? sentence`No temperature that kills young roots of this kind was found, so ${kills} is taken, as of the tender kinds. Ask your office before you trust the limit.`
            : sentence`No temperature that kills mature roots of this kind was found, so ${kills} is taken, as of the tender kinds. Ask your office before you trust the limit.`,
      });
    }
    if (withHeat.value < limit) {
      warnings.push({
        code: 'roots-below-limit',
        level: 'care',
        text: sentence`On a night at ${amount(rest.outside, 'temperature')} that lasted, the coldest roots would come to ${amount(withHeat.value, 'temperature')}, below your limit of ${accepted}.`,
      });
    }
    return {
      figures: {
        withoutHeat: likely(without),
        heatNeeded: { value: limit - without.value, words: verdict },
        withoutHeatOneNight: { value: oneNight },
        withHeat: likely(withHeat),
        under: { value: t(rest.body.under) },
        loop: { value: t(rest.body.loop) },
        limit: { value: limit },
        killing: { value: killing },
        potWater: { value: water },
        freezingHeat: { value: freezing },
        layerHeat: { value: freezing / rootLayers },
        cableHours: rated > 0 ? { value: freezing / rated } : null,
      },
      warnings,
    };
  },
});
