import { createRoot, type Root } from 'react-dom/client';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { demoJob } from '../../src/app/demo-job.ts';
import { shortcuts } from '../../src/app/registries.ts';
import type { Job } from '../../src/graph/job.ts';
import { hashBytes } from '../../src/graph/keys.ts';
import { recipeOf } from '../../src/store/edits.ts';
import { jobStore, openJob, undo } from '../../src/store/job-store.ts';
import { recipesInUse } from '../../src/store/recipe-list.ts';
import { resultsStore } from '../../src/store/results-store.ts';
import { startSession } from '../../src/store/session.ts';
import { setView, viewStore } from '../../src/store/view-store.ts';
import { type Point, toDesk, toMm } from '../../src/view/camera.ts';
import { deskStore, fitSheet } from '../../src/view/desk-store.ts';
import { PrintView } from '../../src/view/PrintView.tsx';
import { regionsAlong } from '../../src/view/pick.ts';
import { type Client, startEngine } from '../../workers/client.ts';
import '../../src/app/theme.css';

const WIDTH = 1000;
const RULER = 24;
const SLOW = { timeout: 60_000 };
const RUST = { pantile: 85 };

const job = (): Job => jobStore.getState().job!;
const map = () => resultsStore.getState().regions!;
const surface = () => page.getByRole('application', { name: 'The print' });
const said = () => document.querySelector('[aria-live]')!.textContent;

/** Large regions with the point of the view that their anchor is at. (The driver changes positions it is given: hand it copies.) */
function regions() {
  return map()
    .regions.filter(({ areaMm2 }) => areaMm2 > 120)
    .map(({ id, anchorMm: [x, y], areaMm2 }) => ({
      id,
      areaMm2,
      at: toDesk(deskStore.getState().camera, { x, y }),
    }));
}

function whole({ x, y }: Point): Point {
  return { x: Math.round(x), y: Math.round(y) };
}

describe('the print view', () => {
  let client: Client;
  let stop: () => void;
  let root: Root;
  let fresh: Job;

  beforeAll(async () => {
    await page.viewport(WIDTH, 800);
    document.body.innerHTML = '<div id="root" style="position: fixed; inset: 0"></div>';
    client = await startEngine();
    const { job: demo, assets } = await demoJob();
    openJob(
      demo,
      assets.map((asset) => ({ hash: hashBytes(asset.bytes), asset })),
    );
    stop = startSession(client);
    root = createRoot(document.getElementById('root')!);
    root.render(<PrintView />);
    await vi.waitFor(() => expect(resultsStore.getState().seconds).not.toBeNull(), SLOW);
    fresh = job();
  });

  beforeEach(async () => {
    setView({ inHand: null, tool: 'tint' });
    jobStore.setState({ job: fresh, past: [], future: [] });
    fitSheet();
    await vi.waitFor(() => expect(deskStore.getState().desk.width).toBe(WIDTH - RULER));
  });

  afterAll(async () => {
    root.unmount();
    stop();
    await client.close();
  });

  it('shows the whole sheet in colour on the desk', async () => {
    await vi.waitFor(() => expect(resultsStore.getState().picture?.scale).toBeLessThan(8), SLOW);
    const { camera, sheet, desk } = deskStore.getState();
    expect(sheet!.width).toBeCloseTo(map().mm[0], 6);
    expect(sheet!.width * camera.pxPerMm).toBeLessThan(desk.width);
    const canvas = surface().element().querySelector('canvas')!;
    const inMiddle = toDesk(camera, { x: sheet!.width / 2, y: sheet!.height * 0.35 });
    await vi.waitFor(() => {
      const ratio = canvas.width / desk.width;
      const [r, g, b, a] = canvas
        .getContext('2d')!
        .getImageData(inMiddle.x * ratio, inMiddle.y * ratio, 1, 1).data;
      expect(a).toBe(255);
      expect(Math.max(r!, g!, b!)).toBeGreaterThan(Math.min(r!, g!, b!));
    });
    expect(Math.max(canvas.width * canvas.height)).toBeLessThan(16.7e6);
  });

  it('reads the region under the pointer', async () => {
    const [region] = regions();
    await userEvent.hover(surface(), { position: { ...region!.at } });
    expect(viewStore.getState().hovered).toBe(region!.id);
    const readout = page.getByText('mm²');
    await expect.element(readout).toBeVisible();
    expect(readout.element().parentElement!.textContent).toContain('%');
    await userEvent.hover(page.getByRole('button', { name: 'Actual size' }));
    expect(viewStore.getState().hovered).toBeNull();
  });

  it('picks a recipe up with an empty hand and with Alt, and tints with a click as one step', async () => {
    const [one, two] = regions();
    await userEvent.click(surface(), { position: { ...one!.at } });
    expect(viewStore.getState().inHand).toEqual(recipeOf(job(), one!.id));
    setView({ inHand: RUST });
    await userEvent.click(surface(), { position: { ...two!.at } });
    expect(recipeOf(job(), two!.id)).toEqual(RUST);
    expect(jobStore.getState().past.map(({ name }) => name)).toEqual(['Tint 1 region']);
    expect(said()).toBe('1 region tinted: Pantile 85 %');
    await userEvent.click(surface(), { position: { ...two!.at } });
    expect(jobStore.getState().past).toHaveLength(1);
    await userEvent.click(surface(), { position: { ...one!.at }, modifiers: ['Alt'] });
    expect(viewStore.getState().inHand).toEqual(recipeOf(job(), one!.id));
    undo();
    expect(recipeOf(job(), two!.id)).toEqual(recipeOf(fresh, two!.id));
  });

  it('picks up with a tool of its own, then tints again; its drag moves the print', async () => {
    const [one, two] = regions();
    const pickUp = page.getByRole('button', { name: 'Pick up' });
    setView({ inHand: RUST });
    await userEvent.click(pickUp);
    await expect.element(pickUp).toHaveAttribute('aria-pressed', 'true');
    expect(pickUp.element().getBoundingClientRect().height).toBeGreaterThanOrEqual(44);
    const { x, y } = deskStore.getState().camera;
    const from = whole(one!.at);
    await userEvent.dragAndDrop(surface(), surface(), {
      sourcePosition: { ...from },
      targetPosition: { x: from.x + 30, y: from.y + 20 },
    });
    expect(deskStore.getState().camera).toMatchObject({ x: x + 30, y: y + 20 });
    fitSheet();
    await userEvent.click(surface(), { position: { ...one!.at } });
    expect(viewStore.getState()).toMatchObject({ tool: 'tint', inHand: recipeOf(fresh, one!.id) });
    expect(jobStore.getState().past).toEqual([]);
    setView({ inHand: RUST });
    await userEvent.click(surface(), { position: { ...two!.at } });
    expect(recipeOf(job(), two!.id)).toEqual(RUST);
  });

  it('takes its tools with T and P; a recipe taken in hand is for tinting', () => {
    const press = (key: string) => shortcuts.find(({ keys }) => keys === key)!.run();
    press('p');
    expect(viewStore.getState().tool).toBe('pick-up');
    press('t');
    expect(viewStore.getState().tool).toBe('tint');
    press('p');
    setView({ inHand: RUST });
    expect(viewStore.getState().tool).toBe('tint');
  });

  it('tints every region that a drag crosses, as one step', async () => {
    setView({ inHand: RUST });
    const { camera, sheet } = deskStore.getState();
    const from = whole(toDesk(camera, { x: sheet!.width * 0.3, y: sheet!.height * 0.35 }));
    const to = whole(toDesk(camera, { x: sheet!.width * 0.7, y: sheet!.height * 0.35 }));
    const crossed = regionsAlong(map(), toMm(camera, from), toMm(camera, to));
    expect(crossed.length).toBeGreaterThan(4);
    await userEvent.dragAndDrop(surface(), surface(), {
      sourcePosition: { ...from },
      targetPosition: { ...to },
    });
    for (const id of crossed) expect(recipeOf(job(), id)).toEqual(RUST);
    const { past } = jobStore.getState();
    expect(past).toHaveLength(1);
    expect(past[0]!.name).toMatch(/^Tint \d+ regions$/);
    expect(viewStore.getState().handMoves).toBe(false);
    undo();
    for (const id of crossed) expect(recipeOf(job(), id)).toEqual(recipeOf(fresh, id));
  });

  it('takes a recipe in hand with a number key', () => {
    shortcuts.find(({ keys }) => keys === '2')!.run();
    expect(viewStore.getState().inHand).toEqual(recipesInUse(job())[1]);
  });

  it('goes from region to region and tints by keyboard alone', async () => {
    await userEvent.click(surface(), { position: { x: 3, y: 3 } });
    setView({ inHand: RUST });
    await userEvent.keyboard('{Alt>}{ArrowRight}{ArrowRight}{/Alt}');
    const { cursor } = deskStore.getState();
    expect(cursor).not.toBeNull();
    expect(said()).toMatch(/ mm²$/);
    await userEvent.keyboard('{Enter}');
    expect(recipeOf(job(), cursor!)).toEqual(RUST);
    await userEvent.keyboard('{Escape}');
    expect(viewStore.getState().inHand).toBeNull();
    await userEvent.keyboard('{Alt>}{Enter}{/Alt}');
    expect(viewStore.getState().inHand).toEqual(RUST);
  });

  it('zooms by its buttons and pans by the arrow keys', async () => {
    await userEvent.click(page.getByRole('button', { name: 'Actual size' }));
    await expect.element(page.getByText('100 %')).toBeVisible();
    await userEvent.click(surface(), { position: { x: 3, y: 3 } });
    const before = deskStore.getState().camera;
    await userEvent.keyboard('{ArrowUp}');
    expect(deskStore.getState().camera.y).toBe(before.y + 48);
    await userEvent.click(page.getByRole('button', { name: 'Closer' }));
    await expect.element(page.getByText('141 %')).toBeVisible();
    await userEvent.click(page.getByRole('button', { name: 'Fit the whole print' }));
    expect(deskStore.getState().fitted).toBe(true);
  });

  it('zooms with the wheel about the pointer', () => {
    const element = surface().element();
    const { left, top } = element.getBoundingClientRect();
    const at = { x: 300, y: 240 };
    const before = deskStore.getState().camera;
    const place = toMm(before, at);
    const turn = { deltaY: -300, clientX: left + at.x, clientY: top + at.y, cancelable: true };
    expect(element.dispatchEvent(new WheelEvent('wheel', turn))).toBe(false);
    const after = deskStore.getState().camera;
    expect(after.pxPerMm).toBeGreaterThan(before.pxPerMm * 1.3);
    expect(toMm(after, at).x).toBeCloseTo(place.x, 6);
    expect(toMm(after, at).y).toBeCloseTo(place.y, 6);
  });
});
