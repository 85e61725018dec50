/** The words of the trade that the guide uses, each in plain English, in the order of the alphabet. */
export interface Term {
  /** Its name in addresses: never changed. */
  readonly id: string;
  readonly term: string;
  readonly meaning: string;
}

export const glossary: readonly Term[] = [
  {
    id: 'antifreeze',
    term: 'Antifreeze',
    meaning:
      'A liquid that is mixed with the water of the loop so that it freezes later. On a bench it is propylene glycol; ethylene glycol is a poison that tastes sweet.',
  },
  {
    id: 'breaker',
    term: 'Breaker',
    meaning: 'The switch in the panel that cuts a circuit off when too much current flows in its wire.',
  },
  {
    id: 'condensation',
    term: 'Condensation',
    meaning: 'Water that settles out of moist air on something colder, such as the inside of a film.',
  },
  {
    id: 'conduction',
    term: 'Conduction',
    meaning: 'Heat that moves through a thing, or from one thing to another that it touches.',
  },
  {
    id: 'constant-wattage',
    term: 'Constant-wattage cable',
    meaning: 'A heating cable that makes the same heat however warm it gets. It must never cross itself.',
  },
  {
    id: 'convection',
    term: 'Convection',
    meaning: 'Heat that air or water carries along as it moves, by itself or driven by wind.',
  },
  {
    id: 'cover',
    term: 'Cover',
    meaning: 'Fleece or film laid over the plants on cold nights.',
  },
  {
    id: 'design-night',
    term: 'Design night',
    meaning:
      'The cold night that the bench is built for: what the weather of the place makes likely, not the worst that can be thought of.',
  },
  {
    id: 'differential',
    term: 'Differential',
    meaning:
      'How far a thermostat lets the temperature fall below where it switched off before it switches on again.',
  },
  {
    id: 'duty',
    term: 'Duty',
    meaning: 'The share of the time that the cable is on.',
  },
  {
    id: 'feeder',
    term: 'Feeder',
    meaning: 'The wire from the panel to the bench.',
  },
  {
    id: 'gap',
    term: 'Gap',
    meaning: 'The clear space between two turns of the cable, measured square across it.',
  },
  {
    id: 'ground-fault',
    term: 'Ground-fault protection',
    meaning:
      'A device that cuts the power in a fraction of a second when current leaks to earth, as it does through a person. Also called residual-current device.',
  },
  {
    id: 'hardening',
    term: 'Hardening',
    meaning: 'How a plant gets ready for frost in autumn. Roots do it far less than tops.',
  },
  {
    id: 'headspace',
    term: 'Headspace',
    meaning: 'Room left empty above a liquid, so that it can expand.',
  },
  {
    id: 'latent-heat',
    term: 'Heat of freezing',
    meaning: 'The heat that water gives off as it turns to ice, while its temperature hardly falls.',
  },
  {
    id: 'liner',
    term: 'Liner',
    meaning: 'A young plant in its first pot, meant to be moved into a larger one.',
  },
  {
    id: 'loop',
    term: 'Loop',
    meaning: 'The water-filled pipe under the bench that the heating cable is wound on.',
  },
  {
    id: 'medium',
    term: 'Medium',
    meaning: 'What the pots are filled with: bark, peat, and what is mixed into them.',
  },
  {
    id: 'pitch',
    term: 'Pitch',
    meaning: 'The distance from one turn of the cable to the next, along the pipe, from middle to middle.',
  },
  {
    id: 'radiation',
    term: 'Radiation',
    meaning:
      'Heat that passes between two surfaces that see each other, without anything in between being warmed.',
  },
  {
    id: 'root-zone',
    term: 'Root zone',
    meaning: 'The medium in a pot, where the roots are.',
  },
  {
    id: 'self-regulating',
    term: 'Self-regulating cable',
    meaning: 'A heating cable that makes less heat as it warms up.',
  },
  {
    id: 'set-point',
    term: 'Set point',
    meaning: 'The temperature that a thermostat is set to.',
  },
  {
    id: 'sheath',
    term: 'Sheath',
    meaning: 'The outer skin of the cable.',
  },
  {
    id: 'skirt',
    term: 'Skirt',
    meaning: 'Film or boards around the sides of the bench, from its top down to the floor.',
  },
  {
    id: 'stand-pipe',
    term: 'Stand-pipe',
    meaning: 'An upright pipe on the loop, open at its top, in which the water can rise as it expands.',
  },
  {
    id: 'thermostat',
    term: 'Thermostat',
    meaning: 'A switch that turns the cable on and off by the temperature of its sensor.',
  },
  {
    id: 'voltage-drop',
    term: 'Voltage drop',
    meaning: 'What a long or thin wire takes away of the voltage before it arrives.',
  },
  {
    id: 'warm-up',
    term: 'Warm-up',
    meaning: 'The time that a cold bench takes to come back to its temperature.',
  },
  {
    id: 'station',
    term: 'Weather station',
    meaning: 'The place whose weather record the guide works with.',
  },
];
