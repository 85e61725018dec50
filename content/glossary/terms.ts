/** The words of the trade that the guide uses, each in plain English, in the order of the alphabet. */
export interface Term {
  /** Its name in addresses: never changed. */
  readonly id: string;
  readonly term: string;
  readonly meaning: string;
  /** How chapters have it in a sentence; its name in small letters where left out. */
  readonly forms?: readonly string[];
}

export const glossary: readonly Term[] = [
  {
    id: 'air-leakage',
    term: 'Air leakage',
    forms: ['air leakage', 'leakage'],
    meaning: 'Air that finds its way in at one gap and out at another, and carries heat along.',
  },
  {
    id: 'ammeter',
    term: 'Ammeter',
    forms: ['ammeter'],
    meaning: 'An instrument that shows the current in a wire.',
  },
  {
    id: 'antifreeze',
    term: 'Antifreeze',
    forms: ['antifreeze'],
    meaning:
      'A liquid that is mixed with the water of the loop so that it freezes later. On a bench it is propylene glycol; ethylene glycol is a poison that tastes sweet.',
  },
  {
    id: 'bend-radius',
    term: 'Bend radius',
    forms: ['bend radius', 'bend'],
    meaning: 'The tightest curve that a cable bears: the radius of the circle that it would close to.',
  },
  {
    id: 'braid',
    term: 'Braid',
    forms: ['braid'],
    meaning:
      'A sleeve of fine metal wires under the sheath of a cable, joined to earth, so that a fault trips the protection instead of going through a person.',
  },
  {
    id: 'breaker',
    term: 'Breaker',
    forms: ['breaker', 'breakers'],
    meaning: 'The switch in the panel that cuts a circuit off when too much current flows in its wire.',
  },
  {
    id: 'burst-point',
    term: 'Burst protection',
    forms: ['burst protection', 'burst figure'],
    meaning:
      'Down to which temperature a mix turns to slush without breaking the pipe. Sellers like to print it; the freezing point lies higher.',
  },
  {
    id: 'carbon-monoxide',
    term: 'Carbon monoxide',
    forms: ['carbon monoxide'],
    meaning: 'A gas of every flame and engine that nobody sees or smells. It kills.',
  },
  {
    id: 'clear-sky',
    term: 'Clear sky',
    forms: ['clear sky', 'cold sky'],
    meaning:
      'A night without clouds. The sky is then far colder than the air, and a roof below it sinks below the air as well.',
  },
  {
    id: 'cold-lead',
    term: 'Cold lead',
    forms: ['cold lead'],
    meaning: 'The piece of a heating cable, from the plug on, that makes no heat.',
  },
  {
    id: 'coldest-layer',
    term: 'Coldest layer',
    forms: ['coldest layer'],
    meaning: 'The medium of a pot is looked at in three layers; the coldest of them decides.',
  },
  {
    id: 'concentrate',
    term: 'Concentrate',
    forms: ['concentrate'],
    meaning: 'Antifreeze as it is sold, before water is mixed in.',
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
    id: 'conductivity',
    term: 'Conductivity',
    forms: ['conductivity'],
    meaning: 'How well a material conducts heat: low for foam and still air, high for metal.',
  },
  {
    id: 'constant-wattage',
    term: 'Constant-wattage cable',
    forms: ['constant-wattage cable', 'constant-wattage', 'constant wattage'],
    meaning: 'A heating cable that makes the same heat however warm it gets. It must never cross itself.',
  },
  {
    id: 'continuous-load',
    term: 'Continuous load',
    forms: ['continuous load'],
    meaning:
      'A load that runs for three hours or more on end. Some rules ask for a quarter more room for it.',
  },
  {
    id: 'convection',
    term: 'Convection',
    meaning: 'Heat that air or water carries along as it moves, by itself or driven by wind.',
  },
  {
    id: 'cover',
    term: 'Cover',
    forms: ['film cover', 'a cover', 'the cover', 'cover over'],
    meaning: 'Fleece or film laid over the plants on cold nights.',
  },
  {
    id: 'current',
    term: 'Current',
    forms: ['current'],
    meaning: 'How much electricity flows in a wire, in amperes (A). It is the power over the voltage.',
  },
  {
    id: 'degree-hours',
    term: 'Degree-hours',
    forms: ['degree-hours', 'degree-hour'],
    meaning:
      'Hours of cold, each counted by how many degrees it was too cold: the measure of how much heat a winter asks for.',
  },
  {
    id: 'density',
    term: 'Density',
    forms: ['density', 'densities'],
    meaning: 'Mass in a given space.',
  },
  {
    id: 'design-night',
    term: 'Design night',
    forms: ['design night', 'the night you build for', 'the night that you build for'],
    meaning:
      'The cold night that the bench is built for: what the weather of the place makes likely, not the worst that can be thought of.',
  },
  {
    id: 'dew-point',
    term: 'Dew point',
    forms: ['dew point'],
    meaning:
      'The temperature at which cooling air can hold no more vapour, and below which it wets what it touches.',
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
    id: 'emissivity',
    term: 'Emissivity',
    forms: ['emissivity'],
    meaning:
      'How well a surface gives off heat radiation: near 1 for film, wood and leaves, far less for bright metal.',
  },
  {
    id: 'ethylene-glycol',
    term: 'Ethylene glycol',
    forms: ['ethylene glycol'],
    meaning: 'The antifreeze of most cars. It tastes sweet and kills in small amounts.',
  },
  {
    id: 'extension-lead',
    term: 'Extension lead',
    forms: ['extension lead', 'extension leads'],
    meaning: 'A loose cable with a plug and a coupling.',
  },
  {
    id: 'feeder',
    term: 'Feeder',
    meaning: 'The wire from the panel to the bench.',
  },
  {
    id: 'film',
    term: 'Film',
    forms: ['film', 'films'],
    meaning: 'Thin plastic sheet, mostly polyethylene, as on greenhouses.',
  },
  {
    id: 'fleece',
    term: 'Fleece',
    forms: ['fleece'],
    meaning:
      'Light cloth of spun plastic that lets air and water through. It holds back less heat than film.',
  },
  {
    id: 'freezing-point',
    term: 'Freezing point',
    forms: ['freezing point', 'freezing points'],
    meaning: 'The temperature at which the first ice forms in water or in a mix.',
  },
  {
    id: 'gap',
    term: 'Gap',
    forms: ['gap between turns', 'gap between two turns', 'room between the turns'],
    meaning: 'The clear space between two turns of the cable, measured square across it.',
  },
  {
    id: 'ground-fault',
    term: 'Ground-fault protection',
    forms: ['ground-fault protection', 'ground-fault device', 'residual current device', 'GFCI', 'RCD'],
    meaning:
      'A device that cuts the power in a fraction of a second when current leaks to earth, as it does through a person. Also called residual-current device.',
  },
  {
    id: 'hardening',
    term: 'Hardening',
    forms: ['hardening', 'harden', 'hardiness'],
    meaning: 'How a plant gets ready for frost in autumn. Roots do it far less than tops.',
  },
  {
    id: 'headspace',
    term: 'Headspace',
    forms: ['headspace', 'air space'],
    meaning: 'Room left empty above a liquid, so that it can expand.',
  },
  {
    id: 'latent-heat',
    term: 'Heat of freezing',
    forms: ['heat of freezing', 'latent heat'],
    meaning: 'The heat that water gives off as it turns to ice, while its temperature hardly falls.',
  },
  {
    id: 'house',
    term: 'House',
    meaning: 'The building that the bench stands in: a greenhouse, a film tunnel, a cold frame or a shed.',
  },
  {
    id: 'inhibitor',
    term: 'Inhibitor',
    forms: ['inhibitor', 'inhibitors'],
    meaning: 'What is added to antifreeze to guard metal and to keep slime from growing.',
  },
  {
    id: 'insulation',
    term: 'Insulation',
    forms: ['insulation'],
    meaning:
      'What keeps current inside a wire, or heat inside a bench. An electrician measures the first in megohms: a reading that falls tells of damp or damage.',
  },
  {
    id: 'kelvin',
    term: 'Kelvin',
    forms: ['kelvin', 'kelvins'],
    meaning: 'One degree of the Celsius scale, used for differences of temperature. Written K.',
  },
  {
    id: 'kilowatt-hour',
    term: 'Kilowatt-hour',
    forms: ['kilowatt-hour', 'kilowatt-hours'],
    meaning: 'The unit of energy on the power bill: a thousand watts for an hour. Written kWh.',
  },
  {
    id: 'likely',
    term: 'Likely',
    forms: ['likely'],
    meaning: 'Four of five benches like yours lie between the two numbers that stand behind this word.',
  },
  {
    id: 'limit-thermostat',
    term: 'Limit thermostat',
    forms: ['limit thermostat'],
    meaning: 'A second thermostat in the same wire that cuts the power when the pipe gets too hot.',
  },
  {
    id: 'liner',
    term: 'Liner',
    forms: ['liner', 'liners'],
    meaning: 'A young plant in its first pot, meant to be moved into a larger one.',
  },
  {
    id: 'loop',
    term: 'Loop',
    forms: ['loop'],
    meaning: 'The water-filled pipe under the bench that the heating cable is wound on.',
  },
  {
    id: 'mains',
    term: 'Mains',
    forms: ['mains'],
    meaning: 'The power of the public lines: 230 or 120 volts. It can kill.',
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
    id: 'probe',
    term: 'Probe',
    forms: ['probe', 'probes'],
    meaning: 'The sensor of a thermometer at the end of a wire.',
  },
  {
    id: 'propylene-glycol',
    term: 'Propylene glycol',
    forms: ['propylene glycol'],
    meaning:
      'The antifreeze for a bench: far less harmful than ethylene glycol, and used in food. What is sold for loops is still not to be drunk.',
  },
  {
    id: 'radiation',
    term: 'Radiation',
    meaning:
      'Heat that passes between two surfaces that see each other, without anything in between being warmed.',
  },
  {
    id: 'range',
    term: 'Range',
    forms: ['its range', 'their range', 'range'],
    meaning:
      'The two ends between which a figure most likely lies, since something that it rests on is not known well.',
  },
  {
    id: 'refractometer',
    term: 'Refractometer',
    forms: ['refractometer'],
    meaning: 'A small tube that shows, from one drop, how strong a mix is.',
  },
  {
    id: 'humidity',
    term: 'Relative humidity',
    forms: ['relative humidity'],
    meaning: 'The vapour in the air as a share of all that it could hold at its temperature.',
  },
  {
    id: 'relay',
    term: 'Relay',
    forms: ['relay'],
    meaning: 'A switch for a large current that a small one works.',
  },
  {
    id: 'resistance',
    term: 'Resistance',
    forms: ['resistance', 'resistances'],
    meaning: 'How much something stands in the way: a wire in that of current, a layer in that of heat.',
  },
  {
    id: 'root-zone',
    term: 'Root zone',
    forms: ['root zone', 'root zones'],
    meaning: 'The medium in a pot, where the roots are.',
  },
  {
    id: 'schedule-forty',
    term: 'Schedule 40',
    forms: ['Schedule 40'],
    meaning: 'A size of US plastic pipe with a thick wall.',
  },
  {
    id: 'self-regulating',
    term: 'Self-regulating cable',
    forms: ['self-regulating cable', 'self-regulating'],
    meaning: 'A heating cable that makes less heat as it warms up.',
  },
  {
    id: 'set-point',
    term: 'Set point',
    forms: ['set point', 'set points'],
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
    forms: ['skirt'],
    meaning: 'Film or boards around the sides of the bench, from its top down to the floor.',
  },
  {
    id: 'slats',
    term: 'Slats',
    forms: ['slats'],
    meaning: 'Strips of wood or metal with gaps between them, as the top of a bench.',
  },
  {
    id: 'slush',
    term: 'Slush',
    forms: ['slush'],
    meaning: 'Ice needles with liquid between them. It gives way, and so it does not burst a pipe.',
  },
  {
    id: 'splice',
    term: 'Splice',
    forms: ['splice', 'splices'],
    meaning: 'The place where a heating cable is joined to its cold lead.',
  },
  {
    id: 'stand-pipe',
    term: 'Stand-pipe',
    forms: ['stand-pipe'],
    meaning: 'An upright pipe on the loop, open at its top, in which the water can rise as it expands.',
  },
  {
    id: 'tariff',
    term: 'Tariff',
    forms: ['tariff', 'price of power', 'price of energy'],
    meaning: 'What a kilowatt-hour costs, all in.',
  },
  {
    id: 'thermostat',
    term: 'Thermostat',
    forms: ['thermostat', 'thermostats'],
    meaning: 'A switch that turns the cable on and off by the temperature of its sensor.',
  },
  {
    id: 'transfer-switch',
    term: 'Transfer switch',
    forms: ['transfer switch'],
    meaning: 'A switch that joins the wiring either to the lines or to a generator, never to both.',
  },
  {
    id: 'trip',
    term: 'Trip',
    forms: ['trips', 'trip', 'tripped'],
    meaning: 'A breaker or a protection device trips when it cuts the power by itself.',
  },
  {
    id: 'turn',
    term: 'Turn',
    forms: [
      'one turn',
      'each turn',
      'two turns',
      'the turns',
      'turns of the cable',
      'turn of cable',
      'even turns',
    ],
    meaning: 'The cable once around the pipe.',
  },
  {
    id: 'vapour',
    term: 'Vapour',
    forms: ['vapour'],
    meaning: 'Water as a gas in the air. Nobody sees it.',
  },
  {
    id: 'vent',
    term: 'Vent',
    forms: ['vent', 'vents'],
    meaning: 'An opening that lets air in or out: of the house on a warm day, of the loop all the time.',
  },
  {
    id: 'voltage',
    term: 'Voltage',
    forms: ['voltage'],
    meaning: 'How strongly electricity is pushed through a wire, in volts (V).',
  },
  {
    id: 'voltage-drop',
    term: 'Voltage drop',
    meaning: 'What a long or thin wire takes away of the voltage before it arrives.',
  },
  {
    id: 'warm-up',
    term: 'Warm-up',
    forms: ['warm-up', 'warms up again'],
    meaning: 'The time that a cold bench takes to come back to its temperature.',
  },
  {
    id: 'watt',
    term: 'Watt',
    forms: ['watts', 'watt'],
    meaning:
      'The unit of power: how much heat is made or lost in each second. Written W; a thousand are a kilowatt, kW.',
  },
  {
    id: 'station',
    term: 'Weather station',
    forms: ['weather station', 'station'],
    meaning: 'The place whose weather record the guide works with.',
  },
];
