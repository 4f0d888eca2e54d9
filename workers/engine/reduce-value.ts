import type { Tools } from './evaluation.ts';
import type { Value } from './values.ts';

/** A structure value at 1/scale: box means of coverage, centre samples of labels. */
export async function reduceValue(value: Value, scale: number, tools: Tools): Promise<Value> {
  const smaller = (size: number) => Math.ceil(size / scale);
  if (value.type === 'drawing') {
    const line = tools.plane(smaller(value.line.width), smaller(value.line.height));
    await tools.bands('reduceCoverage', { from: value.line, to: line, scale }, line.height);
    return { ...value, line, ppi: value.ppi / scale };
  }
  if (value.type === 'regions') {
    const labels = tools.labels(smaller(value.labels.width), smaller(value.labels.height));
    await tools.bands('reduceLabels', { from: value.labels, to: labels, scale }, labels.height);
    return { ...value, labels, ppi: value.ppi / scale };
  }
  throw new Error(`${value.type} cannot be reduced`);
}
