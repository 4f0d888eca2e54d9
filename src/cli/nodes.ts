import { z } from 'zod';
import { nodeKinds } from '../nodes/registry.ts';
import { readArguments } from './arguments.ts';

export const NODES_USAGE = 'keyblock nodes [--json]';

/** Lists every node kind with its ports and settings. */
export async function nodes(args: string[]): Promise<number> {
  const { values } = readArguments(args, { json: { type: 'boolean', default: false } }, 0, NODES_USAGE);
  const kinds = [...nodeKinds.values()].map((kind) => ({
    ...kind,
    settings: z.toJSONSchema(kind.settings, { io: 'input' }),
    presets: kind.presets?.list,
  }));
  if (values.json) {
    process.stdout.write(`${JSON.stringify(kinds)}\n`);
    return 0;
  }
  for (const { kind, title, help, inputs, outputs, settings, presets } of kinds) {
    const ports = (list: object) => Object.keys(list).join(', ') || '-';
    process.stdout.write(`${title} (${kind})\n  ${help}\n  ${ports(inputs)} -> ${ports(outputs)}\n`);
    for (const [name, setting] of Object.entries(settings.properties ?? {})) {
      const {
        unit,
        help: says,
        default: usual,
      } = setting as { unit?: string; help?: string; default?: unknown };
      const start = typeof usual === 'object' ? '' : ` = ${usual}${unit ? ` ${unit}` : ''}`;
      process.stdout.write(`    ${name}${start}  ${says ?? ''}\n`);
    }
    for (const preset of presets ?? []) process.stdout.write(`    "${preset.name}"  ${preset.help}\n`);
  }
  return 0;
}
