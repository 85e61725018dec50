import { designOutside } from '../../calculators/bench/place.ts';
import { rootState, type RootState } from '../../calculators/bench/root-state.ts';
import { messages, say } from '../../calculators/say.ts';
import type { Cell } from '../../calculators/calculator.ts';
import type { Block, TableRow } from './blocks.ts';
import { figureOf, value, type Facts } from './facts.ts';

/** One outside temperature: what to expect with heat, and how long without. Base units; null where it does not arise. */
interface Rung {
  readonly outside: number;
  readonly roots: number | null;
  readonly on: number | null;
  /** Until the roots are at their limit [s]. */
  readonly hold: number | null;
  /** Until the loop turns to slush [s]. */
  readonly slush: number | null;
  /** The night that the bench is built for. */
  readonly design: boolean;
}

/** Steps this near to the night that is built for make way for it [K]. */
const beside = 2;
/** One step is shown that is colder than any night by this much [K]. */
const beyond = 5;

const number = (cell: Cell | undefined): number | null => (typeof cell === 'number' ? cell : null);

function designRung(facts: Facts): Rung {
  const figure = (name: string): number | null => {
    const found = figureOf(facts, name)?.figure;
    return found && !found.beyond ? found.value : null;
  };
  const [mean, full] = [figure('night.meanPower'), figure('watts.installed')];
  return {
    outside: designOutside(facts.situation),
    roots: figure('night.lowestRootTemperature'),
    on: mean !== null && full ? Math.min(1, mean / full) : null,
    hold: figure('outage.hoursToRootLimit'),
    slush: figure('outage.hoursToLoopFreezing'),
    design: true,
  };
}

/** From mild to hard: the steps of the calculators, as far as the weather goes, and the night that is built for. */
function rungsOf(facts: Facts): readonly Rung[] {
  const { night, outage } = facts.answers;
  const built = designRung(facts);
  const holds = outage.tables?.['ladder']?.rows ?? [];
  const rungs = (night.tables?.['ladder']?.rows ?? []).flatMap((row): Rung[] => {
    const outside = number(row['outside']);
    if (outside === null || Math.abs(outside - built.outside) < beside) return [];
    const hold = holds.find((one) => one['outside'] === outside);
    return [
      {
        outside,
        roots: number(row['roots']),
        on: number(row['on']),
        hold: number(hold?.['roots']),
        slush: number(hold?.['loopFreezing']),
        design: false,
      },
    ];
  });
  const coldest = Math.min(built.outside, facts.situation.station.recordLowest) - beyond;
  const ordered = [...rungs, built].toSorted((a, b) => b.outside - a.outside);
  const last = ordered.findIndex(({ outside }) => outside <= coldest);
  return last < 0 ? ordered : ordered.slice(0, last + 1);
}

/** What to do, short enough for a row; the guide's page for tonight says it at length. */
const actions = messages({
  calm: 'Nothing.',
  freezing: 'Keep everything shut.',
  near: 'Cover, look every 2 h.',
  below: 'Cover, heat, carry out.',
} satisfies Record<RootState, string>);

/** The steps of outside temperatures as a table: what to expect, what to do, and how long without power. */
export function ladderBlock(facts: Facts): Block {
  const { manner } = facts;
  const days = say(manner, 'days');
  const limit = facts.situation.bench.plants.lowestRootTemperature;
  const rungs = rungsOf(facts);
  const slush = rungs.some((rung) => rung.slush !== null);
  const said = (
    amount: number | null,
    quantity: 'temperature' | 'share' | 'duration',
    none: string,
  ): string => (amount === null ? none : value(facts, amount, quantity));
  const rows = rungs.map((rung): TableRow => ({
    strong: rung.design,
    cells: [
      value(facts, rung.outside, 'temperature'),
      said(rung.roots, 'temperature', '–'),
      said(rung.on, 'share', '–'),
      rung.roots === null ? '–' : say(manner, actions[rootState(rung.roots, limit)]),
      said(rung.hold, 'duration', days),
      ...(slush ? [said(rung.slush, 'duration', days)] : []),
    ],
  }));
  return {
    kind: 'table',
    columns: [
      { head: say(manner, 'Outside'), share: 2.3, large: true },
      { head: say(manner, 'Roots'), share: 1.4 },
      { head: say(manner, 'Cable on'), share: 1.4 },
      { head: say(manner, 'What to do'), share: 3.4 },
      { head: say(manner, 'Power out'), share: 2.2, large: true },
      ...(slush ? [{ head: say(manner, 'Loop slush'), share: 1.8 }] : []),
    ],
    rows,
  };
}
