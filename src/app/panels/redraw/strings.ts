/** Every text of the redraw report. */
export const redrawTexts = {
  title: 'Redraw',
  states: {
    kept: 'kept',
    moved: 'moved',
    split: 'in pieces',
    merged: 'merged',
    new: 'new',
    gone: 'gone',
  },
  explained: {
    kept: 'as they were',
    moved: 'elsewhere or of another shape; their recipes went along',
    split: 'pieces of one region; each has its recipe',
    merged: 'several in one; the largest gave its recipe',
    new: 'were not there; they print what lay there before',
    gone: 'no longer there; their recipes can be given to others',
  },
  count: (count: number, state: string) => `${count} ${state}`,
  open: (count: number) => (count === 0 ? 'all looked at' : `${count} to look at`),
  ghost: 'Old lines over the print',
  left: 'without a sure place',
  show: 'show',
  showOf: (message: string) => `show: ${message}`,
  accept: 'right',
  acceptOf: (what: string) => `right: ${what}`,
  acceptAll: 'All of these are right',
  region: (id: string) => `region ${id}`,
  from: (id: string, old: string) => `region ${id}, was ${old}`,
  was: (old: string) => `region ${old} of the old lines`,
  give: (id: string) => `recipe of another for region ${id}`,
  giveShort: 'recipe of another',
  clear: 'Drop what is gone',
  clearHelp: 'Recipes, groups and pins of regions that are no longer there. One step to undo.',
  away: 'Put the report away',
  sure: (share: number) => `${Math.round(100 * share)} % alike`,
  steps: {
    accept: 'Accept a redrawn region',
    acceptAll: 'Accept redrawn regions',
    give: 'Give a redrawn region another recipe',
    clear: 'Drop regions that are gone',
    away: 'Put the redraw report away',
  },
  done: (kept: number, others: number) =>
    others === 0
      ? `All ${kept} regions were found again.`
      : `${kept} regions were found as they were, ${others} are in the redraw report.`,
  otherPicture:
    'This is another picture altogether: nothing was carried over. Undo brings the old drawing back; its recipes are kept either way.',
} as const;
