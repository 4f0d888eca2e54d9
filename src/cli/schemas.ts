import { jsonSchemas } from '../graph/json-schema.ts';
import { readArguments } from './arguments.ts';
import { jsonFile, writeFiles } from './write-files.ts';

export const SCHEMAS_USAGE = 'keyblock schemas [--out DIR]';

/** Writes the JSON Schemas of all published shapes. */
export async function schemas(args: string[]): Promise<number> {
  const options = { out: { type: 'string', default: 'out' } } as const;
  const { values } = readArguments(args, options, 0, SCHEMAS_USAGE);
  const files = Object.entries(jsonSchemas()).map(([name, schema]) =>
    jsonFile(`${name}.schema.json`, schema),
  );
  await writeFiles(values.out, files);
  process.stdout.write(`${files.map((file) => file.name).join(', ')} written to ${values.out}\n`);
  return 0;
}
