const tenth = new Intl.NumberFormat('en', { maximumFractionDigits: 1, minimumFractionDigits: 1 });

/** Every text of the panel of the rough. */
export const roughTexts = {
  title: 'Rough',
  none: 'A colour sketch of the drawing gives every region the recipe that comes nearest to it.',
  choose: 'Choose a rough',
  another: 'Choose another',
  takeOut: 'Take it out',
  step: 'Match a rough',
  outStep: 'Take the rough out',
  settle: 'Keep as recipes',
  settleStep: 'Keep the recipes of the rough',
  settleHelp: 'Writes the matched recipes into this colourway, so that they stay without the rough.',
  matching: 'Matching',
  mean: (mean: number) => `${tenth.format(mean)} apart on average`,
  farthest: 'Farthest from the rough',
  apart: (distance: number) => tenth.format(distance),
  regions: (apart: string, count: number) => (count === 1 ? apart : `${apart}, ${count} regions`),
  far: 'out of reach',
  bare: (count: number) => (count === 1 ? 'One region is not painted.' : `${count} regions are not painted.`),
  show: (told: string) => `${told}: show what is so far from the rough`,
  others: 'others',
  othersOf: (apart: string) => `others: recipes for what is ${apart} off`,
  take: (recipe: string, apart: string) => `Print ${recipe} there, ${apart} off`,
  takeStep: (recipe: string) => `Print ${recipe}`,
} as const;
