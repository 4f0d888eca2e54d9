const width = new Intl.NumberFormat('en', { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0, signDisplay: 'negative' });

const tenth = new Intl.NumberFormat('en', { maximumFractionDigits: 1 });

/** A place as short as a narrow column needs it. */
const placeText = ({ x, y }: { x: number; y: number }) => `${whole.format(x)}, ${whole.format(y)}\u00a0mm`;

const regions = (count: number) => (count === 1 ? '1 region' : `${whole.format(count)} regions`);

/** Every text of the panel Regions. */
export const regionPanelTexts = {
  title: 'Regions',
  at: placeText,
  count: (count: number) => whole.format(count),
  notYet: 'Looking for regions',
  more: (count: number) => `${count} more`,
  fewer: 'fewer',
  chosen: {
    title: 'Chosen',
    none: 'None chosen. Take Choose below the print, then click regions.',
    count: regions,
    actions: 'Chosen regions',
    group: 'Make a group',
    tint: 'Tint',
    tintHelp: 'Give the chosen regions the recipe in hand',
    beside: 'All beside',
    besideHelp: 'Choose every region that lies in the same region as the last chosen one',
    clear: 'Clear',
    nothingInHand: 'Take a recipe in hand first',
  },
  groups: {
    title: 'Groups',
    name: (place: number) => `Group ${place}`,
    nameOf: 'Name of the group',
    count: (here: number, gone: number) => `${regions(here)}${gone > 0 ? `, ${gone} gone` : ''}`,
    actions: (name: string) => `Group ${name}`,
    gone: (count: number) =>
      count === 1
        ? '1 region is gone; it stays listed in case it comes back.'
        : `${count} regions are gone; they stay listed in case they come back.`,
    tint: 'Tint',
    tintHelp: (name: string) => `Give all of ${name} the recipe in hand`,
    choose: 'Choose',
    chooseHelp: (name: string) => `Choose the regions of ${name}`,
    add: 'Add chosen',
    take: 'Take chosen out',
    rename: 'Rename',
    remove: 'Delete',
    steps: {
      make: (name: string) => `Make group ${name}`,
      add: (count: number, name: string) => `Add ${regions(count)} to ${name}`,
      take: (name: string) => `Take regions out of ${name}`,
      rename: 'Rename group',
      remove: (name: string) => `Delete ${name}`,
    },
  },
  openings: {
    title: 'Openings',
    closed: (count: number, widestMm: number) =>
      `${whole.format(count)} closed, widest ${width.format(widestMm)} mm`,
    noneClosed: 'None had to be closed',
    opened: (count: number) => `${whole.format(count)} opened by hand`,
    wider: 'Wider than the gap, still open:',
    gap: (widthMm: number) => `${width.format(widthMm)} mm`,
    behind: (partsMm2: number) => `parts ${(partsMm2 < 10 ? tenth : whole).format(partsMm2)}\u00a0mm²`,
    goTo: (place: string) => `Show this opening, at ${place}`,
    close: 'close it',
    closeHelp: (place: string) => `Go to ${place} with Draw wall in hand`,
  },
  edits: {
    title: 'By hand',
    none: 'Nothing changed by hand.',
    names: {
      'open-wall': 'Wall opened',
      'draw-wall': 'Wall drawn',
      join: 'Joined',
      cut: 'Cut',
      'ignore-mark': 'Mark ignored',
    },
    goTo: 'Show this on the print',
    remove: 'undo',
    removeHelp: (name: string, place: string) => `undo: ${name.toLowerCase()} at ${place}`,
  },
} as const;
