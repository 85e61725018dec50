import { cite, type Citation } from './sources.ts';

export interface Caution {
  readonly title: string;
  readonly text: string;
  /** The same in one breath, for the worksheet on the wall. */
  readonly short: string;
  readonly cites: readonly Citation[];
}

/** What stands beside a figure wherever its work can hurt someone. Each defers to those who know the case. */
export const cautions = {
  'mains-and-water': {
    title: 'Mains and water',
    text: 'Mains power beside a water-filled pipe can kill. The circuit needs ground-fault protection and must be made and checked by a licensed electrician to the local code. Switch off and unplug before you touch the cable or the pipe.',
    short:
      'Mains power beside a water-filled pipe can kill. Ground-fault protection, a licensed electrician, the local code. Unplug before you touch cable or pipe.',
    cites: [cite('cpsc-5045', 'use ground-fault protection'), cite('nec', '427.22 and 547.5(G)')],
  },
  'cable-instructions': {
    title: 'The cable’s own sheet rules',
    text: 'Where this guide and the sheet that came with the cable differ, follow the sheet. Use only a cable that is certified for pipes and wet places, never shorten a constant-wattage cable, and never switch it on while it is coiled.',
    short: 'It comes before this page. Never shorten a constant-wattage cable, never switch it on coiled.',
    cites: [cite('cpsc-5045', 'follow the instructions of the product')],
  },
  crossing: {
    title: 'Never let turns touch or cross',
    text: 'Where two turns touch, each heats the other and neither can cool. A constant-wattage cable that crosses itself burns through its sheath, then the pipe.',
    short: 'Turns that touch burn through sheath and pipe.',
    cites: [
      cite('cpsc-5045', 'do not lap a cable over itself'),
      cite('nec', '426.20: adjacent cables 1 in apart'),
    ],
  },
  'heat-and-plastic': {
    title: 'Heat and plastic',
    text: 'Plastic pipe softens well below the boiling point of water. The loop must hold water before the cable is switched on, and a limit thermostat must cut the power before the pipe reaches its service limit. No foam or film over the cable.',
    short: 'Water in before the power is on. A limit thermostat on the pipe. No foam or film over the cable.',
    cites: [cite('pvc-supplier', '60 °C in service'), cite('cpsc-5045', 'no foam over the tape')],
  },
  'no-flame': {
    title: 'No flame inside',
    text: 'No flame under or beside a covered bench: its gases kill people and plants, and film and straw burn.',
    short: 'Its gases kill; film and straw burn.',
    cites: [cite('common-practice', 'flame heat is ruled out inside')],
  },
  'antifreeze-poison': {
    title: 'Antifreeze',
    text: 'Ethylene glycol tastes sweet and kills people, dogs and cats in small amounts: do not use it where any of them can reach it. Use food-grade, inhibited propylene glycol, colour it and label the loop. If a person may have drunk any, call the emergency number or a poison centre at once, and for an animal a vet; do not wait for signs. Old mix never goes into soil, drain or septic tank; hand it in where old antifreeze is collected.',
    short:
      'Ethylene glycol tastes sweet and kills. If any was drunk, call a poison centre at once. Food-grade propylene glycol, coloured; label the loop; hand old mix in.',
    cites: [cite('common-practice', 'food-grade propylene glycol near plants and animals')],
  },
  'open-loop': {
    title: 'Never close the loop tight',
    text: 'A loop without room to expand bursts a joint. Drain pipe is made to carry no pressure: keep the stand-pipe open and the loop low.',
    short: 'Without room to expand it bursts a joint.',
    cites: [cite('astm-d2729', 'drain pipe is not for pressure')],
  },
  generator: {
    title: 'Generators stay outside',
    text: 'An engine in a house or beside its openings kills by carbon monoxide, which nobody smells. A generator is joined to wiring only through a transfer switch fitted by a licensed electrician: without one it kills people who work on the lines.',
    short: 'Their gas kills unnoticed. To wiring only through a transfer switch.',
    cites: [cite('common-practice', 'carbon monoxide, and feeding back into the lines')],
  },
  alarm: {
    title: 'An alarm with its own battery',
    text: 'A protection device that trips cuts the heat without a sound. The alarm must not hang on the circuit of the heat, needs a battery of its own, one sensor in the coldest pot and one on the loop, and a trial every month.',
    short: 'Not on the heat’s circuit; one sensor in the coldest pot. Try it monthly.',
    cites: [cite('common-practice', 'alarms for power and equipment that fail, tried every month')],
  },
  lamp: {
    title: 'Heat lamps',
    text: 'The glass of a heat lamp is hot enough to set straw, fleece and film on fire, and a drop of water breaks it. This guide does not use lamps over a bench. Whoever does hangs them by two chains, never by the cord, and well clear of everything that burns.',
    short: 'Hot glass sets film and fleece on fire.',
    cites: [cite('common-practice', 'fires in barns and houses from heat lamps')],
  },
} as const satisfies Record<string, Caution>;
