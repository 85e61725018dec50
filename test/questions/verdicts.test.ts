import { describe, expect, it } from 'vitest';
import { outageHorizon } from '../../calculators/bench/outage.ts';
import type { Answer, Cell, Sentence } from '../../calculators/calculator.ts';
import type { Manner } from '../../calculators/quantities/show.ts';
import first from '../../calculators/questions/first.ts';
import settings from '../../calculators/questions/settings.ts';
import { restOn } from '../../calculators/bench/steady.ts';
import night from '../../calculators/questions/night.ts';
import outage from '../../calculators/questions/outage.ts';
import roots from '../../calculators/questions/roots.ts';
import season from '../../calculators/questions/season.ts';
import tonight from '../../calculators/questions/tonight.ts';
import watts from '../../calculators/questions/watts.ts';
import ways from '../../calculators/questions/ways.ts';
import { figureText, rangeText, sentenceText } from '../../site/widgets/text.ts';
import { codesOf, valueOf } from '../support/answers.ts';
import { expectNear } from '../support/near.ts';
import { inventedStation, metricRegion, situation, usSituation } from '../support/situations.ts';

const manner: Manner = { system: 'metric', locale: 'en' };
const plain = (text: Sentence): string => sentenceText(text, manner).replaceAll('\u202f', ' ');
const warningOf = ({ warnings }: Answer, code: string): string =>
  plain(warnings.find((one) => one.code === code)?.text ?? []);
const wordsOf = (cell: Cell | undefined): string => (Array.isArray(cell) ? plain(cell as Sentence) : '');

describe('whether the roots need heat', () => {
  const verdict = (changes: Parameters<typeof situation>[0]): string => {
    const { figures } = roots.compute(situation(changes));
    return figureText(figures.heatNeeded, 'temperatureDifference', manner);
  };

  it('is said of one night and of cold that stays together', () => {
    expect(verdict({ plants: { lowestRootTemperature: 3 } })).toMatch(/^yes: without heat one such night/u);
    expect(verdict({ pots: { moisture: 1 }, place: { coldHours: 3600 } })).toMatch(
      /^only if the cold stays/u,
    );
    expect(verdict({ place: { houseKind: 'held', houseMinimum: 8 } })).toMatch(/^no: /u);
  });

  it('tells one night by the night itself, and cold that stays by the bench at rest', () => {
    const one = situation({});
    const { figures } = roots.compute(one);
    const { figures: ofNight } = night.compute(one);
    expectNear(valueOf(figures.withoutHeatOneNight), valueOf(ofNight.lowestWithoutHeat), 1e-9);
    expectNear(
      valueOf(figures.heatNeeded),
      one.bench.plants.lowestRootTemperature - valueOf(figures.withoutHeat),
      1e-9,
    );
  });

  it('counts the heat of freezing by layers: the coldest has a third of it', () => {
    const { figures } = roots.compute(situation({}));
    expectNear(valueOf(figures.layerHeat), valueOf(figures.freezingHeat) / 3, 1);
  });
});

describe('the coldest roots of a winter', () => {
  it('are on a night that ends no colder than in the same cold without end, at the cold ends of both ranges', () => {
    const cold = { place: { designNight: 'own', ownLowest: -16 }, pots: { moisture: 0.2 } } as const;
    for (const changes of [{}, cold]) {
      const one = situation(changes);
      const { lowestRootTemperature: ofNight } = night.compute(one).figures;
      const { withHeat } = roots.compute(one).figures;
      expect(ofNight?.low).toBeGreaterThanOrEqual(Math.min(valueOf(ofNight), withHeat?.low ?? NaN) - 1e-6);
    }
  });

  it('are the colder of the night that is built for and an ordinary winter', () => {
    const one = situation({});
    const { figures } = night.compute(one);
    const worse = valueOf(figures.coldestOfWinter);
    expect(worse).toBeLessThanOrEqual(valueOf(figures.lowestRootTemperature));
    // The winter is run in longer steps here than there.
    const winter = valueOf(season.compute(one).figures.lowestRoots);
    expect(worse).toBeLessThan(Math.min(valueOf(figures.lowestRootTemperature), winter) + 0.2);
  });
});

describe('tonight', () => {
  it('without a forecast is the night that the bench is built for, wherever it is told', () => {
    for (const changes of [{}, { control: { sensor: 'pot', setPoint: 2 } }] as const) {
      const here = tonight.compute(situation(changes)).figures;
      const there = night.compute(situation(changes)).figures;
      expectNear(valueOf(here.lowestRootTemperature), valueOf(there.lowestRootTemperature), 1e-9);
      expectNear(valueOf(here.lowestOutside), valueOf(there.outside), 1e-9);
    }
  });

  it('says what to set: nothing on a mild night, more on a harder one, and that keeps the roots', () => {
    const covered = { cover: { kind: 'film' }, control: { sensor: 'pot', setPoint: 1 } } as const;
    const set = (forecast: string) =>
      tonight.compute(situation({ ...covered, outlook: { forecast } })).figures.whatToSet;
    expect(wordsOf(set('8/4')?.words ?? [])).toMatch(/^no heat needed/u);
    const found = set('2/-12, 0/-12');
    if (found) {
      const { value } = found;
      const then = situation({
        ...covered,
        control: { sensor: 'pot', setPoint: value },
        outlook: { forecast: '2/-12, 0/-12' },
      });
      const { lowestRootTemperature: lowest } = tonight.compute(then).figures;
      expect(valueOf(lowest)).toBeGreaterThanOrEqual(then.bench.plants.lowestRootTemperature - 0.05);
    }
    // No thermostat does what the cable cannot.
    expect(set('-20/-40, -20/-40')).toBeNull();
  });

  it('follows a forecast of several days to its end', () => {
    const forecast = '4/0, 4/0, 4/0, 4/0, 2/-14';
    const { figures, tables } = tonight.compute(situation({ outlook: { forecast } }));
    expect(valueOf(figures.lowestOutside)).toBe(-14);
    expect(valueOf(figures.lowestAfter)).toBeGreaterThan(4 * 24 * 3600);
    const rows = tables?.['hours']?.rows ?? [];
    expect(rows.length).toBeGreaterThan(20);
    expect(Math.min(...rows.map(({ outside }) => Number(outside)))).toBeLessThan(-8);
  });

  it('is told by its low alone, after an ordinary afternoon', () => {
    const alone = tonight.compute(situation({ outlook: { forecast: '-14' } }));
    const high = Math.max(...inventedStation.months.slice(0, 1).map(({ meanHigh }) => meanHigh));
    const both = tonight.compute(situation({ outlook: { forecast: `${high}/-14` } }));
    expect(alone.figures).toEqual(both.figures);
    const worded = tonight.compute(situation({ outlook: { forecast: 'tonight: −14 °C' } }));
    expect(worded.figures).toEqual(both.figures);
    for (const forecast of ['minus 14', '-14 tonight', `${high}, -14`, `${high} −14`])
      expect(tonight.compute(situation({ outlook: { forecast } })).figures, forecast).toEqual(both.figures);
  });

  it('is never worse for a milder night, however each is typed', () => {
    const lowest = (forecast: string): number =>
      valueOf(tonight.compute(situation({ outlook: { forecast } })).figures.lowestRootTemperature);
    // From the mildest to the hardest: each has a high and a low that are no higher than those before it.
    const byColdness = ['8/-1', '3/-4', '3/-9', '1/-9', '0/-9', '-3/-9', '-5/-14'].map(lowest);
    for (const [index, here] of byColdness.slice(1).entries())
      expect(here).toBeLessThanOrEqual(byColdness[index]! + 0.05);
    // A mild frost after ordinary days has not frozen the pots before it begins.
    expect(lowest('-1/-4')).toBeGreaterThanOrEqual(lowest('-14') - 0.3);
  });

  it('asks for a minus that may have been forgotten', () => {
    expect(codesOf(tonight.compute(situation({ outlook: { forecast: '14' } })))).toContain(
      'care forecast-mild',
    );
    expect(codesOf(tonight.compute(situation({ outlook: { forecast: '-14' } })))).not.toContain(
      'care forecast-mild',
    );
  });

  it('has the jobs of the evening in its first rows, and nothing to do where nothing freezes', () => {
    const held = { cover: { kind: 'film' }, control: { sensor: 'pot', setPoint: 3 } } as const;
    const actions = (forecast: string): string[] =>
      (tonight.compute(situation({ ...held, outlook: { forecast } })).tables?.['hours']?.rows ?? []).map(
        (row) => wordsOf(row['action']),
      );
    const hard = actions('2/-14');
    const jobs = [/^Water pots that are dry/u, /^Close vents, cover and every gap/u, /^Last round/u];
    const rows = jobs.map((job) => hard.findIndex((action) => job.test(action)));
    expect(rows).toEqual([rows[0]!, rows[0]! + 1, rows[0]! + 2]);
    expect(rows[0]).toBeGreaterThanOrEqual(0);
    expect(hard).not.toContain('Nothing to do.');
    expect(new Set(actions('12/8'))).toEqual(new Set(['Nothing to do.']));
  });
});

describe('a power cut', () => {
  it('that never takes the roots to the limit says so in words, without a range of one number', () => {
    const mild = situation({ place: { houseKind: 'held', houseMinimum: 8 } });
    const { hoursToRootLimit } = outage.compute(mild).figures;
    expect(valueOf(hoursToRootLimit)).toBe(outageHorizon);
    expect(figureText(hoursToRootLimit, 'duration', manner)).toBe('not within ten days');
    expect(rangeText(hoursToRootLimit, 'duration', manner)).toBe('');
    const { columns } = outage.tables?.['ladder'] ?? {};
    expect(columns?.['roots']?.empty).toBe('not within ten days');
  });

  it('from pots that are frozen before it is told as two answers, with the reason', () => {
    const frosty = {
      ...situation({ plants: { lowestRootTemperature: -0.6 }, place: { houseOffset: 1 } }),
      station: {
        ...inventedStation,
        months: inventedStation.months.map(() => ({ meanLow: -4, meanHigh: 2 })),
      },
      region: metricRegion,
    };
    const answer = outage.compute(frosty);
    const { hoursToRootLimit: time } = answer.figures;
    expect(valueOf(time)).toBeLessThan(0.5 * 3600);
    expect(codesOf(answer)).toContain('care frozen-before-the-cut');
    expect(figureText(time, 'duration', manner)).toMatch(/^between .* and /u);
  });
});

describe('a winter too warm', () => {
  it('says of how many hours, on which difference it rests, and what open vents leave of it', () => {
    const answer = season.compute(situation({ place: { dayOffset: 8 } }));
    const { tooWarm, tooWarmVented } = answer.figures;
    expect(valueOf(tooWarmVented)).toBeLessThan(valueOf(tooWarm));
    const text = warningOf(answer, 'too-warm');
    expect(text).toContain('2160 h in all');
    expect(text).toContain('8.0 K above outside at midday');
  });
});

describe('advice', () => {
  it('of a mat says how uneven it leaves the roots', () => {
    const text = warningOf(ways.compute(situation({ cover: { kind: 'film' } })), 'needs-less');
    expect(text).toMatch(/its roots differ by/u);
  });
});

describe('the power in the strip over every page', () => {
  const told = (changes: Parameters<typeof situation>[0]): string =>
    figureText(watts.compute(situation(changes)).figures.headline, 'power', manner).replaceAll('\u202f', ' ');

  it('is no number where the air under the bench would have to be too warm for roots', () => {
    const hard = {
      place: { designNight: 'own', ownLowest: -20 },
      plants: { lowestRootTemperature: 2 },
    } as const;
    expect(told(hard)).toBe('not from below: cover the plants');
    expect(watts.compute(situation(hard)).figures.required).toBeNull();
  });

  it('says its range, and where the loop cannot bring it; that it counts only if the night lasted is its label', () => {
    expect(told({ cover: { kind: 'film' } })).toMatch(/^\d+ W \(\d+ W to \d+ W\)$/u);
    expect(watts.figures.headline.label).toMatch(/if the coldest night lasted$/u);
    const short = { cover: { kind: 'film' }, loop: { run: 'straight' } } as const;
    const { loop } = ways.compute(situation(short)).figures;
    expect(told(short).endsWith(', not by this loop')).toBe(loop === null);
  });
});

describe('a set point by the place of the sensor', () => {
  const one = situation({ control: { sensor: 'loop', setPoint: 4.5 }, cover: { kind: 'film' } });
  const { setInPot, setInAir } = settings.compute(one).figures;
  const [pot, air] = [setInPot, setInAir].map((figure) => figureText(figure, 'temperature', manner));

  it('is the same in every question that moves the sensor', () => {
    const rows = (answer: Answer, table: string, column: string): string[] =>
      (answer.tables?.[table]?.rows ?? []).map((row) => sentenceText(row[column] as Sentence, manner));
    const ofNight = rows(night.compute(one), 'ways', 'bench');
    expect(ofNight).toContain(`Sensor in a pot, at ${pot}`);
    expect(ofNight).toContain(`Sensor in the air under the bench, at ${air}`);
    expect(rows(season.compute(one), 'savings', 'change')).toContain(`The sensor in a pot, at ${pot}`);
    const moved = situation({ control: { sensor: 'pot', setPoint: valueOf(setInPot) } });
    const { coldestRoots } = restOn(moved, 'thermostat');
    expectNear(valueOf(first.compute(one).figures.sensor), coldestRoots, 1e-3);
  });

  it('is never advised lower on a loop, nor in a pot below what the roots ask for', () => {
    for (const control of [
      { sensor: 'loop', setPoint: 4.5 },
      { sensor: 'pot', setPoint: valueOf(setInPot) },
    ] as const) {
      const { figures, tables } = season.compute(situation({ control, cover: { kind: 'film' } }));
      const rows = tables?.['savings']?.rows ?? [];
      const lower = rows.find((row) => wordsOf(row['change']).includes('(against the advice of this guide)'));
      expect(lower).toBeDefined();
      if (figures.largestSaving) expect(figures.largestSaving.value).not.toBe(lower?.['money']);
    }
  });

  it('takes more power in a winter the higher it is, and the table has the degrees of the reader', () => {
    const { tables } = season.compute(situation({ control: { sensor: 'pot', setPoint: 3 } }));
    const rows = tables?.['setPoints']?.rows ?? [];
    expect(rows.map((row) => row['setPoint'])).toEqual([2, 3, 4, 5, 6]);
    const energy = rows.map((row) => Number(row['energy']));
    expect(energy).toEqual(energy.toSorted((a, b) => a - b));
    const us = season.compute(usSituation({ control: { sensor: 'pot', setPoint: 3 } })).tables?.['setPoints'];
    expect(us?.rows.map((row) => Math.round((Number(row['setPoint']) * 9) / 5 + 32))).toEqual([
      36, 38, 40, 42,
    ]);
  });
});
