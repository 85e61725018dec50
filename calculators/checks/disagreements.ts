import { cite, type Citation } from '../cite.ts';

/** A place where two sources do not say the same, and what the guide does about it. */
export interface Disagreement {
  readonly about: string;
  /** What they say, as sentences. */
  readonly differ: string;
  /** Which of them the guide uses, and why. */
  readonly used: string;
  readonly cites: readonly Citation[];
}

export const disagreements: readonly Disagreement[] = [
  {
    about: 'Freezing point of antifreeze mixes',
    differ:
      'ASHRAE’s tables and Melinder’s equations differ by up to 1.4 K for propylene glycol and 2.9 K for ethylene glycol.',
    used: 'The warmer of the two, share by share: a mix that freezes too early is the worse mistake.',
    cites: [
      cite('ashrae2001-glycol', 'freezing points by volume'),
      cite('melinder2010', 'freezing points by mass'),
    ],
  },
  {
    about: 'Other properties of antifreeze mixes',
    differ:
      'ASHRAE prints commercial fluids with inhibitors, Melinder pure glycol in water: up to 1 % apart in density, 3 % in heat capacity, 17 % in viscosity.',
    used: 'Melinder, whose equations cover all shares and temperatures and come with check values. In a bench the difference decides nothing.',
    cites: [cite('ashrae2001-glycol', 'properties by volume'), cite('melinder2010', 'equations by mass')],
  },
  {
    about: 'Freeze and burst protection of the trade',
    differ:
      'Trade tables ask for up to 7 % more glycol than the physics of pure mixes, and differ from one another by up to 1.5 points.',
    used: 'Pure mixes for the freezing point, as a reader measures it; the trade table for bursting, where there is no other. Concentrate with inhibitors: go by its label.',
    cites: [
      cite('hvacr-math2018', 'exercise 5-4'),
      cite('trade-glycol-table', 'shares against freezing and bursting'),
    ],
  },
  {
    about: 'A misprinted density of water',
    differ:
      'Kell’s equation has 16.879850 in its denominator; a copy that many programs follow has 16.897850, which puts water of 20 °C 0.27 kg/m³ too low.',
    used: 'Neither: the release of the International Association for the Properties of Water and Steam. Kell as printed first agrees with it within 0.005 kg/m³.',
    cites: [cite('kell1975', 'equation for the density at 1 atm'), cite('iapws-sr6', 'table 8')],
  },
  {
    about: 'Conductivity of air',
    differ:
      'The table of Çengel’s book lies 2 to 2.5 % below the US Standard Atmosphere, and so its Prandtl number 3 % above.',
    used: 'The US Standard Atmosphere: one formula for all temperatures, within half a per cent of the reference equation of Lemmon and Jacobsen.',
    cites: [
      cite('cengel-a15', 'air at 1 atm'),
      cite('us-standard-atmosphere', 'viscosity and conductivity'),
      cite('lemmon-jacobsen2004', 'air as a thin gas'),
    ],
  },
  {
    about: 'Viscosity and conductivity of warm wet air',
    differ:
      'Of saturated air at 60 °C an open library has 2.5 % more viscosity and 3 % more conductivity than Wilke’s rule makes of the same library’s own dry air and vapour; a paper of 2008 has 0.5 % less viscosity. At 20 °C they are within 1 %.',
    used: 'Wilke’s rule with the vapour of the International Association for the Properties of Water and Steam. The films of a bench are worked out with dry air, as it is below 20 °C.',
    cites: [
      cite('open-libraries', 'CoolProp 8.0, humid air'),
      cite('tsilingiris2008', 'viscosity of saturated air'),
      cite('iapws-r12', 'viscosity of the thin gas, from memory'),
    ],
  },
  {
    about: 'Density of air',
    differ: 'Incropera’s table A.4 is for 1 bar: at 300 K it has 1.1614 kg/m³, where 1 atm makes 1.1766.',
    used: 'One atmosphere, as everywhere else in the guide.',
    cites: [cite('incropera', 'table A.4')],
  },
  {
    about: 'Where flow over a warm level face turns turbulent',
    differ:
      'Handbooks change from 0.54 Ra^¼ to 0.15 Ra^⅓ at Ra = 1e7, McAdams at 2e7; newer editions of Çengel have 0.59 and 0.1 for the two factors.',
    used: '0.54 and 0.15, the one fading into the other between 1e7 and 2e7, so that there is no step.',
    cites: [
      cite('mcadams1954', 'horizontal plates'),
      cite('cengel', 'table 9-1'),
      cite('incropera', 'section 9.6'),
    ],
  },
  {
    about: 'Film over a cold floor or under a warm one',
    differ: 'Incropera’s later editions have 0.52 Ra^⅕ (from memory), most handbooks 0.27 Ra^¼.',
    used: '0.27 Ra^¼. At the size of a bench it is up to a quarter more, and little heat goes that way.',
    cites: [cite('incropera', 'section 9.6'), cite('mcadams1954', 'horizontal plates')],
  },
  {
    about: 'Film under a ceiling, heat going up',
    differ:
      'ISO 6946 counts 5 W/(m²·K) of convection; McAdams’ law gives 3.1 for 5 K, and reaches 5 at about 20 K.',
    used: 'The law, since a cover over a bench has differences of its own and the standard has one value for all.',
    cites: [cite('iso6946', 'surface resistances'), cite('mcadams1954', 'horizontal plates')],
  },
  {
    about: 'Convection in a closed upright gap',
    differ:
      'Çengel’s problem 9-97 uses an older correlation beyond its range and has 1.33 times still air; ElSherbiny and others measured what makes 1.66.',
    used: 'ElSherbiny and others, whose measurements cover the gaps between hung sheets. The problem is not among the checks of gaps.',
    cites: [cite('cengel', 'problem 9-97'), cite('elsherbiny1982', 'the whole correlation')],
  },
  {
    about: 'A worked window that does not settle',
    differ:
      'Janna’s example 8.2 reports 31 W/m² with film coefficients that belong to other face temperatures than it ends with; carried through to the end its own laws give 38.',
    used: 'Not among the checks.',
    cites: [cite('janna', 'example 8.2')],
  },
  {
    about: 'Heat from thin bare pipes',
    differ:
      'A handbook table has 6 % more from a 42 mm pipe than Churchill and Chu with grey radiation, and 2 % less from a 168 mm pipe.',
    used: 'Churchill and Chu. At the size of a bench’s pipe, 114 mm, the two are 1 % apart.',
    cites: [
      cite('roymech', 'pipes at 50 °C in still air of 20 °C'),
      cite('churchill-chu1975', 'horizontal cylinder'),
    ],
  },
  {
    about: 'Wind on a wall',
    differ:
      'Along a smooth plate of 2 m a wind of 4 m/s makes a film of 8 W/(m²·K); ISO 6946 has 4 + 4 v, which is 20.',
    used: 'The standard for weather outside, where walls are rough and have edges; the plate for a draught inside a house.',
    cites: [cite('iso6946', 'surface resistances'), cite('incropera', 'section 7.2')],
  },
  {
    about: 'Two films of polyethylene',
    differ:
      'Published values are 3.4 to 4.0 W/(m²·K) and do not say whether condensation lies on the film. By the laws two dry films have 4.4 to 4.5 in wind and 4.1 in calm, wet ones 3.2.',
    used: 'The laws, with the dry or wet film that the bench has. Dry film is measured to let three quarters of the heat radiation pass, and with that no two films come below 4; films that let a third pass, or a half, would have the published 3.6 to 3.9. So the published values are those of films that are wet or dusty, as they are over a crop.',
    cites: [
      cite('extension-coverings', 'double layer'),
      cite('ep406', 'double polyethylene, from memory'),
      cite('hanson1963', 'polyethylene holds back 26 %'),
    ],
  },
  {
    about: 'Film that holds back heat radiation',
    differ: 'Trade papers give it 10 to 20 % less than two plain films; one standard, from memory, 30 %.',
    used: 'The laws with a long-wave transmittance of 0.3, which make 17 %.',
    cites: [
      cite('extension-coverings', 'infrared film'),
      cite('ep406', 'double polyethylene, infrared inner'),
    ],
  },
  {
    about: 'A screen inside a cover',
    differ:
      'In a house a drawn screen was measured to save 30 %; of a fleece inside of a film the laws make 44 % dry and 50 % wet.',
    used: 'The laws. They hold for a sheet without gaps at its edges; what leaks around it is counted apart.',
    cites: [cite('geoola2009', 'abstract, thermal screen')],
  },
  {
    about: 'How coverings lose more in wind',
    differ:
      'A model house has 0.3 W/(m²·K) more for each m/s at a difference of 20 K, which the laws meet, and 0.9 at 50 K, where the laws make 0.4. An older paper with wind laws for six coverings names no unit.',
    used: 'The laws. The older paper is not used.',
    cites: [cite('rasheed2017', 'abstract'), cite('iso6946', 'surface resistances')],
  },
  {
    about: 'Floors on the ground',
    differ:
      'The American code has 0.73 Btu/(h·ft·°F) for each length of edge, growers’ practice 0.8; ISO 13370 makes 0.87 of a small house on clay. An older British table leaves out the air films.',
    used: 'ISO 13370, which asks for the soil and the size; the others ask for neither.',
    cites: [
      cite('wac-51-11c', 'unheated slab'),
      cite('ep406', 'perimeter, from memory'),
      cite('iso13370', 'slab on ground'),
      cite('ihve-a3', 'solid floor, four exposed edges'),
    ],
  },
  {
    about: 'Heated floors',
    differ:
      'The same code has 0.84 for a heated slab without insulation, another standard, from memory, 1.35.',
    used: 'Neither: the soil under a bench is worked out in layers.',
    cites: [
      cite('wac-51-11c', 'heated slab'),
      cite('ashrae-fundamentals', 'slab-on-grade floors, as ASHRAE 90.1 has them'),
    ],
  },
  {
    about: 'Conductivity of soil',
    differ:
      'Design values of EN 12524 are 1.5 for clay and 2.0 W/(m·K) for sand; Johansen’s relation makes 1.3 of clay with four fifths of its pores filled, and 0.2 of dry clay.',
    used: 'Johansen where the moisture is known, the design values as brackets. A quarter either way is what soil is known to.',
    cites: [cite('en12524', 'soils'), cite('johansen1975', 'conductivity by moisture')],
  },
  {
    about: 'Roots of the same kind of plant',
    differ:
      'American holly: old roots die at −12.8 °C by one source and at −6.7 by another; firethorn at −16.7 and −7.8; ‘PJM’ rhododendron at −23.3 and −22.8.',
    used: 'The warmer, each time.',
    cites: [
      cite('mathers', 'Ilex opaca, mature'),
      cite('dirr-smith', 'Pyracantha, old'),
      cite('jars37', '‘PJM’'),
      cite('havis1976', 'killing temperatures, from memory'),
    ],
  },
  {
    about: 'Copper as it warms',
    differ: 'IEC 60287 has 0.00393 per K, the correction factors of IEC 60228 are made with 0.004.',
    used: '0.00393. At 70 °C the two are 0.3 % apart.',
    cites: [cite('iec60287', 'constants of copper'), cite('iec60228', 'temperature correction factors')],
  },
  {
    about: 'Loads that run for hours',
    differ:
      'American rules size conductors and breakers for 125 % of such a load, IEC rules for the load itself.',
    used: 'Those of the reader’s region.',
    cites: [cite('nec', '210.19(A)(1), 210.20(A)'), cite('iec60364-4-43', '433.1')],
  },
];
