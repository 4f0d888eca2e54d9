const width = new Intl.NumberFormat('en', { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const place = new Intl.NumberFormat('en', { maximumFractionDigits: 1, signDisplay: 'negative' });

const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

const mm = (value: number) => `${width.format(value)} mm`;
const area = (mm2: number) => `${(mm2 < 10 ? place : whole).format(mm2)} mm²`;
const count = (regions: number) => (regions === 1 ? '1 region' : `${regions} regions`);

/** Every text of the tools that mend regions, and of their marks. */
export const regionTexts = {
  label: 'Region tools',
  open: 'Regions',
  openHelp: 'Shows walls and openings over the print, and the tools to choose and mend regions',
  tools: {
    choose: { title: 'Choose', help: 'Choose: click a region, or sweep across several. Again lets one go.' },
    openWall: {
      title: 'Open wall',
      help: 'Click a wall to take it down, or one taken down to stand it again.',
    },
    drawWall: { title: 'Draw wall', help: 'Draw where regions should part, or click its corners.' },
    cut: { title: 'Cut', help: 'Draw across a region to part it, or click the ends.' },
    join: { title: 'Join', help: 'Drag from one region to another, or click both.' },
    ignoreMark: { title: 'Ignore mark', help: 'Click a lone mark: regions run through it. It still prints.' },
  },
  finish: 'Finish',
  drop: 'Drop it',
  steps: {
    'open-wall': 'Open wall',
    'draw-wall': 'Draw wall',
    join: 'Join regions',
    cut: 'Cut region',
    'ignore-mark': 'Ignore mark',
  },
  takenBack: {
    'open-wall': 'Stand wall again',
    'draw-wall': 'Take drawn wall away',
    join: 'Take join back',
    cut: 'Take cut back',
    'ignore-mark': 'Heed mark again',
  },
  made: {
    'open-wall': 'Wall opened',
    'draw-wall': 'Wall drawn',
    join: 'Regions joined',
    cut: 'Region cut',
    'ignore-mark': 'Mark ignored',
  },
  at: ({ x, y }: { x: number; y: number }) =>
    `${place.format(x)}, ${place.format(y)} mm`.replace('-', '\u2212'),
  marks: {
    closed: (widthMm: number, opens: boolean) =>
      `${mm(widthMm)} opening, closed.${opens ? ' Click to open it.' : ' Open wall takes it down.'}`,
    opened: (widthMm: number, closes: boolean) =>
      `${mm(widthMm)} opening, opened by hand.${closes ? ' Click to close it again.' : ''}`,
    gap: (widthMm: number, partsMm2: number) =>
      `${mm(widthMm)} opening, wider than the gap: open. Draw wall across it parts off about ${area(partsMm2)}.`,
    edit: {
      'open-wall': 'Opened by hand, but no wall stands here.',
      'draw-wall': 'Wall drawn by hand.',
      join: 'Regions joined by hand.',
      cut: 'Cut by hand.',
      'ignore-mark': 'Mark ignored by hand.',
    },
    takesAway: 'Click to take it away.',
  },
  said: {
    noWall: 'No wall within reach',
    noRegion: 'No region here',
    sameRegion: 'Both places are in one region already',
    points: (points: number) => (points === 1 ? '1 corner' : `${points} corners`),
    onePoint: 'One corner makes no path',
    dropped: 'Dropped',
    joinTo: 'Now the region to join it with',
    full: 'No more edits fit: take some back first',
    none: 'Nothing chosen',
    chosen: (regions: number) => `${count(regions)} chosen`,
    chooseFirst: 'Choose a region first',
    noneThatWay: 'No wall further that way',
  },
  unfinished: {
    path: (points: number) =>
      `${points === 1 ? '1 corner' : `${points} corners`}. Click the last one again to finish.`,
    join: 'Click the region to join it with.',
  },
} as const;
