/** Every text about house styles. */
export const styleTexts = {
  save: 'Save as a house style',
  title: 'Save as a house style',
  help: 'The wiring, the inks, the settings and the recipes in use, without this drawing. Other drawings can be opened in it.',
  name: 'Name of the style',
  keep: 'Keep it',
  deliver: 'Keep and download it',
  kept: (name: string) => `The style ${name} is kept in this browser.`,
  file: (name: string) => `${name}.style.json`,
  heading: 'House styles',
  none: 'Styles you save are listed here; a style file can be dropped on the window.',
  fresh: (name: string) => `New from a drawing in ${name}`,
  forget: (name: string) => `Forget the style ${name}`,
  missing: (inks: readonly string[]) =>
    `The style brings inks that are not on your shelf: ${inks.join(', ')}. They are in the job all the same.`,
  working: (file: string) => `Laying out ${file}`,
  trouble: (why: string) => `This browser does not keep the style (${why}); download it.`,
} as const;
