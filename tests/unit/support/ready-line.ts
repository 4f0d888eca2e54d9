import { lineDrawing as kind } from '../../../src/nodes/line-drawing.ts';
import { type Evaluation, type Evaluations, evaluation } from '../../../workers/engine/evaluation.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { evaluations } from '../../../workers/nodes/registry.ts';

/** Assets of this name are line as it is: width and height, 4 bytes each, then one byte a pixel. */
export const READY_LINE = 'ready.line';

export function bytesOfLine({ width, height, data }: Plane): Uint8Array {
  const bytes = new Uint8Array(8 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  bytes.set(data, 8);
  return bytes;
}

const ready = evaluation(kind, async ({ settings, tools }) => {
  const { bytes } = tools.asset(settings.asset!);
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const line = tools.plane(view.getUint32(0), view.getUint32(4));
  line.data.set(bytes.subarray(8));
  const ppi = settings.ppi ?? 300;
  const mm = [(line.width * 25.4) / ppi, (line.height * 25.4) / ppi] as const;
  return { drawing: { type: 'drawing', line, ppi, mm, artAt: settings.artAt } };
});

/** All evaluations; Line drawing also takes line as it is, which saves a test the opening of a file. */
export function withReadyLine(isReady: (hash: string | null) => boolean): Evaluations {
  const opened = evaluations.get(kind.kind)!;
  const either: Evaluation = {
    kind: kind.kind,
    run: (work) => {
      const { settings } = work as { settings: { asset: string | null } };
      return (isReady(settings.asset) ? ready : opened).run(work);
    },
  };
  return new Map([...evaluations, [kind.kind, either]]);
}
