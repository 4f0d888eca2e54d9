const number = new Intl.NumberFormat('en', { maximumFractionDigits: 1 });
const rulerNumber = new Intl.NumberFormat('en', { maximumFractionDigits: 3, signDisplay: 'negative' });
const wholeNumber = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

/** An area with as many digits as mean something. */
const area = (mm2: number) => `${(mm2 < 100 ? number : wholeNumber).format(mm2)} mm²`;
const regions = (count: number) => (count === 1 ? '1 region' : `${count} regions`);

/** Every text of the print view. */
export const strings = {
  print: 'The print',
  keys: 'Arrow keys move the print. Alt with an arrow key goes to the next region that way; Enter tints it with the recipe in hand, Alt with Enter picks its recipe up. Number keys take a recipe in hand, Escape puts it down. T tints, P picks up. Plus, minus and 0 zoom. C chooses regions, O opens walls, W draws one, X cuts, J joins, I ignores a mark: with these in hand arrow keys move a crosshair, with Shift in fine steps; Enter does what a click does, twice at one place to end a path; Backspace takes a corner back, Escape drops it. B draws strokes and E erases them; L, G and R outline an area, A takes whole regions into it, Q the line near a path; F, D and S fade a region; N nudges a plate by arrow keys. V chooses a shape, stroke or fade: arrow keys move it by 0.1 mm, with Shift by 1 mm, Delete takes it out.',
  tools: {
    label: 'Tool',
    tint: { title: 'Tint', help: 'Gives the recipe in hand to every region you touch' },
    pickUp: { title: 'Pick up', help: 'Takes the recipe of the region you touch in hand, then tints again' },
  },
  fit: 'Fit',
  fitName: 'Fit the whole print',
  closer: 'Closer',
  further: 'Further away',
  actual: 'Actual size',
  percent: (share: number) => `${wholeNumber.format(share * 100)} %`,
  zoomLabel: 'Size on screen',
  ruler: 'mm',
  rulerNumber: (mm: number) => rulerNumber.format(mm).replace('-', '\u2212'),
  area,
  tint: (ink: string, percent: number) => `${ink} ${number.format(percent)} %`,
  tintValue: (percent: number) => `${number.format(percent)} %`,
  paper: 'bare paper',
  fadesTo: 'fades to',
  region: (recipe: string, mm2: number) => `${recipe}, ${area(mm2)}`,
  idle: {
    inHand: 'In hand:',
    handEmpty: 'Nothing in hand. Click a region to pick its recipe up.',
  },
  said: {
    tinted: (count: number, recipe: string) => `${regions(count)} tinted: ${recipe}`,
    pickedUp: (recipe: string) => `In hand: ${recipe}`,
    already: (recipe: string) => `Prints ${recipe} already`,
    handEmpty: 'Nothing in hand. Choose a recipe first, or pick one up with Alt and Enter.',
    putDown: 'Nothing in hand',
    noneThatWay: 'No region further that way',
  },
  step: (count: number) => `Tint ${regions(count)}`,
  chooseRecipe: (place: number) => `Take recipe ${place} in hand`,
} as const;
