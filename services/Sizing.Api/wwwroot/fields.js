// What the form asks, by roof form and by choice. `name` is the member of the request; the same
// path leads a mistake back to its field.

const length = (name, label, extra = {}) => ({ name, label, ...extra });
const slope = (name, label, extra = {}) => ({ name, label, ...extra });
const choice = (name, label, options, extra = {}) => ({ name, label, options, ...extra });
const optional = { optional: true };

const ridge = [
  choice('ridge', 'Ridge', [['closed', 'closed'], ['vented', 'vented']]),
  length('ventFrom', 'Vent from', { ...optional, when: { ridge: 'vented' } }),
  length('ventTo', 'Vent to', { ...optional, when: { ridge: 'vented' } }),
];

export const forms = [
  ['gable', 'Gable'], ['offsetRidge', 'Offset ridge'],
  ['monoslope', 'Monoslope (sidewall A is the low eave)'], ['gambrel', 'Gambrel'],
  ['doublePitch', 'Double pitch'], ['profile', 'Own cross-section'],
];

export const roofFields = {
  gable: [
    slope('slope', 'Slope'), length('ridgeHeight', 'or peak height', optional), ...ridge,
  ],
  offsetRidge: [
    length('ridgeFromSidewallA', 'Ridge from wall A'), slope('slopeA', 'Slope A'),
    slope('slopeB', 'Slope B'), length('eaveHeightB', 'Eave height B', optional), ...ridge,
  ],
  monoslope: [slope('slope', 'Slope')],
  gambrel: [
    choice('halfOctagon', 'Shape', [
      ['', 'by slopes and run'], ['true', 'half octagon'],
    ], { type: 'flag' }),
    slope('lowerSlope', 'Lower slope', { when: { halfOctagon: '' } }),
    length('lowerRun', 'Lower run', { when: { halfOctagon: '' } }),
    slope('upperSlope', 'Upper slope', { when: { halfOctagon: '' } }), ...ridge,
  ],
  doublePitch: [
    choice('brokenSide', 'Broken side', [['A', 'A'], ['B', 'B'], ['both', 'both']]),
    slope('lowerSlope', 'Lower slope'), length('lowerRun', 'Lower run'),
    slope('upperSlope', 'Upper slope'),
    slope('slopeB', 'Slope of side B', { when: { brokenSide: 'A' } }),
    slope('slopeA', 'Slope of side A', { when: { brokenSide: 'B' } }),
    length('ridgeFromSidewallA', 'Ridge from wall A', optional),
    length('eaveHeightB', 'Eave height B', optional), ...ridge,
  ],
  profile: [...ridge],
};

/** What a form starts with when it is chosen. */
export const roofStarts = {
  gable: { slope: '4:12', ridge: 'closed' },
  offsetRidge: { ridgeFromSidewallA: '10 ft', slopeA: '9:12', slopeB: '4:12', ridge: 'closed' },
  monoslope: { slope: '2:12' },
  gambrel: { lowerSlope: '20:12', lowerRun: '6 ft', upperSlope: '6:12', ridge: 'closed' },
  doublePitch: {
    brokenSide: 'A', lowerSlope: '2:12', lowerRun: '10 ft', upperSlope: '6:12',
    ridgeFromSidewallA: '22 ft', slopeB: '6:12', ridge: 'closed',
  },
  profile: {
    points: [
      { across: '0 ft', up: '10 ft' }, { across: '12 ft', up: '16 ft' },
      { across: '30 ft', up: '10 ft' },
    ],
    ridge: 'closed',
  },
};

export const widthBases = [
  ['outsideOfGirts', 'outside to outside of the girts'],
  ['outsideOfPosts', 'outside to outside of the posts'],
  ['clearSpan', 'clear, inside to inside of the posts'],
];

export const datums = [
  ['stripBase', 'the bottom of the wall strips'], ['floor', 'the finished floor'],
  ['grade', 'grade'], ['splashBoard', 'the bottom of the splash board'],
  ['bearing', 'the floor up to the truss bearing'],
];

const fromPosts = { widthBasis: ['outsideOfPosts', 'clearSpan'] };
const fromBelow = { eaveHeightDatum: ['floor', 'grade', 'splashBoard', 'bearing'] };
const atBearing = { eaveHeightDatum: 'bearing' };

export const basisFields = [
  length('girtThickness', 'Girts outside posts by', { when: fromPosts, start: '1 1/2 in' }),
  length('girtThickness', 'Girts outside posts by', {
    when: { eaveHeightDatum: 'bearing', widthBasis: 'outsideOfGirts' }, start: '1 1/2 in',
  }),
  length('postDepth', 'Post depth', { when: { widthBasis: 'clearSpan' }, start: '5 1/2 in' }),
  length('stripBaseAboveDatum', 'Strip base above that', { when: fromBelow, start: '0 in' }),
  length('heelHeight', 'Heel height', { when: atBearing, start: '6 in' }),
  length('purlinDepth', 'Purlins above chord', { when: atBearing, start: '5 1/2 in' }),
  length('stemWallHeight', 'Stem wall height', optional),
];

/** What few buildings have; `name` may lead into an object of its own. */
export const moreFields = [
  length('roof/eaveOverhang', 'Eave overhang', optional),
  length('roof/rakeOverhang', 'Rake overhang', optional),
  choice('roof/coverOverhangs', 'Overhangs are', [
    ['', 'not covered'], ['true', 'covered'],
  ], { type: 'flag' }),
  length('partition/fromEndwall1', 'Partition from endwall 1', optional),
  choice('partition/insulatedEndwall', 'Insulated part has', [
    ['', 'endwall 1'], ['2', 'endwall 2'],
  ], { type: 'number' }),
  length('framing/purlinSpacing', 'Purlin spacing', optional),
  length('framing/girtSpacing', 'Girt spacing', optional),
];

export const panelFields = [
  length('fromStart', 'From endwall 1'), length('width', 'Width'),
  choice('treatment', 'Blanket', [
    ['coverAndCut', 'covers, is cut out'], ['splitRun', 'stops either side'],
  ]),
];

export const walls = [
  ['sidewallA', 'Sidewall A'], ['sidewallB', 'Sidewall B'],
  ['endwall1', 'Endwall 1'], ['endwall2', 'Endwall 2'],
  ['leanSidewallA', 'Lean-to A sidewall'], ['leanSidewallB', 'Lean-to B sidewall'],
  ['leanEndwallA1', 'Lean-to A endwall 1'], ['leanEndwallA2', 'Lean-to A endwall 2'],
  ['leanEndwallB1', 'Lean-to B endwall 1'], ['leanEndwallB2', 'Lean-to B endwall 2'],
];

export const openingKinds = [
  ['walkDoor', 'Walk door'], ['overheadDoor', 'Overhead door'], ['slidingDoor', 'Sliding door'],
  ['bifoldDoor', 'Bi-fold door'], ['framedOpening', 'Framed opening'], ['window', 'Window'],
  ['louvre', 'Louvre'], ['eaveLight', 'Eave light'],
];

export const openingFields = [
  choice('wall', 'Wall', walls), choice('kind', 'Kind', openingKinds),
  length('fromStart', 'From the start', optional), length('width', 'Width'),
  length('height', 'Height'), length('sill', 'Sill', optional),
];

export const leanToFields = [
  choice('side', 'Side', [['A', 'A'], ['B', 'B']]), length('width', 'Width'),
  slope('slope', 'Slope'), length('drop', 'Below main eave', optional),
  length('fromEndwall1', 'From endwall 1', optional), length('length', 'Length', optional),
  choice('inside', 'Inside', [
    ['', '— choose —'], ['open', 'open to the building'], ['cold', 'cold'],
    ['separate', 'a room of its own'],
  ]),
];

export const pointFields = [length('across', 'Across'), length('up', 'Up')];

export const layouts = [
  ['auto', 'Layout chosen for you'], ['overRidge', 'Over the ridge'],
  ['eaveToRidge', 'Eave to ridge'],
];

export const practiceFields = [
  length('roundUpTo', 'Round up to'), length('eaveTuck', 'Eave tuck'),
  length('ridgeLap', 'Ridge lap'), length('junctionLap', 'Junction lap'),
  length('breakLap', 'Break lap'), length('ventSetback', 'Vent set-back'),
  length('ventFold', 'Vent fold'), length('wallTop', 'Wall top'),
  length('wallBase', 'Wall base'), length('openingHead', 'Opening head'),
  length('cornerWrap', 'Corner wrap'), length('rakeWrap', 'Rake wrap'),
  length('jambMargin', 'Jamb margin'), length('drapeSag', 'Sag between purlins'), length('longestOverRidge', 'Longest over ridge'),
  choice('mergeShortHeaders', 'Short headers', [
    ['', 'merged where better'], ['false', 'never merged'],
  ], { type: 'flag' }),
];
