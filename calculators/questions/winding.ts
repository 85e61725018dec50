import { calculator } from '../calculator.ts';

export default calculator({
  id: 'winding',
  question: 'How do I wind the cable?',
  summary: 'How far apart the turns lie when the whole cable is spread evenly over the pipe.',
  reads: ['cable.length', 'loop.pipe', 'cable.diameter'],
  figures: {},
  formulas: [],
  cites: [],
  cautions: [],
  compute: () => ({ figures: {}, warnings: [] }),
});
