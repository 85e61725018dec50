/**
 * The steps that the guide takes a beginner through, in order. A step says which chapter tells it, once that is
 * written, and which calculators answer it; the contents page shows what is there and what is not.
 */
export interface Step {
  readonly title: string;
  /** What the reader has in hand after it. */
  readonly gives: string;
  /** File name of the chapter in content/chapters, without its ending; absent while it is not written. */
  readonly chapters: readonly string[];
  /** Ids of the calculators that belong here. */
  readonly calculators: readonly string[];
}

export const outline: readonly Step[] = [
  {
    title: 'Do my roots need heat?',
    gives: 'The coldest that the roots get without heat, beside what they can bear.',
    chapters: [],
    calculators: ['roots'],
  },
  {
    title: 'How many watts does the bench need?',
    gives: 'Where the heat goes on the coldest night, and the power that replaces it.',
    chapters: [],
    calculators: ['watts', 'heat', 'first'],
  },
  {
    title: 'Which way of heating?',
    gives: 'Water loop, bare cable, mat or lamp, side by side; and why never a flame.',
    chapters: [],
    calculators: [],
  },
  {
    title: 'Lay the loop, fill it, wind the cable',
    gives: 'Pipe, water, antifreeze and cable in their quantities, and turns that never touch.',
    chapters: ['winding'],
    calculators: ['winding', 'sheath', 'loop', 'mix'],
  },
  {
    title: 'Feed it from a safe circuit',
    gives: 'Current, breaker, wire and ground-fault protection; the sensor in the right place.',
    chapters: [],
    calculators: ['circuit'],
  },
  {
    title: 'What does a winter cost?',
    gives: 'Energy and money by month, and what to change first.',
    chapters: [],
    calculators: [],
  },
  {
    title: 'Prove it on a mild night',
    gives: 'Three thermometers, and what their readings say about a hard night.',
    chapters: [],
    calculators: [],
  },
  {
    title: 'When the power fails',
    gives: 'How many hours there are, and what to do in them.',
    chapters: [],
    calculators: [],
  },
  {
    title: 'Look after it until spring',
    gives: 'Weekly readings, warm days, the alarm, and what to do with old antifreeze.',
    chapters: [],
    calculators: [],
  },
];
