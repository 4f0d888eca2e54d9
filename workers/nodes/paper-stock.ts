import { paperStock as kind } from '../../src/nodes/paper-stock.ts';
import { evaluation } from '../engine/evaluation.ts';

export const paperStock = evaluation(kind, async ({ settings }) => ({
  paper: {
    type: 'paper',
    stock: { lab: settings.lab, surface: settings.surface },
    tooth: settings.toothPercent / 100,
    toothMm: settings.toothMm,
    fibres: settings.fibresPercent / 100,
    seed: settings.seed,
  },
}));
