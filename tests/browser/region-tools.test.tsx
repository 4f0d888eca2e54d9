import { createRoot, type Root } from 'react-dom/client';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { demoJob } from '../../src/app/demo-job.ts';
import { Regions } from '../../src/app/panels/regions/Regions.tsx';
import { shortcuts } from '../../src/app/registries.ts';
import type { Job } from '../../src/graph/job.ts';
import { recipeOf } from '../../src/store/edits.ts';
import { jobStore, openJob, undo } from '../../src/store/job-store.ts';
import { handEdits } from '../../src/store/region-edits.ts';
import { resultsStore } from '../../src/store/results-store.ts';
import { setView, viewStore } from '../../src/store/view-store.ts';
import { type Point, toDesk } from '../../src/view/camera.ts';
import { deskStore, fitSheet } from '../../src/view/desk-store.ts';
import { PrintView } from '../../src/view/PrintView.tsx';
import type { RegionMap } from '../../workers/client.ts';
import { mapOf } from '../unit/view/maps.ts';
import '../../src/app/theme.css';

/** Three rooms of 40 x 60 mm; a door between the first two, an open gap between the last two. */
const MAP: RegionMap = {
  ...mapOf(...Array.from({ length: 60 }, () => `${'1'.repeat(40)}${'2'.repeat(40)}${'3'.repeat(40)}`)),
  walls: [
    {
      widthMm: 0.31,
      placeMm: [40, 30],
      endsMm: [
        [40, 29.85],
        [40, 30.15],
      ],
      between: ['r1', 'r2'],
      opened: false,
    },
  ],
  openGaps: [{ widthMm: 1.2, partsMm2: 900, placeMm: [80, 30] }],
};
const RUST = { pantile: 85 };

const job = (): Job => jobStore.getState().job!;
const edits = () => handEdits(job());
const steps = () => jobStore.getState().past.map(({ name }) => name);
const surface = () => page.getByRole('application', { name: 'The print' });
const take = (key: string) => shortcuts.find(({ keys }) => keys === key)!.run();
const onDesk = (x: number, y: number): Point => {
  const { x: left, y: top } = toDesk(deskStore.getState().camera, { x, y });
  return { x: Math.round(left), y: Math.round(top) };
};
const click = (x: number, y: number) => userEvent.click(surface(), { position: onDesk(x, y) });
const drag = (from: [number, number], to: [number, number]) =>
  userEvent.dragAndDrop(surface(), surface(), {
    sourcePosition: onDesk(...from),
    targetPosition: onDesk(...to),
  });
const button = (name: string) => page.getByRole('button', { name, exact: true });

describe('the region tools', () => {
  let root: Root;
  let fresh: Job;

  beforeAll(async () => {
    await page.viewport(1100, 900);
    document.body.innerHTML =
      '<div id="root" style="position: fixed; inset: 0; display: grid; grid-template: 1fr / 220px 1fr"></div>';
    const { job: demo } = await demoJob();
    openJob(demo, []);
    fresh = job();
    resultsStore.setState({ regions: MAP });
    deskStore.setState({ sheet: { width: 120, height: 60 } });
    setView({ showing: { view: 'regions' } });
    root = createRoot(document.getElementById('root')!);
    root.render(
      <>
        <div style={{ overflow: 'auto' }}>
          <Regions />
        </div>
        <div style={{ position: 'relative' }}>
          <PrintView />
        </div>
      </>,
    );
  });

  beforeEach(async () => {
    setView({ inHand: null, chosen: [], showing: { view: 'regions' } });
    take('t');
    jobStore.setState({ job: fresh, past: [], future: [] });
    deskStore.setState({ cursor: null, crosshair: null, mark: null });
    fitSheet();
    await vi.waitFor(() => expect(deskStore.getState().desk.width).toBe(880 - 24));
  });

  afterAll(() => {
    root.unmount();
    setView({ showing: { view: 'proof' } });
    resultsStore.setState({ regions: null });
  });

  it('show in the regions view, and behind their switch over any other', async () => {
    await expect.element(button('Open wall')).toBeVisible();
    setView({ showing: { view: 'proof' } });
    await expect.element(button('Open wall')).not.toBeInTheDocument();
    const regionsSwitch = surface().element().parentElement!.querySelector('[aria-expanded="false"]')!;
    await userEvent.click(regionsSwitch);
    await expect.element(button('Open wall')).toBeVisible();
    expect(viewStore.getState().tool).toBe('choose');
    for (const each of document.querySelectorAll('fieldset[aria-label="Region tools"] button'))
      expect(each.getBoundingClientRect().height).toBeGreaterThanOrEqual(44);
  });

  it('tell of a wall, open it with a click near it, and close it with another', async () => {
    take('o');
    await userEvent.hover(surface(), { position: onDesk(40.5, 31) });
    await expect.element(page.getByText('0.31 mm opening, closed. Click to open it.').first()).toBeVisible();
    await click(41, 30.5);
    expect(edits()).toEqual([{ id: 'e1', does: 'open-wall', atMm: [40, 30] }]);
    await expect.element(page.getByText('None had to be closed')).toBeVisible();
    await click(41, 30.5);
    expect(edits()).toEqual([]);
    expect(steps()).toEqual(['Open wall', 'Stand wall again']);
    await click(20, 10);
    expect(steps()).toHaveLength(2);
  });

  it('draw a wall along a drag, as one step that undoes as one', async () => {
    take('w');
    await drag([10, 10], [10, 50]);
    const [wall] = edits();
    if (wall?.does !== 'draw-wall') throw new Error('no wall was drawn');
    expect(wall.pathMm).toHaveLength(2);
    expect(wall.pathMm[0]![1]).toBeCloseTo(10, 0);
    expect(wall.pathMm[1]![1]).toBeCloseTo(50, 0);
    expect(steps()).toEqual(['Draw wall']);
    undo();
    expect(edits()).toEqual([]);
  });

  it('cut from corner to corner; the last one twice ends it, Escape drops it', async () => {
    take('x');
    await click(50, 10);
    await click(60, 30);
    await expect.element(page.getByText(/^2 corners\./)).toBeVisible();
    expect(edits()).toEqual([]);
    await click(60, 30);
    expect(edits()).toMatchObject([{ does: 'cut' }]);
    await click(55, 10);
    await userEvent.keyboard('{Escape}');
    await click(55, 50);
    await userEvent.click(button('Drop it'));
    expect(steps()).toEqual(['Cut region']);
  });

  it('finish a path with a button where there is no keyboard', async () => {
    take('w');
    await click(90, 10);
    await expect.element(button('Finish')).toBeDisabled();
    await click(110, 10);
    await userEvent.click(button('Finish'));
    expect(edits()).toMatchObject([{ does: 'draw-wall' }]);
  });

  it('join by a drag and by two clicks, but never a region with itself', async () => {
    take('j');
    await drag([10, 20], [50, 20]);
    await click(50, 40);
    await click(60, 45);
    expect(edits()).toHaveLength(1);
    await click(100, 45);
    expect(steps()).toEqual(['Join regions', 'Join regions']);
    expect(edits()[0]).toMatchObject({ does: 'join' });
  });

  it('ignore a mark, and heed it again', async () => {
    take('i');
    await click(20, 20);
    expect(edits()).toMatchObject([{ does: 'ignore-mark' }]);
    await click(20.2, 20.2);
    expect(steps()).toEqual(['Ignore mark', 'Heed mark again']);
  });

  it('do all of it by keyboard', async () => {
    await click(20, 20);
    setView({ inHand: null });
    take('o');
    surface().element().focus();
    await userEvent.keyboard('{Alt>}{ArrowRight}{/Alt}{Enter}');
    expect(edits()).toMatchObject([{ does: 'open-wall' }]);
    take('w');
    await userEvent.keyboard('{ArrowLeft}{ArrowLeft}{Enter}{ArrowUp}{ArrowUp}{Enter}{Enter}');
    take('x');
    await userEvent.keyboard('{Enter}{ArrowUp}{Enter}{Backspace}{ArrowRight}{Enter}{Enter}');
    take('i');
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}{Enter}');
    take('j');
    await userEvent.keyboard('{Alt>}{ArrowLeft}{/Alt}{Enter}{Alt>}{ArrowRight}{/Alt}{Enter}');
    expect(steps()).toEqual(['Open wall', 'Draw wall', 'Cut region', 'Ignore mark', 'Join regions']);
    const made = edits().find(({ does }) => does === 'cut');
    expect(made?.does === 'cut' && made.pathMm, 'the corner taken back is no part of it').toHaveLength(2);
    take('c');
    await userEvent.keyboard('{Enter}');
    expect(viewStore.getState().chosen).toEqual(['r2']);
    await userEvent.keyboard('{Control>}a{/Control}');
    expect(viewStore.getState().chosen).toHaveLength(3);
    await userEvent.keyboard('{Escape}');
    expect(viewStore.getState().chosen).toEqual([]);
  });

  it('choose by a sweep; the chosen become a group that is tinted as one step', async () => {
    take('c');
    await drag([10, 20], [60, 20]);
    expect(viewStore.getState().chosen).toEqual(['r1', 'r2']);
    await vi.waitFor(() => expect(document.querySelector('#chosen-hatch')).not.toBeNull());
    await userEvent.click(button('Make a group'));
    await userEvent.keyboard('Leaves{Enter}');
    expect(job().groups).toEqual([{ id: 'group', name: 'Leaves', regions: ['r1', 'r2'] }]);
    await userEvent.click(button('Clear'));
    await userEvent.click(button('Leaves 2 regions'));
    setView({ inHand: RUST });
    await userEvent.click(page.getByTitle('Give all of Leaves the recipe in hand'));
    for (const id of ['r1', 'r2']) expect(recipeOf(job(), id)).toEqual(RUST);
    expect(steps()).toEqual(['Make group Leaves', 'Tint 2 regions']);
  });

  it('keep regions of a group that are gone, and say so', async () => {
    jobStore.setState({ job: { ...job(), groups: [{ id: 'g', name: 'Sky', regions: ['r3', 'r77'] }] } });
    await userEvent.click(button('Sky 1 region, 1 gone'));
    await expect.element(page.getByText(/it stays listed/)).toBeVisible();
    expect(job().groups[0]!.regions).toContain('r77');
  });

  it('lead from the list to an open gap, with Draw wall in hand', async () => {
    const before = deskStore.getState().camera.pxPerMm;
    await userEvent.click(button('close it'));
    const { camera, crosshair, desk } = deskStore.getState();
    expect(camera.pxPerMm).toBeGreaterThan(before * 2);
    expect(toDesk(camera, { x: 80, y: 30 }).x).toBeCloseTo(desk.width / 2, 3);
    expect(crosshair).toEqual({ x: 80, y: 30 });
    expect(viewStore.getState().tool).toBe('draw-wall');
    expect(document.activeElement).toBe(surface().element());
    await userEvent.keyboard('{ArrowUp}{ArrowUp}{Enter}{ArrowDown}{ArrowDown}{ArrowDown}{Enter}{Enter}');
    expect(edits()).toMatchObject([{ does: 'draw-wall' }]);
  });

  it('list what was done by hand, with its complaint, and take one back', async () => {
    take('i');
    await click(20, 20);
    const [mark] = edits();
    if (mark?.does !== 'ignore-mark') throw new Error('no mark was ignored');
    const complaint = { code: 'edit-no-mark', severity: 'warning', message: 'No mark lies there.' } as const;
    resultsStore.setState({ regions: { ...MAP, complaints: [{ ...complaint, placeMm: mark.atMm }] } });
    await expect.element(page.getByText('No mark lies there.')).toBeVisible();
    await userEvent.hover(page.getByRole('button', { name: /^Mark ignored/ }));
    expect(deskStore.getState().mark).toBe('edit e1');
    await userEvent.click(page.getByRole('button', { name: /^undo: mark ignored/ }));
    expect(edits()).toEqual([]);
    resultsStore.setState({ regions: MAP });
  });
});
