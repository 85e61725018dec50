import type { Block } from './blocks.ts';
import { field, figureOf, shown, value, type Facts } from './facts.ts';
import { bold, run, type Run } from './text.ts';

/**
 * What to do, in the order of doing, with the bench's own numbers: common practice without a published source, told at
 * length in the guide's chapters on the power cut and on the care of a bench.
 */
export interface Steps {
  readonly title: string;
  readonly steps: readonly (readonly Run[])[];
}

const step = (...parts: readonly (string | Run)[]): readonly Run[] =>
  parts.map((one) => (typeof one === 'string' ? run(one) : one));

function powerFails(facts: Facts): Steps {
  const hours = figureOf(facts, 'outage.hoursToRootLimit');
  const outside = shown(facts, 'outage.outside');
  const loop = figureOf(facts, 'outage.hoursToLoopFreezing');
  // The bad end of what is likely is what a grower plans for.
  const until = hours ? (hours.figure.low ?? hours.figure.value) : null;
  const counted = hours && !hours.figure.beyond && until !== null && outside;
  return {
    title: 'The power fails',
    steps: [
      step('Note hour and roots.'),
      step('Breaker or ground-fault device off? Unplug, reset once. Trips again: call.'),
      step('Close and cover. No flame.'),
      ...(counted
        ? [step(`At ${outside} count on `, bold(value(facts, until, 'duration')), ', then carry out.')]
        : []),
      step(
        loop && !loop.figure.beyond
          ? 'Power back: look for leaks, then plug in.'
          : 'Power back: look first, then plug in.',
      ),
    ],
  };
}

function alarmSounds(facts: Facts): Steps {
  return {
    title: 'The alarm sounds',
    steps: [
      step('Low, ', bold(field(facts, 'control.alarmLow')), ', no power: as on the left.'),
      step('Loop cold: set point ', bold(field(facts, 'control.setPoint')), '? Call for help.'),
      step('Loop warm: shut gaps, cover more.'),
      step('High, ', bold(field(facts, 'control.alarmHigh')), ', in sun: open up.'),
      step('High, no sun: unplug, leave off.'),
    ],
  };
}

function warmDay(facts: Facts): Steps {
  const covered = facts.situation.bench.cover.kind !== 'none';
  return {
    title: 'A warm day',
    steps: [
      step('Roots wake above ', bold(field(facts, 'plants.growthTemperature')), '.'),
      step(
        covered ? 'Sun, no frost: cover back by mid-morning.' : 'Sun, no frost: vents open by mid-morning.',
      ),
      step('Too warm: shade.'),
      step('Thermostat stays on.'),
      step('Shut 2 h before sunset.'),
      step('Frozen plants thaw in the shade.'),
    ],
  };
}

/** What to do when the power fails, when the alarm sounds, and on a warm day. */
export const stepsOf = (facts: Facts): readonly Steps[] => [
  powerFails(facts),
  alarmSounds(facts),
  warmDay(facts),
];

/** Steps under their title. */
export const stepBlocks = ({ title, steps }: Steps): Block[] => [
  { kind: 'heading', text: title },
  { kind: 'list', numbered: true, entries: steps },
];
