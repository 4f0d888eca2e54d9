import { BATCH_USAGE, batch } from './batch.ts';
import { CHART_USAGE, chart } from './chart.ts';
import { CHECK_USAGE, check } from './check.ts';
import { EDITION_USAGE, edition } from './edition.ts';
import { INK_SETS_USAGE, inkSets } from './ink-sets.ts';
import { MATCH_USAGE, match } from './match.ts';
import { NODES_USAGE, nodes } from './nodes.ts';
import { BAD_INPUT, lineFor } from './outcome.ts';
import { PREDICT_USAGE, predict } from './predict.ts';
import { REDRAW_USAGE, redraw } from './redraw.ts';
import { REGIONS_USAGE, regions } from './regions.ts';
import { RENDER_USAGE, render } from './render.ts';
import { SCHEMAS_USAGE, schemas } from './schemas.ts';
import { SURVEY_USAGE, survey } from './survey.ts';

type Command = (args: string[], about: (file: string) => void) => Promise<number>;

const COMMANDS: Record<string, { run: Command; usage: string }> = {
  render: { run: render, usage: RENDER_USAGE },
  regions: { run: regions, usage: REGIONS_USAGE },
  survey: { run: survey, usage: SURVEY_USAGE },
  redraw: { run: redraw, usage: REDRAW_USAGE },
  match: { run: match, usage: MATCH_USAGE },
  batch: { run: batch, usage: BATCH_USAGE },
  check: { run: check, usage: CHECK_USAGE },
  chart: { run: chart, usage: CHART_USAGE },
  edition: { run: edition, usage: EDITION_USAGE },
  predict: { run: predict, usage: PREDICT_USAGE },
  'ink-sets': { run: inkSets, usage: INK_SETS_USAGE },
  nodes: { run: nodes, usage: NODES_USAGE },
  schemas: { run: schemas, usage: SCHEMAS_USAGE },
};

const USAGE = `Keyblock, headless. Commands:\n${Object.values(COMMANDS)
  .map(({ usage }) => `  ${usage}`)
  .join('\n')}\nExit code 0: done; 1: done, but the job has faults; 2: bad input.\n`;

async function main(argv: string[]): Promise<number> {
  const [name = '', ...args] = argv;
  if (name === 'help' || name === '--help') {
    process.stdout.write(USAGE);
    return 0;
  }
  if (!Object.hasOwn(COMMANDS, name)) {
    process.stderr.write(
      `keyblock: there is no command "${name}"; choose among ${Object.keys(COMMANDS).join(', ')}\n`,
    );
    return BAD_INPUT;
  }
  let subject: string | null = null;
  try {
    return await COMMANDS[name]!.run(args, (file) => {
      subject = file;
    });
  } catch (error) {
    process.stderr.write(`${lineFor(error, subject)}\n`);
    return BAD_INPUT;
  }
}

/** Whoever reads our output may close it early, as `head` does. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

process.exitCode = await main(process.argv.slice(2));
