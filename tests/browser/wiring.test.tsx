import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { Plates } from '../../src/app/panels/Plates.tsx';
import { Docket } from '../../src/docket/Docket.tsx';
import { defaultGraph, newJob } from '../../src/graph/default-graph.ts';
import type { Graph } from '../../src/graph/job.ts';
import { wireInto } from '../../src/graph/order.ts';
import { jobStore, openJob, undo } from '../../src/store/job-store.ts';
import { setView, viewStore } from '../../src/store/view-store.ts';
import { Wiring } from '../../src/wiring/Wiring.tsx';
import '../../src/app/theme.css';

const INKS = {
  inks: [
    { id: 'pantile', name: 'Pantile', lab: [66, 40, 49] },
    { id: 'damson', name: 'Damson', lab: [31, 30, -17] },
  ],
  plates: [
    { id: 'pantile', ink: 'pantile', pass: 1 },
    { id: 'damson', ink: 'damson', pass: 2 },
  ],
};

let root: Root;

const graph = (): Graph => jobStore.getState().job!.graph;
const settings = (id: string) => graph().nodes.find((node) => node.id === id)!.settings;
const feed = (node: string, port: string) => wireInto(graph(), node, port)?.from.node;
const steps = () => jobStore.getState().past.map(({ name }) => name);
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

/** Puts the focus on a control, as the Tab key would in the end. */
function focus(name: string): void {
  (button(name).element() as HTMLElement).focus();
}

beforeEach(async () => {
  await page.viewport(1180, 820);
  document.body.innerHTML =
    '<div style="display:grid;grid-template-columns:168px 1fr 264px;height:100vh"><aside id="left"></aside><main style="position:relative"></main><aside id="right" style="overflow:auto"></aside></div>';
  openJob(newJob('Test', defaultGraph({}, INKS), {}), []);
  setView({ node: null, wiringOpen: false, showing: { view: 'proof' } });
  const host = document.createElement('div');
  document.getElementById('right')!.append(host);
  root = createRoot(host);
  root.render(
    <>
      <Wiring />
      <Docket />
      <Plates />
    </>,
  );
  await vi.waitFor(() => button(/^Plate grain/).element());
});

afterEach(() => root.unmount());

describe('the docket', () => {
  beforeEach(() => userEvent.click(button(/^Plate grain/)));

  it('changes a setting as one named step that can be undone', async () => {
    const size = page.getByRole('textbox', { name: 'Size, mm' });
    await userEvent.fill(size, '0,5');
    await userEvent.keyboard('{Enter}');
    expect(settings('plate-grain')).toEqual({ sizeMm: 0.5 });
    expect(steps()).toEqual(['Plate grain: size 0.5\u00a0mm']);
    await expect.element(button('reset Size to 0.35\u00a0mm')).toBeVisible();
    undo();
    expect(settings('plate-grain')).toEqual({});
    await expect.element(size).toHaveValue('0.35');
  });

  it('takes a run of arrow keys as one step', async () => {
    await userEvent.click(page.getByRole('textbox', { name: 'Strength, %', exact: true }));
    await userEvent.keyboard('{ArrowUp}{ArrowUp}{Shift>}{ArrowDown}{/Shift}');
    expect(settings('plate-grain')).toEqual({ strengthPercent: 27 });
    expect(steps()).toEqual(['Plate grain: strength 27\u00a0%']);
    expect(viewStore.getState().handMoves).toBe(false);
  });

  it('keeps a wrong number and says what is allowed', async () => {
    const size = page.getByRole('textbox', { name: 'Size, mm' });
    await userEvent.fill(size, '99');
    await userEvent.keyboard('{Enter}');
    await expect.element(page.getByRole('alert')).toHaveTextContent('Size takes 0.05 to 20 mm.');
    await expect.element(size).toHaveValue('99');
    expect(steps()).toEqual([]);
  });

  it('bypasses the node and uses it again', async () => {
    await userEvent.click(button('Bypass'));
    await userEvent.click(button('Bypass'));
    expect(steps()).toEqual(['Plate grain bypassed', 'Plate grain in use again']);
  });

  it('sets a plate apart from the others, and back', async () => {
    const damson = page.getByRole('textbox', { name: 'Strength, by plate, Damson, %' });
    await userEvent.fill(damson, '60');
    await userEvent.keyboard('{Enter}');
    expect(settings('plate-grain')).toEqual({ strengthPercentOf: { damson: 60 } });
    await userEvent.fill(damson, '');
    await userEvent.keyboard('{Enter}');
    expect(settings('plate-grain')).toEqual({ strengthPercentOf: {} });
  });
});

describe('the unfolded wiring', () => {
  beforeEach(async () => {
    await userEvent.click(button('Unfold the wiring over the print'));
    await vi.waitFor(() => button('Output plates of Key line').element());
  });

  it('puts a node on a wire', async () => {
    focus('Wire: plates from Key line to Plate grain');
    await userEvent.keyboard('{Enter}');
    await userEvent.click(button('Insert a node here'));
    await userEvent.keyboard('grain{Enter}');
    expect(feed('plate-grain', 'plates')).toBe('plate-grain-2');
    expect(feed('plate-grain-2', 'plates')).toBe('key-line');
    expect(steps()).toEqual(['Plate grain inserted between Key line and Plate grain']);
    expect(viewStore.getState().node).toBe('plate-grain-2');
  });

  it('wires an output to an input by keyboard', async () => {
    focus('Output plates of Fill plates');
    await userEvent.keyboard('{Enter}');
    focus('Input plates of Press file');
    await userEvent.keyboard('{Enter}');
    expect(feed('press-file', 'plates')).toBe('fill-plates');
    expect(steps()).toEqual(['Fill plates wired to Press file']);
  });

  it('says in a sentence why a wire cannot be', async () => {
    focus('Output inks of Ink set');
    await userEvent.keyboard('{Enter}');
    focus('Input paper of Proof');
    await userEvent.keyboard('{Enter}');
    await expect
      .element(page.getByRole('alert'))
      .toHaveTextContent('Ink set gives inks, but the input "paper" of Proof takes paper.');
    expect(steps()).toEqual([]);
  });

  it('takes the chosen node out with Delete and lets the plates run past it', async () => {
    setView({ node: 'plate-grain' });
    focus('Output plates of Key line');
    await userEvent.keyboard('{Delete}');
    expect(feed('press-file', 'plates')).toBe('key-line');
    expect(steps()).toEqual(['Plate grain removed']);
  });

  it('folds with Escape and gives the focus back', async () => {
    await userEvent.keyboard('{Escape}');
    await expect.element(button('Unfold the wiring over the print')).toHaveFocus();
  });
});

describe('the plates', () => {
  it('show one plate and go back to the proof', async () => {
    await userEvent.click(button(/Pantile pass 1/));
    expect(viewStore.getState().showing).toEqual({ view: 'plate', plate: 'pantile' });
    await userEvent.click(button(/Pantile pass 1/));
    expect(viewStore.getState().showing).toEqual({ view: 'proof' });
  });

  it('move in print order while the passes stay in place', async () => {
    (button(/Damson pass 2/).element() as HTMLElement).focus();
    await userEvent.keyboard('{Alt>}{ArrowUp}{/Alt}');
    expect(settings('ink-set').plates).toEqual([
      { id: 'damson', ink: 'damson', pass: 1 },
      { id: 'pantile', ink: 'pantile', pass: 2 },
    ]);
    expect(steps()).toEqual(['Damson prints as number 1']);
    await expect.element(button(/Damson pass 1/)).toHaveFocus();
    await userEvent.keyboard('{Alt>}{ArrowDown}{/Alt}');
    expect(settings('ink-set')).toEqual(INKS);
    await expect.element(button(/Damson pass 2/)).toHaveFocus();
  });
});
