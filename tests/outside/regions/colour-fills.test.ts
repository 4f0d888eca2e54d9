import { expect, it } from 'vitest';
import { lineOf } from '../../bench/regions/drawings.ts';
import { regionsOf } from '../../bench/regions/find.ts';
import { flatColours, purities } from './flat-colours.ts';

/**
 * Drawings of the npm package `openmoji` (CC BY-SA 4.0) whose black variant closes off three areas and more, each of
 * which the coloured variant fills with one flat colour over at least 98 %. The first forty of them by the hash of
 * their names.
 */
const NAMES = (
  '1F98B E0A1 1F932 1F3F5 1F46F-200D-2642-FE0F 1F3BC 1F9DE-200D-2642-FE0F E32B 2692 1F54C 1F9F0 1F6A0 1F54B 1FA92 ' +
  '1F9CB 1F58A 264B 1F9D1-200D-1F9D1-200D-1F9D2-200D-1F9D2 1F330 1F69B 1F325 1F3DB 1FAEA 1F94B 1F644 1F10D E010 ' +
  '1F356 1F4EC 1F4D7 E325 1F469-200D-2695-FE0F E343 1F469-200D-1F466 1F3E0 1F414 1F91E 1F6B5-200D-2640-FE0F E157 E340'
).split(' ');
const GAP = 2;

it.each(NAMES)('regions of %s hold one colour each of the coloured drawing', async (name) => {
  const line = await lineOf(name, 1);
  const labels = await regionsOf(line, { gap: GAP, roughness: 0 });
  const field = labels[0];
  const regions = purities(labels, await flatColours(name, line), line).filter(
    ({ label }) => label !== field,
  );
  expect(regions.length).toBeGreaterThanOrEqual(3);
  for (const { purity } of regions) expect(purity).toBeGreaterThanOrEqual(0.98);
});
