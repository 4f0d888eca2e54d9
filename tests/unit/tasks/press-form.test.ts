import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPicture } from '../../../src/app/inks/read-picture.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { formLayout } from '../../../src/ink/form/layout.ts';
import { printModel } from '../../../src/ink/model.ts';
import { printOf } from '../../../src/nodes/print.ts';
import type { Client } from '../../../workers/client.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import { pressForm } from '../../../workers/tasks/press-form.ts';
import { type SpotsInput, spots } from '../../../workers/tasks/spots.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob } from '../support/jobs.ts';

const PAGE = { widthMm: 210, heightMm: 297 };
const job = defaultJob({});

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());
const context = () => ({ engine: bench.engine, flag: cancelFlag(), onProgress: () => {} });

describe('a press test form', () => {
  it('is a PNG and a PDF of every plate, a picture of what is predicted and its figures', async () => {
    const { files } = await pressForm({ job, page: PAGE, ppi: 150 }, context());
    expect(files.map(({ name }) => name)).toEqual([
      'form-1-straw.png',
      'form-1-straw.pdf',
      'form-2-brick.png',
      'form-2-brick.pdf',
      'form-3-soot.png',
      'form-3-soot.pdf',
      'chart.png',
      'chart.json',
    ]);
  });

  it('gives its own colours back when its picture is read at the crosses', async () => {
    const { files } = await pressForm({ job, page: PAGE, ppi: 150 }, context());
    const { name, bytes } = files.find((file) => file.name === 'chart.png')!;
    const asset = bench.engine.addAsset({ name, bytes });
    const client = { run: (_: string, input: SpotsInput) => spots(input, context()) } as unknown as Client;
    const { plates, input } = printOf(job.graph.nodes)!;
    const form = formLayout(
      plates.map((id, i) => ({ id, ink: input.inks[i]!.id })),
      PAGE,
    );
    const corners = form.corners.map(([x, y]) => [x / PAGE.widthMm, y / PAGE.heightMm] as const);
    const shape = PAGE.heightMm / PAGE.widthMm;
    const readings = await readPicture(client, { asset, shape, corners, form, paper: input.paper });
    const model = printModel(input);
    for (const { id, tints } of form.patches)
      expect(differenceOf(readings[id]!, model.labOf(tints)), id).toBeLessThan(
        id.includes('straw') ? 4 : 1.5,
      );
  });

  it('is refused for a page without room', async () => {
    const small = { widthMm: 148, heightMm: 105 };
    await expect(pressForm({ job, page: small, ppi: 150 }, context())).rejects.toThrow(/needs a page of/);
  });
});
