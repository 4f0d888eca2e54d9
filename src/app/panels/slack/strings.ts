const hundredth = new Intl.NumberFormat('en', { maximumFractionDigits: 2 });
const mm = (value: number) => `${hundredth.format(value)} mm`;
const borders = (count: number) => (count === 1 ? 'one border' : `${count} borders`);

/** Every text of the panel of register slack. */
export const slackTexts = {
  title: 'Register slack',
  working: 'Measuring how far the plates may drift',
  show: 'Show it on the print',
  tolerance: (along: number, across: number) =>
    `This press may drift ${mm(along)} along the feed and ${mm(across)} across it. Set it in the press of the job, or in Register offset.`,
  key: 'On the print: thick lines show bare paper, hatched ones another overprint, thin ones hold.',
  plates: 'Least slack of each plate',
  paper: (slack: number) => `paper from ${mm(slack)}`,
  overprint: (slack: number) => `overprint from ${mm(slack)}`,
  noPaper: 'no paper shows',
  noOverprint: 'no overprint shows',
  goTo: (ink: string, what: string) => `${ink}, ${what}: show the place`,
  holds: 'Every border holds: no paper shows within the tolerance.',
  fails: (count: number) => `Paper shows at ${borders(count)}`,
  noteOverprints: (count: number) =>
    `Another overprint shows at ${borders(count)}; none of them bares paper.`,
  fault: (ink: string, short: number) => `${ink}: ${mm(short)} of paper`,
  between: { fill: 'between fills', line: 'beside the line', mark: 'at an edge within a region' },
  trap: (width: number) => `Trap ${mm(width)}`,
  trapStep: (width: number) => `Trap one border by ${mm(width)}`,
  inset: (width: number) => `Fills ${mm(width)} under the line`,
  heavier: (width: number) => `Line heavier by ${mm(width)}`,
  all: 'Mend all',
  allHelp: (trap: number | null, inset: number | null) =>
    [trap === null ? '' : `a trap of ${mm(trap)}`, inset === null ? '' : `fills ${mm(inset)} under the line`]
      .filter((part) => part !== '')
      .join(' and '),
  allStep: 'Mend the register slack',
  traps: 'Traps',
  trapsCount: (trapped: number, all: number) => `${trapped} of ${borders(all)} trapped`,
  spreads: (inks: string, width: number) => `${inks}: spread by ${mm(width)}`,
  staysBack: (inks: string, width: number) => `${inks}: held back by ${mm(width)}`,
  overlap: (recipe: string) => `overlap: ${recipe}`,
  why: 'why',
  whyOf: (what: string) => `why: ${what}`,
} as const;
