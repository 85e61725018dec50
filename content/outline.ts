/**
 * The chapters that the guide takes a beginner through, in order: the table of contents. Each answers one question.
 * A chapter is written when content/chapters has a file of its id; until then every page that leads to it says that
 * it is not written yet.
 */
export interface Step {
  /** File name of the chapter in content/chapters, without its ending, and its name in addresses: never changed. */
  readonly id: string;
  /** The reader's question. A chapter that is written gives its own words for it. */
  readonly question: string;
  /** What the reader has in hand after it. */
  readonly gives: string;
  /** Ids of the calculators that belong here, in the order of use. */
  readonly calculators: readonly string[];
}

/** Chapters that belong together, under a heading of their own. */
export interface Part {
  readonly title: string;
  readonly steps: readonly Step[];
}

export const parts: readonly Part[] = [
  {
    title: 'Decide',
    steps: [
      {
        id: 'roots',
        question: 'What does winter do to my roots?',
        gives: 'The coldest that they get without heat, beside what they can bear: whether to heat at all.',
        calculators: ['roots'],
      },
      {
        id: 'heat',
        question: 'How does heat leave a bench?',
        gives: 'Three ways out, each with its watts.',
        calculators: ['heat', 'watts'],
      },
      {
        id: 'cover',
        question: 'What should I close first?',
        gives: 'Cover, skirt and floor, in the order of what each saves.',
        calculators: ['first'],
      },
      {
        id: 'ways',
        question: 'Which way of heating suits my bench?',
        gives: 'Water loop, bare cable, mat, lamp and tank heater side by side, and why never a flame.',
        calculators: ['ways'],
      },
    ],
  },
  {
    title: 'Build',
    steps: [
      {
        id: 'loop',
        question: 'How do I build and fill the loop?',
        gives: 'Pipe, water, weight on each support, room to expand, and the heat that it stores.',
        calculators: ['loop'],
      },
      {
        id: 'antifreeze',
        question: 'How much antifreeze do I need?',
        gives: 'A mix for your coldest night, how to mend a weak one, and what to do with the old.',
        calculators: ['mix'],
      },
      {
        id: 'winding',
        question: 'How do I wind the cable?',
        gives: 'Even turns, all one way round, that never touch.',
        calculators: ['winding', 'sheath'],
      },
      {
        id: 'circuit',
        question: 'Is my circuit right?',
        gives: 'Current, breaker, wire and the device that cuts off in time.',
        calculators: ['circuit'],
      },
      {
        id: 'sensors',
        question: 'Where does the sensor go, and what do I set?',
        gives: 'One place, one set point and two alarm limits.',
        calculators: ['settings'],
      },
    ],
  },
  {
    title: 'Know the worst',
    steps: [
      {
        id: 'night',
        question: 'What happens on the coldest night?',
        gives: 'Roots, water and power hour by hour through a hard frost.',
        calculators: ['night', 'tonight'],
      },
      {
        id: 'outage',
        question: 'What do I do when the power fails?',
        gives: 'How many hours there are, and what to do in them.',
        calculators: ['outage', 'warm-up'],
      },
      {
        id: 'season',
        question: 'What does a winter cost?',
        gives: 'Energy and money by month, and what to change first.',
        calculators: ['season'],
      },
    ],
  },
  {
    title: 'Prove it and keep it',
    steps: [
      {
        id: 'proof',
        question: 'How do I prove it on a mild night?',
        gives: 'Three thermometers, and what they say about a hard night.',
        calculators: ['readings'],
      },
      {
        id: 'care',
        question: 'How do I look after it until spring?',
        gives: 'A weekly log, warm days, wet leaves, the alarm, and how to shut down.',
        calculators: [],
      },
      {
        id: 'worksheet',
        question: 'How do I read my worksheet?',
        gives: 'Two printed sides for the shed wall, line by line.',
        calculators: [],
      },
    ],
  },
];

/** All chapters, in order. */
export const outline: readonly Step[] = parts.flatMap(({ steps }) => steps);
