const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });
const tenth = new Intl.NumberFormat('en', { maximumFractionDigits: 1 });

/** Every text about colourways proposed and compared. */
export const colourwayTexts = {
  proposals: {
    title: 'Proposed colourways',
    help: 'Other layouts of these recipes over the regions, by rules. What you pin stays as it prints now.',
    palette: 'Recipes to use',
    share: (recipe: string) => `Share of the sheet in ${recipe}, %`,
    leaveOut: (recipe: string) => `leave out ${recipe}`,
    out: 'leave out',
    any: 'any',
    addHand: 'Add the recipe in hand',
    rules: 'Rules',
    contrast: 'Neighbours differ by',
    asNow: 'Regions that print alike now stay alike',
    likeSized: 'Regions of one size and shape print alike',
    likePlaced: 'Regions within one region print alike',
    groups: 'Regions of a group print alike',
    frame: 'At the frame',
    totalPercent: 'Ink on the sheet, at most',
    count: 'How many',
    seed: 'Seed',
    go: 'Propose',
    stop: 'Stop',
    running: (done: number, of: number) => `${done} of ${of}`,
    pins: (count: number) =>
      count === 0 ? 'Nothing is pinned.' : `${count} regions are pinned and stay as they print.`,
    pinChosen: (count: number) => `Pin the ${count} chosen regions`,
    unpinAll: 'Let all pins go',
    keep: 'Keep as a colourway',
    keepOf: (number: number) => `Keep as a colourway: proposal ${number}`,
    number: (number: number) => `Proposal ${number}`,
    name: (number: number) => `Proposal ${number}`,
    fewer: (found: number, asked: number) =>
      `The rules leave room for ${found} clearly different ones, not ${asked}.`,
    contrastKept: (share: number) =>
      share >= 0.9995
        ? 'All neighbours differ enough'
        : `${tenth.format(100 * share)} % of borders differ enough`,
    nearest: (distance: number) => `the nearest two by ${tenth.format(distance)}`,
    shares: (error: number) => `shares missed by ${whole.format(error)} points in all`,
    frameKept: (share: number) => `${whole.format(100 * share)} % of the frame as asked`,
    ink: (total: number) => `${whole.format(total)} % ink`,
    different: (share: number) => `${whole.format(100 * share)} % of the sheet unlike any other here`,
    steps: {
      pin: 'Pin regions',
      unpin: 'Let pins go',
      keep: (name: string) => `Keep ${name}`,
    },
  },
  compare: {
    title: 'Colourways compared',
    ways: { slider: 'under a slider', beside: 'side by side', all: 'all of them' },
    way: 'Show',
    left: 'Left',
    right: 'Right',
    slider: 'How much of the left one shows',
    contact: 'Deliver a contact sheet',
    contactFile: 'contact-sheet.png',
    making: 'Printing the contact sheet',
    made: (file: string) => `${file} is in your downloads.`,
    show: (name: string) => `Show ${name}`,
    pending: 'Printing',
  },
} as const;
