/** Texts that all sheets over the print share. */
export const sheetTexts = {
  fold: 'fold',
  foldOf: (title: string) => `Fold ${title} away`,
} as const;
