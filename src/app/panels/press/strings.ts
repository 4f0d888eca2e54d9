import type { FigureSource } from '../../../graph/press.ts';

export const pressTexts = {
  title: 'Press check',
  open: (count: number) => (count === 0 ? '' : `${count} to look at`),
  press: 'Press',
  none: 'none chosen',
  noneHelp:
    'Choose the press to look for what it cannot print. Without one, only what fails everywhere is found.',
  go: 'Check the plates',
  again: 'Check again',
  stale: 'The job has changed since.',
  running: 'Checking',
  cancel: 'Cancel',
  clean: 'Nothing to complain of.',
  errors: 'Will not print',
  warnings: 'Look at this',
  meant: 'Meant',
  goTo: 'Show the place on the print',
  mark: 'meant',
  markHelp: (message: string) => `Mark as meant: ${message}`,
  unmark: 'not meant',
  unmarkHelp: (message: string) => `No longer meant: ${message}`,
  figures: 'Figures of this press',
  figuresHelp:
    'To start from; put in what your printer says or a test of your own shows. An empty figure is not looked for.',
  source: (title: string) => `Where "${title}" comes from`,
  sources: {
    'own-test': 'own test',
    printer: 'printer',
    published: 'published',
    'common-practice': 'common practice',
  } satisfies Record<FigureSource, string>,
  empty: 'not looked for',
  steps: {
    press: (name: string) => `Press: ${name}`,
    noPress: 'No press',
    figure: (title: string) => `Press: ${title.toLowerCase()}`,
    mark: 'Fault marked as meant',
    unmark: 'Fault no longer meant',
  },
} as const;
