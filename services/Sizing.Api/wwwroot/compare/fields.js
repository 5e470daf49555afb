// What the comparison asks. `name` is the member of the request below its group's path; a mistake
// or a question finds its field by that path.

const choice = (name, label, options) => ({ name, label, options });
const text = (name, label, placeholder = '') => ({ name, label, placeholder });
const number = (name, label, placeholder = '') => ({ name, label, placeholder, number: true });

export const finishes = [
  ['', 'not said'], ['brightFoil', 'bright foil'], ['metallizedFilm', 'metallized film'],
  ['whiteFacing', 'white or coloured facing'], ['bare', 'bare'], ['dampFoil', 'foil, damp'],
  ['wetFoil', 'foil, wet'], ['dustyFoil', 'foil, dusty'], ['paintedSteel', 'painted steel'],
  ['galvanizedSteel', 'galvanized steel'], ['wood', 'wood'],
];

const spaces = [
  ['', 'not said'], ['none', 'none: it touches'], ['enclosed', 'one, enclosed'],
  ['slightlyVentilated', 'one, a little vented'], ['ventilated', 'one, open to the wind'],
  ['claddingRibs', 'only the ribs of the steel'],
];

const price = number('pricePerFt2', 'Price per ft²');

export const groups = {
  plane: [
    choice('kind', 'Plane', [['roof', 'roof'], ['wall', 'wall']]),
    text('slope', 'Slope', '4:12'), text('area', 'Area', '1265 ft2'),
    choice('colour', 'Outside colour', [
      ['', 'not said'], ['light', 'light'], ['medium', 'medium'], ['dark', 'dark'],
    ]),
    choice('framing/material', 'Framing', [['wood', 'wood'], ['steel', 'steel']]),
    choice('framing/system', 'Steel system', [
      ['', 'not said'], ['standingSeamWithBlocks', 'standing seam, blocks'],
      ['throughFastened', 'through-fastened'],
    ]),
    text('framing/width', 'Member width', '1.5 in'),
    text('framing/spacing', 'Spacing', '24 in'), text('framing/depth', 'Depth', '3.5 in'),
  ],
  climate: [
    text('postalCode', 'Postal code', '55802'), text('zone', 'Climate zone', 'from the code'),
    text('winterDesign', 'Winter design', 'of the station'),
    text('summerDesign', 'Summer design', 'of the station'),
  ],
  room: [
    choice('use', 'Use', [
      ['', 'not said'], ['dryStorage', 'dry storage'], ['workshop', 'workshop'],
      ['dwelling', 'dwelling'], ['livestock', 'livestock'], ['washBay', 'wash bay'],
    ]),
    { ...choice('heated', 'Heated', [['', 'not said'], ['true', 'yes'], ['false', 'no']]),
      flag: true },
    text('heatedTo', 'Heated to', '55 °F'), text('cooledTo', 'Cooled to', '75 °F'),
  ],
  fuel: [
    choice('kind', 'Fuel', [
      ['', 'not said'], ['naturalGas', 'natural gas, therm'], ['propane', 'propane, gal'],
      ['heatingOil', 'heating oil, gal'], ['electricity', 'electricity, kWh'],
      ['heatPump', 'heat pump, kWh'],
    ]),
    number('efficiency', 'Efficiency or COP', '0.85'), number('pricePerUnit', 'Price per unit'),
    text('balancePoint', 'No heat above', '50 °F'),
  ],
  code: [
    choice('standard', 'Code', [
      ['', 'not said'], ['ashrae90.1', 'ASHRAE 90.1'], ['ieccCommercial', 'IECC commercial'],
    ]),
    choice('edition', 'Edition', [
      ['', 'not said'], ['2016', '2016'], ['2018', '2018'], ['2019', '2019'], ['2021', '2021'],
    ]),
    choice('conditioning', 'Conditioning', [
      ['', 'not said'], ['semiheated', 'semiheated (90.1)'],
      ['nonresidential conditioned', 'nonresidential (90.1)'],
      ['residential conditioned', 'residential (90.1)'], ['all other', 'all other (IECC)'],
      ['Group R', 'Group R (IECC)'],
    ]),
    choice('construction', 'Construction', [
      ['', 'not said'], ['attic and other', 'attic and other (roof)'],
      ['wood-framed and other', 'wood-framed and other (wall)'],
      ['metal building', 'metal building'],
      ['insulation entirely above deck', 'above deck (roof)'],
    ]),
  ],
};

const space = [
  choice('space', 'Air space', spaces),
  { ...choice('airSpaces/0/side', 'On the side of', [
    ['', 'not said'], ['cladding', 'the cladding'], ['room', 'the room'],
  ]), inSpace: true },
  { ...text('airSpaces/0/thickness', 'Its thickness', '3.5 in'), inSpace: true },
];

export const optionFields = (products) => [
  { ...choice('product', 'Product', products.map(({ code, title }) => [code, title])), wide: true },
  price, ...space,
];

export const rivalFields = [
  { ...text('name', 'Name'), wide: true },
  choice('kind', 'What it is', [
    ['blanket', 'faced blanket'], ['bubbleSheet', 'bubble sheet'], ['foilSheet', 'foil sheet'],
    ['batt', 'batt'], ['closedCellFoam', 'closed-cell foam'], ['openCellFoam', 'open-cell foam'],
    ['polyisoBoard', 'polyiso board'], ['xpsBoard', 'XPS board'], ['epsBoard', 'EPS board'],
    ['cellulose', 'cellulose'],
  ]),
  number('claimedR', 'Claimed R'), number('claimedRadiantCut', 'Claimed radiant cut, %'),
  text('thickness', 'Thickness', '5/16 in'), number('perm', 'Perms, dry cup'),
  choice('roomFace', 'Face to the room', finishes),
  choice('claddingFace', 'Face to the cladding', finishes),
  ...space, number('price', 'Price, in all'), text('area', 'for an area of', 'the plane'), price,
];
