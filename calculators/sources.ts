/**
 * Every publication that a number or a formula comes from, once. Whoever cites gives `{ source, at }`, where `at`
 * is the table, equation, clause or page. `seen` says whether a copy of the cited place was read; what is known
 * only from memory says so wherever it is shown.
 */
export interface Source {
  readonly title: string;
  readonly by: string;
  readonly year?: number;
  readonly link?: string;
  /** Read in a copy of the source, taken from memory, a fact of the trade, or an assumption of this guide. */
  readonly standing: 'seen' | 'memory' | 'practice' | 'assumption';
}

export const sources = {
  'common-practice': {
    title: 'Common practice, no published source',
    by: 'growers and suppliers of the trade',
    standing: 'practice',
  },
  assumption: {
    title: 'Assumption of this guide',
    by: 'the authors of this guide',
    standing: 'assumption',
  },
  invented: {
    title: 'Invented for the examples of this guide',
    by: 'the authors of this guide',
    standing: 'assumption',
  },
  helix: {
    title: 'Helix: its length, pitch and curvature, in public encyclopaedias that agree',
    by: 'several authors',
    standing: 'seen',
  },
  'nist-sp811': {
    title: 'Guide for the Use of the International System of Units, Special Publication 811, appendix B',
    by: 'National Institute of Standards and Technology',
    year: 2008,
    standing: 'memory',
  },
  'iapws-sr6': {
    title: 'Supplementary release SR6-08(2011) on properties of liquid water at 0.1 MPa',
    by: 'International Association for the Properties of Water and Steam',
    year: 2011,
    link: 'https://iapws.org/relguide/LiquidWater.html',
    standing: 'seen',
  },
  melinder2010: {
    title: 'Properties of Secondary Working Fluids for Indirect Systems, 2nd edition',
    by: 'Å. Melinder, International Institute of Refrigeration',
    year: 2010,
    standing: 'seen',
  },
  'ashrae2001-glycol': {
    title: 'Handbook Fundamentals, chapter 21, properties of aqueous glycol solutions',
    by: 'ASHRAE',
    year: 2001,
    standing: 'seen',
  },
  'hvacr-math2018': {
    title: 'Math for HVACR, exercise 5-4: hydronic system mixtures, freezing and bursting',
    by: 'Goodheart-Willcox',
    year: 2018,
    standing: 'seen',
  },
  'ethylene-glycol-health': {
    title: 'Assessments of ethylene glycol for public health: lethal amounts, harm to the kidneys',
    by: 'Health Canada; US Agency for Toxic Substances and Disease Registry',
    standing: 'seen',
  },
  'used-antifreeze': {
    title: 'Leaflets on handling used antifreeze',
    by: 'departments of environmental quality of Michigan and Oregon',
    standing: 'seen',
  },
  'us-standard-atmosphere': {
    title: 'US Standard Atmosphere 1976',
    by: 'NOAA, NASA, US Air Force',
    year: 1976,
    standing: 'seen',
  },
  'cengel-a15': {
    title: 'Heat and Mass Transfer, table A-15, properties of air at 1 atm',
    by: 'Y. A. Çengel',
    standing: 'seen',
  },
  'churchill-chu1975': {
    title: 'Correlating equations for laminar and turbulent free convection',
    by: 'S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18',
    year: 1975,
    standing: 'seen',
  },
  mcadams1954: {
    title: 'Heat Transmission, 3rd edition, natural convection from horizontal plates',
    by: 'W. H. McAdams',
    year: 1954,
    standing: 'seen',
  },
  incropera: {
    title: 'Fundamentals of Heat and Mass Transfer',
    by: 'F. P. Incropera, D. P. DeWitt',
    standing: 'memory',
  },
  codata2018: {
    title: 'CODATA recommended values of the fundamental physical constants',
    by: 'CODATA',
    year: 2018,
    standing: 'seen',
  },
  'ashrae-fundamentals': { title: 'Handbook Fundamentals', by: 'ASHRAE', standing: 'memory' },
  en12524: {
    title: 'EN 12524 Building materials: tabulated design values',
    by: 'CEN',
    year: 2000,
    standing: 'seen',
  },
  en1401: {
    title: 'EN 1401 Plastics piping systems for non-pressure underground drainage: PVC-U',
    by: 'CEN',
    standing: 'seen',
  },
  en1329: {
    title: 'EN 1329-1 Plastics piping systems for soil and waste discharge: PVC-U',
    by: 'CEN',
    standing: 'memory',
  },
  'astm-d2729': { title: 'ASTM D2729 PVC sewer pipe and fittings', by: 'ASTM', standing: 'seen' },
  'astm-d3034': { title: 'ASTM D3034 SDR PVC sewer pipe and fittings', by: 'ASTM', standing: 'seen' },
  'astm-d1785': {
    title: 'ASTM D1785 PVC plastic pipe, schedules 40, 80 and 120',
    by: 'ASTM',
    standing: 'seen',
  },
  'nec-chapter9': {
    title: 'NFPA 70 National Electrical Code, chapter 9, table 8, conductor properties',
    by: 'NFPA',
    standing: 'seen',
  },
  nec: { title: 'NFPA 70 National Electrical Code', by: 'NFPA', standing: 'seen' },
  ul943: { title: 'UL 943 Ground-fault circuit-interrupters', by: 'UL', standing: 'memory' },
  ul1053: { title: 'UL 1053 Ground-fault sensing and relaying equipment', by: 'UL', standing: 'memory' },
  'ohm-joule': {
    title: 'Laws of Ohm and Joule, in any textbook of electricity',
    by: 'G. S. Ohm, J. P. Joule',
    standing: 'memory',
  },
  iec60228: { title: 'IEC 60228 Conductors of insulated cables', by: 'IEC', standing: 'seen' },
  'iec60364-4-43': {
    title: 'IEC 60364-4-43 Protection against overcurrent',
    by: 'IEC',
    standing: 'memory',
  },
  iec60287: {
    title: 'IEC 60287 Electric cables, calculation of the current rating: constants of copper',
    by: 'IEC',
    standing: 'seen',
  },
  'startup-table': {
    title: 'Installation manual of a self-regulating cable, longest length by breaker, address withheld',
    by: 'a maker of heating cables',
    standing: 'seen',
  },
  hollands1976: {
    title: 'Free convective heat transfer across inclined air layers, J. Heat Transfer 98',
    by: 'K. G. T. Hollands, T. E. Unny, G. D. Raithby, L. Konicek',
    year: 1976,
    standing: 'memory',
  },
  elsherbiny1982: {
    title:
      'Heat transfer by natural convection across vertical and inclined air layers, J. Heat Transfer 104',
    by: 'S. M. ElSherbiny, G. D. Raithby, K. G. T. Hollands',
    year: 1982,
    standing: 'memory',
  },
  'iec60364-7-705': {
    title: 'IEC 60364-7-705 Agricultural and horticultural premises',
    by: 'IEC',
    standing: 'memory',
  },
  'iec60364-7-753': { title: 'IEC 60364-7-753 Heating cables', by: 'IEC', standing: 'memory' },
  'iec60364-5-52': {
    title:
      'IEC 60364-5-52 Wiring systems: voltage drop (annex G, read), current-carrying capacity (annex B, from memory)',
    by: 'IEC',
    year: 2009,
    standing: 'seen',
  },
  iec60898: {
    title: 'IEC 60898-1 Circuit-breakers for household and similar installations',
    by: 'IEC',
    standing: 'memory',
  },
  'cpsc-5045': {
    title: 'Electric heat tapes, safety alert, document 5045',
    by: 'US Consumer Product Safety Commission',
    standing: 'seen',
  },
  'pvc-supplier': {
    title: 'Supplier data on PVC pipe, several pages that agree, address withheld',
    by: 'suppliers of plastic pipe',
    standing: 'seen',
  },
  gnatowski2022: {
    title: 'Heat capacity of drained peat soils, Applied Sciences 12(3):1579, abstract',
    by: 'T. Gnatowski, E. Ostrowska-Ligęza, C. Kechavarzi, G. Kurzawski, J. Szatyłowicz',
    year: 2022,
    standing: 'seen',
  },
  'peat-transport': {
    title: 'Heat and gas transport in peat soils of different decay and moisture, abstract',
    by: 'University of Moratuwa, repository',
    standing: 'seen',
  },
  agronomy978528: {
    title: 'International Journal of Agronomy 2012, article 978528, table 1',
    by: 'International Journal of Agronomy',
    year: 2012,
    standing: 'seen',
  },
  heiskanen2000: {
    title: 'Thermal properties of peat-based growing media, abstract',
    by: 'J. Heiskanen',
    year: 2000,
    standing: 'seen',
  },
  kujala2008: {
    title: 'Physical properties of peat and palsa formation, Cold Regions Science and Technology, abstract',
    by: 'K. Kujala, M. Seppälä, T. Holappa',
    year: 2008,
    standing: 'seen',
  },
  hanson1963: {
    title: 'Long-wave protection index of coverings, J. Appl. Meteorol. 2:793, abstract',
    by: 'K. J. Hanson',
    year: 1963,
    standing: 'seen',
  },
  'extension-coverings': {
    title: 'Energy conservation for greenhouses, unit 2.6, glazing materials',
    by: 'US extension service',
    standing: 'seen',
  },
  ep406: {
    title: 'ANSI/ASAE EP406 Heating, ventilating and cooling greenhouses',
    by: 'ASAE',
    standing: 'memory',
  },
  emissivities: {
    title: 'Emissivity tables for infrared thermometry, two tables that agree',
    by: 'makers of infrared thermometers, address withheld',
    standing: 'seen',
  },
  'dirr-smith': {
    title: 'Root hardiness of container plants, as quoted',
    by: 'M. A. Dirr, Smith',
    standing: 'seen',
  },
  'rutgers-fs528': {
    title: 'Overwintering container plants, fact sheet 528',
    by: 'Rutgers NJAES',
    standing: 'seen',
  },
  havis1976: {
    title: 'Root hardiness of woody ornamentals, HortScience 11',
    by: 'J. R. Havis',
    year: 1976,
    standing: 'memory',
  },
  jars37: {
    title: 'Journal of the American Rhododendron Society 37(4), citing Good and Steponkus 1977',
    by: 'American Rhododendron Society',
    standing: 'seen',
  },
  santamour1979: {
    title: 'Root hardiness of green ash seedlings from different provenances, J. Arboriculture 5, abstract',
    by: 'F. S. Santamour',
    year: 1979,
    standing: 'seen',
  },
  'bay-weekly': {
    title: 'Freezing to death, a column on container plants in winter',
    by: 'Bay Weekly',
    standing: 'seen',
  },
  mathers: {
    title: 'Root hardiness of Ilex opaca, as quoted by growers',
    by: 'H. Mathers',
    standing: 'seen',
  },
  post1978: {
    title: 'Container plants in winter, 26 November 1978',
    by: 'Washington Post',
    year: 1978,
    standing: 'seen',
  },
  tinus2002: {
    title: 'Overwintering of longleaf pine seedlings',
    by: 'R. W. Tinus, US Forest Service',
    year: 2002,
    standing: 'seen',
  },
  'vega-weather': {
    title: 'weather.csv of the open package vega-datasets 3.2.1: daily lows and highs of 2012 to 2015',
    by: 'National Oceanic and Atmospheric Administration, US Government Dataset',
    year: 2015,
    link: 'https://github.com/vega/vega-datasets',
    standing: 'seen',
  },
  kusuda1965: {
    title:
      'Earth temperature and thermal diffusivity at selected stations in the United States, ASHRAE Transactions 71',
    by: 'T. Kusuda, P. R. Achenbach',
    year: 1965,
    standing: 'memory',
  },
  johansen1975: {
    title:
      'Thermal conductivity of soils; as recommended by O. T. Farouki, Thermal properties of soils, 1981',
    by: 'O. Johansen, thesis, Trondheim',
    year: 1975,
    standing: 'memory',
  },
  iso13370: {
    title: 'ISO 13370 Thermal performance of buildings: heat transfer via the ground',
    by: 'ISO',
    standing: 'memory',
  },
  more1978: {
    title:
      'The Levenberg–Marquardt algorithm: implementation and theory, Lecture Notes in Mathematics 630, p. 105',
    by: 'J. J. Moré',
    year: 1978,
    standing: 'memory',
  },
  jcgm100: {
    title: 'JCGM 100 Evaluation of measurement data: guide to the expression of uncertainty in measurement',
    by: 'Joint Committee for Guides in Metrology',
    year: 2008,
    standing: 'memory',
  },
  hasofer1974: {
    title: 'Exact and invariant second-moment code format, J. Eng. Mech. Div. ASCE 100, 111 to 121',
    by: 'A. M. Hasofer, N. C. Lind',
    year: 1974,
    standing: 'memory',
  },
  // What follows is checked against, not computed with.
  'open-libraries': {
    title:
      'Open libraries with their examples and tests: ht, fluids, chemicals, CoolProp, iapws, psychrolib, SecondaryCoolantProps, preMetabolizer',
    by: 'their authors',
    standing: 'seen',
  },
  'textbook-companions': {
    title:
      'Python textbook companions: worked examples of textbooks, solved again with the books’ own inputs',
    by: 'FOSSEE, Indian Institute of Technology Bombay, and contributors',
    link: 'https://github.com/FOSSEE/Python-Textbook-Companions',
    standing: 'seen',
  },
  'study-pages': {
    title: 'Solutions of problems of Çengel’s book, on pages for students',
    by: 'several sites',
    standing: 'seen',
  },
  tanaka2001: {
    title: 'Recommended table for the density of water between 0 °C and 40 °C, Metrologia 38',
    by: 'M. Tanaka and others, for the CIPM',
    year: 2001,
    standing: 'seen',
  },
  kell1975: {
    title: 'Density, thermal expansivity, and compressibility of liquid water, J. Chem. Eng. Data 20',
    by: 'G. S. Kell',
    year: 1975,
    standing: 'seen',
  },
  'iapws-r12': {
    title: 'Release R12-08 on the viscosity of ordinary water substance',
    by: 'International Association for the Properties of Water and Steam',
    year: 2008,
    standing: 'seen',
  },
  'iapws-r15': {
    title: 'Release R15-11 on the thermal conductivity of ordinary water substance',
    by: 'International Association for the Properties of Water and Steam',
    year: 2011,
    standing: 'seen',
  },
  'iapws-95': {
    title: 'Release R6-95 on the thermodynamic properties of ordinary water substance',
    by: 'International Association for the Properties of Water and Steam',
    standing: 'seen',
  },
  'iapws-r10': {
    title: 'Release R10-06 on an equation of state for ice Ih',
    by: 'International Association for the Properties of Water and Steam',
    year: 2006,
    standing: 'seen',
  },
  'lemmon-jacobsen2004': {
    title:
      'Viscosity and thermal conductivity equations for nitrogen, oxygen, argon, and air, Int. J. Thermophysics 25',
    by: 'E. W. Lemmon, R. T. Jacobsen',
    year: 2004,
    standing: 'seen',
  },
  tsilingiris2008: {
    title:
      'Thermophysical and transport properties of humid air between 0 and 100 °C, Energy Conversion and Management 49',
    by: 'P. T. Tsilingiris',
    year: 2008,
    standing: 'seen',
  },
  cengel: {
    title: 'Heat and Mass Transfer: A Practical Approach, examples and problems',
    by: 'Y. A. Çengel',
    standing: 'seen',
  },
  holman: { title: 'Heat Transfer', by: 'J. P. Holman', standing: 'seen' },
  janna: { title: 'Engineering Heat Transfer', by: 'W. S. Janna', standing: 'seen' },
  sukhatme: { title: 'A Textbook on Heat Transfer', by: 'S. P. Sukhatme', standing: 'seen' },
  nag: { title: 'Basic and Applied Thermodynamics', by: 'P. K. Nag', standing: 'seen' },
  singh: { title: 'Applied Thermodynamics', by: 'O. Singh', standing: 'seen' },
  hundy: {
    title: 'Refrigeration and Air-Conditioning',
    by: 'G. F. Hundy, A. R. Trott, T. C. Welch',
    standing: 'seen',
  },
  mehta: { title: 'Principles of Power System', by: 'V. K. Mehta, R. Mehta', standing: 'seen' },
  thareja: {
    title: 'A Textbook of Electrical Technology, volume III',
    by: 'B. L. Theraja, A. K. Theraja',
    standing: 'seen',
  },
  'churchill-bernstein1977': {
    title:
      'A correlating equation for forced convection to a circular cylinder in crossflow, J. Heat Transfer 99',
    by: 'S. W. Churchill, M. Bernstein',
    year: 1977,
    standing: 'seen',
  },
  roymech: { title: 'Heat loss from bare horizontal pipes, a table', by: 'RoyMech', standing: 'seen' },
  'exam-pages': {
    title: 'Worked examples of voltage drop and continuous load, pages for electricians that agree',
    by: 'several sites',
    standing: 'seen',
  },
  'engineer-fix': { title: 'How many amps does heat tape draw', by: 'Engineer Fix', standing: 'seen' },
  'usu-extension': {
    title: 'Soil-warming cable for beds, an extension text',
    by: 'Utah State University',
    standing: 'seen',
  },
  'spiral-manual': {
    title: 'Installation manual of a heating cable, address withheld',
    by: 'a maker of heating cables',
    standing: 'seen',
  },
  'glycol-glossary': {
    title: 'Glossary of glycol terms, with a worked example of a mix by weight',
    by: 'ExpertCtr',
    standing: 'seen',
  },
  'trade-glycol-table': {
    title: 'Trade table of inhibited heat-transfer glycols',
    by: 'makers of heat-transfer fluids',
    standing: 'memory',
  },
  swinbank1963: {
    title: 'Long-wave radiation from clear skies, Q. J. R. Meteorol. Soc. 89',
    by: 'W. C. Swinbank',
    year: 1963,
    standing: 'memory',
  },
  iso6946: {
    title: 'ISO 6946 Building components: thermal resistance and thermal transmittance',
    by: 'ISO',
    standing: 'memory',
  },
  en673: {
    title: 'EN 673 Glass in building: determination of thermal transmittance',
    by: 'CEN',
    standing: 'memory',
  },
  'r-value-blog': {
    title: 'Consider the R-value, a trade column on greenhouse glazing, address withheld',
    by: 'a supplier of greenhouses',
    standing: 'seen',
  },
  rasheed2017: {
    title:
      'A model of the overall heat transfer coefficient of greenhouse covers, Spanish J. Agric. Res. 15, abstract',
    by: 'A. Rasheed, J. W. Lee, H. W. Lee',
    year: 2017,
    standing: 'seen',
  },
  geoola2009: {
    title: 'Overall heat transfer coefficient of greenhouse films, dry and wet, Polymer Testing, abstract',
    by: 'F. Geoola and others',
    year: 2009,
    standing: 'seen',
  },
  'wac-51-11c': {
    title: 'Washington State Energy Code, WAC 51-11C, table A106.1, F-factors of slabs on grade',
    by: 'Washington State Building Code Council',
    standing: 'seen',
  },
  'scotland-6c': {
    title: 'Guidance on the Building (Scotland) Regulations, annex 6.C, U-values of ground floors',
    by: 'Scottish Executive',
    standing: 'seen',
  },
  'approved-document-l': {
    title: 'Approved Document L, appendix C, U-values of solid ground floors',
    by: 'Office of the Deputy Prime Minister, England and Wales',
    year: 2002,
    standing: 'memory',
  },
  'ihve-a3': {
    title:
      'IHVE Guide A3, U-values of solid floors with four exposed edges, as a design handbook reprints them',
    by: 'Institution of Heating and Ventilating Engineers',
    year: 1977,
    standing: 'seen',
  },
  'floor-program': {
    title: 'Output of a program for U-values of solid ground floors by the CIBSE method',
    by: 'an engineer, on a site for documents',
    standing: 'seen',
  },
  energyplus: {
    title: 'EnergyPlus, tests of its model of undisturbed ground temperature',
    by: 'US Department of Energy and contributors',
    standing: 'seen',
  },
  oke1987: {
    title: 'Boundary Layer Climates, 2nd edition, table 2.1, thermal properties of natural materials',
    by: 'T. R. Oke',
    year: 1987,
    standing: 'memory',
  },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof sources;

export { cite, type Citation } from './cite.ts';
