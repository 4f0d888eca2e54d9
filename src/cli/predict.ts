import { BadInput } from '../graph/complaint.ts';
import { refuseDoubles } from '../graph/doubles.ts';
import { type InkFile, inkFileSchema } from '../graph/inks.ts';
import { readJson } from '../graph/json-text.ts';
import { checkShape } from '../graph/parse-job.ts';
import { type Predictions, recipesSchema } from '../graph/predictions.ts';
import type { Recipe } from '../graph/recipe.ts';
import { type PrintModel, printModel } from '../ink/model.ts';
import { roundedLab } from '../ink/rounded-lab.ts';
import { screenOf } from '../ink/screen.ts';
import { readArguments } from './arguments.ts';
import { BadUse, DONE } from './outcome.ts';
import { readText } from './read-text.ts';

export const PREDICT_USAGE = 'keyblock predict INKS --recipes FILE [--json]';

const OPTIONS = { recipes: { type: 'string' }, json: { type: 'boolean', default: false } } as const;

/** The colours that recipes print in some inks on their paper. Resolves to the exit code. */
export async function predict(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, PREDICT_USAGE);
  if (values.recipes === undefined) throw new BadUse(`--recipes is missing. Usage: ${PREDICT_USAGE}`);
  about(files[0]!);
  const inks = checkShape(inkFileSchema, readJson(await readText(files[0]!), 'ink file'));
  refuseDoubles('inks', inks.inks);
  const model = modelOf(inks);
  about(values.recipes);
  const recipes = checkShape(recipesSchema, readJson(await readText(values.recipes), 'list of recipes'));
  const ids = inks.inks.map(({ id }) => id);
  const predictions = recipes.map((recipe, i) => predicted(model, ids, recipe, i + 1));
  if (values.json) process.stdout.write(`${JSON.stringify(predictions)}\n`);
  else process.stdout.write(`${tableOf(predictions, model).join('\n')}\n`);
  return DONE;
}

function modelOf(file: InkFile): PrintModel {
  try {
    return printModel(file);
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

function predicted(
  model: PrintModel,
  ids: readonly string[],
  recipe: Recipe,
  place: number,
): Predictions[number] {
  const stranger = Object.keys(recipe).find((id) => !ids.includes(id));
  if (stranger !== undefined)
    throw new BadInput(
      `recipe ${place}: there is no ink "${stranger}"; the ink file holds ${ids.join(', ')}`,
    );
  const lab = model.labOf(ids.map((id) => (recipe[id] ?? 0) / 100));
  return { recipe, lab: roundedLab(lab), ...screenOf(lab) };
}

function tableOf(predictions: Predictions, { notes }: PrintModel): string[] {
  const rows = predictions.map(({ recipe, lab, hex, onScreen }) => {
    const inks = Object.entries(recipe).map(([id, percent]) => `${id} ${percent}`);
    const numbers = lab.map((value) => value.toFixed(2).padStart(8)).join('');
    return {
      inks: inks.join(', ') || 'paper',
      rest: `${numbers}  ${hex}${onScreen ? '' : '  not on screen'}`,
    };
  });
  const widest = Math.max(0, ...rows.map(({ inks }) => inks.length));
  return [
    ...rows.map(({ inks, rest }) => `${inks.padEnd(widest)}${rest}`),
    ...notes.map(({ message }) => `note: ${message}`),
  ];
}
