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
  /** Everyday words that readers type into the search where they mean this chapter, beside those of its question. */
  readonly asked: readonly string[];
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
        asked: ['do I need heat', 'no electricity', 'cheapest', 'unheated'],
        calculators: ['roots'],
      },
      {
        id: 'heat',
        question: 'How does heat leave a bench?',
        gives: 'Three ways out, each with its watts.',
        asked: ['draught', 'heat loss'],
        calculators: ['heat', 'watts'],
      },
      {
        id: 'cover',
        question: 'What should I close first?',
        gives: 'Cover, skirt and floor, in the order of what each saves.',
        asked: ['insulate', 'bubble wrap', 'draughts'],
        calculators: ['first'],
      },
      {
        id: 'ways',
        question: 'Which way of heating suits my bench?',
        gives: 'Water loop, bare cable, mat, lamp and tank heater side by side, and why never a flame.',
        asked: ['heater', 'heat mat', 'which heater', 'candle', 'paraffin'],
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
        asked: [
          'stand-pipe',
          'overflow',
          'overflows',
          'overflowed',
          'runs over',
          'ran over',
          'spilled',
          'leak',
          'leaks',
          'leaking',
          'drips',
          'burst',
          'burst pipe',
        ],
        calculators: ['loop'],
      },
      {
        id: 'antifreeze',
        question: 'How much antifreeze do I need?',
        gives: 'A mix for your coldest night, how to mend a weak one, and what to do with the old.',
        asked: ['top up', 'top up the mix', 'topping up', 'refill', 'glycol', 'burst', 'frozen pipe'],
        calculators: ['mix'],
      },
      {
        id: 'winding',
        question: 'How do I wind the cable?',
        gives: 'Even turns, all one way round, that never touch.',
        asked: ['wrap the cable', 'heat tape', 'heat cable'],
        calculators: ['winding', 'sheath'],
      },
      {
        id: 'circuit',
        question: 'Is my circuit right?',
        gives: 'Current, breaker, wire and the device that cuts off in time.',
        asked: ['trips', 'fuse', 'socket', 'extension cord', 'electrician'],
        calculators: ['circuit'],
      },
      {
        id: 'sensors',
        question: 'Where does the sensor go, and what do I set?',
        gives: 'One place, one set point, two alarms and the limit on the loop.',
        asked: ['thermometer', 'what temperature', 'dial', 'limit'],
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
        asked: ['tonight', 'cold tonight', 'frost warning', 'forecast', 'hard frost'],
        calculators: ['night', 'tonight'],
      },
      {
        id: 'outage',
        question: 'What do I do when the power fails?',
        gives: 'How many hours there are, and what to do in them.',
        asked: [
          'power cut',
          'power cuts',
          'power failure',
          'power is off',
          'no power',
          'blackout',
          'tripped',
          'generator',
        ],
        calculators: ['outage', 'warm-up'],
      },
      {
        id: 'season',
        question: 'What does a winter cost?',
        gives: 'Energy and money by month, and what to change first.',
        asked: ['bill', 'price', 'money', 'how much', 'electricity cost', 'save'],
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
        asked: ['test', 'measure', 'logger', 'thermometers'],
        calculators: ['readings'],
      },
      {
        id: 'care',
        question: 'How do I look after it until spring?',
        gives: 'A weekly log, warm days, wet leaves, the alarm, and how to shut down.',
        asked: ['mould', 'mold', 'wet leaves', 'condensation', 'check', 'every week'],
        calculators: [],
      },
      {
        id: 'worksheet',
        question: 'How do I read my worksheet?',
        gives: 'Two printed sides for the shed wall, line by line.',
        asked: ['print', 'paper', 'form'],
        calculators: [],
      },
    ],
  },
];

/** All chapters, in order. */
export const outline: readonly Step[] = parts.flatMap(({ steps }) => steps);
