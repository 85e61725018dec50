import type { Block } from './blocks.ts';
import { field, figureOf, shown, value, type Facts } from './facts.ts';
import { say } from '../../calculators/say.ts';
import { runsOf, type Run } from './text.ts';

/**
 * What to do, in the order of doing, with the bench's own numbers: common practice without a published source, told at
 * length in the guide's chapters on the power cut and on the care of a bench.
 */
export interface Steps {
  readonly title: string;
  readonly steps: readonly (readonly Run[])[];
}

function powerFails(facts: Facts): Steps {
  const hours = figureOf(facts, 'outage.hoursToRootLimit');
  const outside = shown(facts, 'outage.outside');
  const loop = figureOf(facts, 'outage.hoursToLoopFreezing');
  // The bad end of what is likely is what a grower plans for.
  const { manner } = facts;
  const until = hours ? (hours.figure.low ?? hours.figure.value) : null;
  const counted = hours && !hours.figure.beyond && until !== null && outside;
  return {
    title: say(manner, 'The power fails'),
    steps: [
      runsOf(manner, 'Note hour and roots.'),
      runsOf(manner, 'Breaker or ground-fault device off? Unplug, reset once. Trips again: call.'),
      runsOf(manner, 'Close and cover. No flame.'),
      ...(counted
        ? [
            runsOf(manner, 'At {outside} count on *{hours}*, then carry out.', {
              outside,
              hours: value(facts, until, 'duration'),
            }),
          ]
        : []),
      runsOf(
        manner,
        loop && !loop.figure.beyond
          ? 'Power back: look for leaks, then plug in.'
          : 'Power back: look first, then plug in.',
      ),
    ],
  };
}

function alarmSounds(facts: Facts): Steps {
  const { manner } = facts;
  const level = (path: 'control.alarmLow' | 'control.alarmHigh' | 'control.setPoint') => ({
    level: field(facts, path),
  });
  return {
    title: say(manner, 'The alarm sounds'),
    steps: [
      runsOf(manner, 'Low, *{level}*, no power: as on the left.', level('control.alarmLow')),
      runsOf(manner, 'Loop cold: set point *{level}*? Call for help.', level('control.setPoint')),
      runsOf(manner, 'Loop warm: shut gaps, cover more.'),
      runsOf(manner, 'High, *{level}*, in sun: open up.', level('control.alarmHigh')),
      runsOf(manner, 'High, no sun: unplug, leave off.'),
    ],
  };
}

function warmDay(facts: Facts): Steps {
  const { manner } = facts;
  const covered = facts.situation.bench.cover.kind !== 'none';
  return {
    title: say(manner, 'A warm day'),
    steps: [
      runsOf(manner, 'Roots wake above *{level}*.', { level: field(facts, 'plants.growthTemperature') }),
      runsOf(
        manner,
        covered ? 'Sun, no frost: cover back by mid-morning.' : 'Sun, no frost: vents open by mid-morning.',
      ),
      runsOf(manner, 'Too warm: shade.'),
      runsOf(manner, 'Thermostat stays on.'),
      runsOf(manner, 'Shut 2 h before sunset.'),
      runsOf(manner, 'Frozen plants thaw in the shade.'),
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
