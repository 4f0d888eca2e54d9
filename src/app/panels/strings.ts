const figure = new Intl.NumberFormat('en', { maximumFractionDigits: 1 });
const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0, signDisplay: 'negative' });

/** Every text of the panels Recipes and Colourways. */
export const panelTexts = {
  recipes: {
    title: 'Recipes',
    inHand: 'In hand',
    nothing: 'Nothing in hand',
    nothingHelp: 'Take a swatch, or press 1 to 9.',
    putDown: 'Put down',
    paper: 'bare paper',
    percent: (value: number) => `${figure.format(value)} %`,
    tint: (value: number) => figure.format(value),
    short: (tints: readonly number[]) => tints.map((tint) => figure.format(tint)).join('/'),
    tintOf: (ink: string) => `Tint of ${ink}, %`,
    stopsOf: (ink: string) => `Usual tints of ${ink}`,
    lab: (lab: readonly [number, number, number]) => {
      const [l, a, b] = lab.map((value) => whole.format(value).replace('-', '\u2212'));
      return `L\u00a0${l} a\u00a0${a} b\u00a0${b}`;
    },
    predicted: 'predicted',
    offScreen: 'beyond this screen',
    beyond: (recipe: string) => `${recipe} (beyond this screen)`,
    inUse: 'In use',
    numbered: (place: number, recipe: string) => (place <= 9 ? `Recipe ${place}: ${recipe}` : recipe),
    more: (count: number) => `${count} more`,
    fewer: 'fewer',
    tints: 'Tints and mixes',
    single: (ink: string) => ink,
    pair: (one: string, other: string) => `${one} with ${other}`,
    mixing: 'Mixing the colours',
    cannot: (why: string) => `The colours cannot be predicted: ${why}`,
  },
  colourways: {
    title: 'Colourways',
    add: 'Add colourway',
    addShort: 'Add',
    duplicate: 'Duplicate',
    rename: 'Rename',
    remove: 'Delete',
    propose: 'Propose',
    compare: 'Compare',
    name: 'Name of the colourway',
    actions: (name: string) => `Colourway ${name}`,
    steps: {
      show: (name: string) => `Show ${name}`,
      add: 'Add colourway',
      duplicate: (name: string) => `Duplicate ${name}`,
      rename: 'Rename colourway',
      remove: (name: string) => `Delete ${name}`,
    },
  },
} as const;
