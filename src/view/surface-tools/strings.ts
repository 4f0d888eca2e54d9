const figure = new Intl.NumberFormat('en', { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const mm = (value: number) => `${figure.format(value)} mm`;
const count = (things: number, one: string, many: string) => (things === 1 ? one : `${things} ${many}`);

/** A move in words; still where it rounds to nothing. */
function way(value: number, ahead: string, back: string): string {
  return `${mm(Math.abs(value))} ${value < 0 ? back : ahead}`;
}

const CHOOSE = 'Choose';

/** Every text of the tools for areas, hand marks, fades and register. */
export const surfaceTexts = {
  sets: {
    areas: { title: 'Areas', help: 'Parts of the sheet that other steps keep to' },
    marks: { title: 'Hand marks', help: 'Strokes lifted from plates or laid on them' },
    fades: { title: 'Fades', help: 'One recipe running into another within a region' },
    nudge: { title: 'Register', help: 'Shifts one plate against the others in the proof' },
  },
  open: 'Surface',
  openHelp: 'The tools for areas, hand marks, fades and register',
  label: (set: string) => `${set}: tools`,
  setsLabel: 'What to work at',
  settings: 'Settings',
  settingsOf: (set: string) => `Settings of ${set.toLowerCase()}`,
  tools: {
    lasso: { title: 'Lasso', help: 'Draw round a part of the print.' },
    polygon: { title: 'Polygon', help: 'Click the corners, the first again to close it.' },
    rectangle: { title: 'Rectangle', help: 'Drag from corner to corner, or click both.' },
    regions: {
      title: 'Whole regions',
      help: 'Click a region to take it in or leave it out.',
    },
    lineNear: {
      title: 'Line near',
      help: 'Draw along the line that belongs to the area.',
    },
    chooseShape: {
      title: CHOOSE,
      help: 'Click a shape. Drag moves it, Delete takes it out.',
    },
    draw: {
      title: 'Draw',
      help: 'Draw on the print; harder is broader, so is flatter.',
    },
    erase: { title: 'Erase', help: 'Strokes you touch go as a whole.' },
    chooseMark: {
      title: CHOOSE,
      help: 'Click a stroke. Drag moves it, Delete takes it out.',
    },
    straight: {
      title: 'Straight',
      help: 'Drag across a region, to the recipe in hand.',
    },
    round: { title: 'Round', help: 'Drag outwards in a region, to the recipe in hand.' },
    along: { title: 'Along a stroke', help: 'Draw the way the fade runs in a region.' },
    chooseFade: {
      title: CHOOSE,
      help: 'Click a fade. Drag its ends, or all of it.',
    },
    nudge: {
      title: 'Nudge',
      help: 'Drag the plate. Arrow keys: 0.1 mm, with Shift 1 mm.',
    },
  },
  finish: 'Finish',
  areas: {
    which: 'Area',
    of: (titles: readonly string[]) => (titles.length > 0 ? `of ${titles.join(', ')}` : 'wired to nothing'),
    noArea: 'No area yet.',
    forLabel: 'New area for',
    add: 'Make area',
    another: 'Another',
    noTarget: 'No step is left that could keep to an area.',
    near: 'Within',
    nearHelp: 'How far from the path the line still belongs to the area.',
    made: (target: string) =>
      `Area made: wired from the drawing and its regions into ${target}, which now keeps to it`,
    step: (target: string) => `Make an area for ${target}`,
    first: 'Make an area first: the button is in the row of the area tools',
    noRegions: 'The job has no regions that an area could lie over',
    steps: {
      lasso: 'Lasso a part of the area',
      polygon: 'Draw a polygon of the area',
      rectangle: 'Draw a rectangle of the area',
      line: 'Take the line near a path into the area',
      regions: (regions: number, takes: boolean) =>
        `${takes ? 'Take' : 'Leave'} ${count(regions, 'a region', 'regions')} ${takes ? 'into' : 'out of'} the area`,
    },
    said: {
      shape: 'Shape put to the area',
      line: 'Line near the path put to the area',
      regions: (regions: number) => `${count(regions, 'One region', 'regions')} in the area`,
    },
  },
  marks: {
    does: 'What it does',
    doesWords: { lift: 'Lift', 'lift-to': 'Lift to', lay: 'Lay', set: 'Set' },
    doesHelp: {
      lift: 'Takes that share of the ink away',
      'lift-to': 'Leaves at most that tint',
      lay: 'The stronger of plate and stroke prints',
      set: 'That tint takes the place of what is there',
    },
    tint: 'Tint',
    tintHelp: 'How much is lifted, or what tint is reached.',
    edge: 'Edge',
    edgeWords: { clean: 'Clean', dry: 'Dry', stipple: 'Stipple' },
    width: 'Width',
    widthHelp: 'Where the hand presses fully.',
    plates: 'Plates',
    allPlates: 'All plates',
    platesCount: (plates: number) => `${plates} plates`,
    brush: 'Kept brush',
    noBrush: 'Brush',
    keepBrush: 'Keep',
    ofMark: 'Chosen:',
    putIn: (place: string) => `Put Hand marks in ${place}`,
    before: (title: string) => `before ${title}`,
    after: (title: string) => `after ${title}`,
    noPlates: 'The job has no plates that marks could lie on',
    bypassed: 'Hand marks were bypassed and are in use again',
    useAgain: 'Use Hand marks again',
    full: 'No more strokes fit: take some out first',
    steps: {
      draw: 'Draw a stroke',
      erase: (strokes: number) => `Erase ${count(strokes, 'a stroke', 'strokes')}`,
      change: 'Change a stroke',
    },
    said: {
      drawn: (strokes: number) => `Stroke drawn; ${count(strokes, 'the first', 'strokes in all')}`,
      erased: (strokes: number) => `${count(strokes, 'One stroke', 'strokes')} erased`,
      nothing: 'No stroke here',
    },
  },
  fades: {
    from: 'From',
    to: 'To',
    own: 'what the region prints',
    inHand: 'the recipe in hand',
    paper: 'bare paper, as nothing is in hand',
    swap: 'Swap ends',
    fromHand: 'Recipe in hand at the start',
    toHand: 'Recipe in hand at the end',
    noRegion: 'A fade begins within a region',
    steps: { make: 'Fade a region', swap: 'Swap the ends of a fade', end: 'Change an end of a fade' },
    said: (from: string, to: string) => `Fade from ${from} to ${to}`,
  },
  nudge: {
    plate: 'Plate',
    noProof: 'The job has no proof that a plate could be nudged in',
    noPlate: 'Choose a plate first',
    putIn: 'Put Register offset in before the proof',
    step: (ink: string) => `Nudge ${ink}`,
    back: 'Set back',
    backStep: (ink: string) => `Set ${ink} back into register`,
    readout: (alongMm: number, acrossMm: number) =>
      alongMm === 0 && acrossMm === 0
        ? 'in register'
        : `${way(alongMm, 'along the feed', 'against the feed')}, ${way(acrossMm, 'across', 'back across')}`,
  },
  chosen: (what: string) => `${what} chosen`,
  things: { areas: 'Shape', marks: 'Stroke', fades: 'Fade', nudge: '' },
  gone: { areas: 'Shape taken out', marks: 'Stroke taken out', fades: 'Fade taken away', nudge: '' },
  removeStep: {
    areas: 'Take a shape out of the area',
    marks: 'Take a stroke out',
    fades: 'Take a fade away',
    nudge: '',
  },
  moveStep: { areas: 'Move a shape of the area', marks: 'Move a stroke', fades: 'Move a fade', nudge: '' },
  remove: 'Delete',
  letGo: 'Let go',
  nothingNear: 'Nothing to choose here',
  tooSmall: 'Too small to be an area',
} as const;
