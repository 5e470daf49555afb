// What the comparison asks, group by group. `name` is the member of the request below its home; a
// mistake or a question finds its field by that path. A pair of examples is US, metric.

const choice = (name, label, options) => ({ name, label, options });
const text = (name, label, ...examples) => ({ name, label, examples });
const number = (name, label, ...examples) => ({ name, label, examples, number: true });
const said = (...options) => [['', 'not said'], ...options];

export const finishes = said(
  ['brightFoil', 'bright foil'], ['metallizedFilm', 'metallized film'],
  ['whiteFacing', 'white or coloured facing'], ['bare', 'bare'], ['dampFoil', 'foil, damp'],
  ['wetFoil', 'foil, wet'], ['dustyFoil', 'foil, dusty'], ['paintedSteel', 'painted steel'],
  ['galvanizedSteel', 'galvanized steel'], ['wood', 'wood'],
);

const zones = ['1A', '1B', '2A', '2B', '3A', '3B', '3C', '4A', '4B', '4C', '5A', '5B', '5C',
  '6A', '6B', '7', '8'];

export const groups = [
  { path: '', title: 'How to reckon and show', fields: [
    choice('basis', 'Calculation basis', [
      ['ashrae', 'ASHRAE'], ['iso6946', 'ISO 6946'],
    ]),
    choice('units', 'Words and pictures', [['us', 'US units'], ['metric', 'metric']]),
  ] },
  { path: 'plane', title: 'The plane', fields: [
    choice('kind', 'Plane', [['roof', 'roof'], ['wall', 'wall']]),
    text('slope', 'Slope', '4:12', '18.5 deg'), text('area', 'Area', '1265 ft2', '118 m2'),
    choice('colour', 'Outside colour', said(
      ['light', 'light'], ['medium', 'medium'], ['dark', 'dark'])),
    choice('framing/material', 'Framing', [['wood', 'wood'], ['steel', 'steel']]),
    choice('framing/system', 'Steel system', said(
      ['standingSeamWithBlocks', 'standing seam, blocks'],
      ['throughFastened', 'through-fastened'], ['overGirts', 'over girts'])),
    text('framing/width', 'Member width', '1.5 in', '38 mm'),
    text('framing/spacing', 'Centre to centre', '24 in', '600 mm'),
    text('framing/depth', 'Member depth', '3.5 in', '89 mm'),
  ] },
  { path: 'climate', title: 'Where it stands', fields: [
    { ...choice('place', 'Found by', [
      ['postalCode', 'ZIP code'], ['countyFips', 'county'], ['stationWmo', 'weather station'],
      ['', 'own values only'],
    ]), aside: true },
    text('postalCode', 'ZIP code', '55802'),
    { ...text('countyFips', 'County', 'type its name'), list: 'counties' },
    { ...text('stationWmo', 'Weather station', 'type its name'), list: 'stations' },
    choice('zone', 'Climate zone', [['', 'by place'], ...zones.map((zone) => [zone, zone])]),
  ], more: { title: 'Own design values: they win over the station', fields: [
    text('winterDesign', 'Winter outdoors', '-20 °F', '-29 °C'),
    text('summerDesign', 'Summer outdoors', '88 °F', '31 °C'),
    number('sun', 'Summer sun on it, W/m²', '900'),
    text('heatingDegreeDays', 'Heating degree days', '5500 °F·d', '3050 K·d'),
  ] } },
  { path: 'room', title: 'The room', fields: [
    choice('use', 'Use', said(
      ['dryStorage', 'dry storage'], ['workshop', 'workshop'], ['dwelling', 'dwelling'],
      ['livestock', 'livestock'], ['washBay', 'wash bay'])),
    { ...choice('heated', 'Heated', said(['true', 'yes'], ['false', 'no'])), flag: true },
    text('heatedTo', 'Heated to', '55 °F', '13 °C'),
    text('cooledTo', 'Cooled to', '75 °F', '24 °C'),
  ], more: { title: 'Moisture: own load, heater without a flue', fields: [
    number('moistureExcess', 'Own moisture load, Pa', 'instead of the use'),
    choice('burner/fuel', 'Unvented heater', [
      ['', 'none'], ['naturalGas', 'natural gas'], ['propane', 'propane'],
      ['kerosene', 'kerosene'],
    ]),
    text('burner/input', 'Its input', '60000 Btu/h', '17.6 kW'),
    text('burner/volume', 'Air volume', '40000 ft3', '1130 m3'),
    number('burner/airChangesPerHour', 'Air changes an hour', '0.5'),
  ] } },
  { path: 'fuel', title: 'Heating fuel', folded: 'For yearly cost and payback', fields: [
    choice('kind', 'Fuel', said(
      ['naturalGas', 'natural gas'], ['propane', 'propane'],
      ['heatingOil', 'heating oil'], ['electricity', 'electricity'],
      ['heatPump', 'heat pump'])),
    number('efficiency', 'Efficiency, or COP', '0.85'),
    number('pricePerUnit', 'Price per therm, gal or kWh'),
    text('balancePoint', 'No heat needed above', '50 °F', '10 °C'),
  ] },
  { path: 'code', title: 'Energy code', folded: 'For the code row', fields: [
    choice('standard', 'Code', said(
      ['ashrae90.1', 'ASHRAE 90.1'], ['ieccCommercial', 'IECC commercial'])),
    choice('edition', 'Edition', said(
      ['2016', '2016'], ['2018', '2018'], ['2019', '2019'], ['2021', '2021'])),
    choice('conditioning', 'Conditioning', said(
      ['semiheated', 'semiheated (90.1)'],
      ['nonresidential conditioned', 'nonresidential (90.1)'],
      ['residential conditioned', 'residential (90.1)'], ['all other', 'all other (IECC)'],
      ['Group R', 'Group R (IECC)'])),
    choice('construction', 'Construction', said(
      ['attic and other', 'attic and other (roof)'],
      ['wood-framed and other', 'wood-framed and other (wall)'],
      ['metal building', 'metal building'],
      ['insulation entirely above deck', 'above deck (roof)'])),
  ] },
  { path: 'building', title: 'Rest of the building', folded: 'For the heater’s size and the whole bill', fields: [
    text('volume', 'Volume', '18000 ft3', '510 m3'),
    number('airChangesPerHour', 'Air changes an hour', '0.5'),
    text('slabEdge', 'Slab edge', '140 ft', '43 m'),
  ], lists: ['otherElements'] },
];

const space = [
  choice('side', 'On the side of', said(['cladding', 'the cladding'], ['room', 'the room'])),
  text('thickness', 'Thickness', '3.5 in', '89 mm'),
  choice('kind', 'It is', said(
    ['enclosed', 'enclosed'], ['slightlyVentilated', 'a little vented'],
    ['ventilated', 'open to the wind'], ['claddingRibs', 'only the ribs of the steel'])),
  choice('facing', 'Face opposite', [['', 'painted or wood'], ...finishes.slice(1)]),
];

const spaces = { ...choice('airSpaces', 'Air spaces', [
  ['', 'not said'], ['none', 'none: it touches'], ['stated', 'as stated below'],
]), spaces: true };

const placement = choice('placement', 'It lies', [
  ['', 'as usual for its kind'], ['overFraming', 'over the framing'],
  ['betweenFraming', 'between the framing'], ['underFraming', 'under the framing'],
]);

const money = [
  { ...number('pricePerFt2', 'Price per ft²'), price: true },
  number('price', 'or price in all'), text('area', 'for an area of', 'the plane'),
];

/** What a list holds: word for one of it, most of them, and its fields. */
export const lists = (products) => ({
  options: { word: 'Option', most: 12, fields: [
    { ...choice('product', 'Product', products.map(({ code, title }) => [code, title])),
      wide: true },
    ...money, spaces,
  ], more: { title: 'Own data of this product', fields: [
    text('name', 'Name'), number('perm', 'Perms, dry cup'), placement,
    choice('roomFace', 'Face to the room', [['', 'of the product'], ...finishes.slice(1)]),
    choice('claddingFace', 'Face to the cladding', [['', 'of the product'], ...finishes.slice(1)]),
  ] } },
  rivals: { word: 'Quote', most: 12, fields: [
    { ...text('name', 'Name'), wide: true },
    choice('kind', 'What it is', [
      ['blanket', 'faced blanket'], ['bubbleSheet', 'bubble sheet'], ['foilSheet', 'foil sheet'],
      ['batt', 'batt'], ['closedCellFoam', 'closed-cell foam'], ['openCellFoam', 'open-cell foam'],
      ['polyisoBoard', 'polyiso board'], ['xpsBoard', 'XPS board'], ['epsBoard', 'EPS board'],
      ['cellulose', 'cellulose'],
    ]),
    number('claimedR', 'Claimed R'), text('thickness', 'Thickness', '5/16 in', '8 mm'),
    choice('roomFace', 'Face to the room', finishes),
    choice('claddingFace', 'Face to the cladding', finishes),
    number('perm', 'Perms, dry cup'), ...money, spaces,
  ], more: { title: 'Where it lies, radiant claim', fields: [
    placement, number('claimedRadiantCut', 'Claimed radiant cut, %'),
  ] } },
  airSpaces: { word: 'Air space', most: 2, fields: space },
  otherElements: { word: 'Part', most: 40, fields: [
    text('name', 'Name', 'walls'), text('area', 'Area', '1800 ft2', '167 m2'),
    number('assemblyR', 'Assembly R', '11'),
  ] },
});
