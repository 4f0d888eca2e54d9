import { unzipSync } from 'fflate';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeAll, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { App } from '../../src/app/App.tsx';
import { filesStore } from '../../src/app/files/files-store.ts';
import '../../src/app/theme.css';
import { closeVault } from '../../src/app/files/vault.ts';
import type { Job } from '../../src/graph/job.ts';
import { jobStore } from '../../src/store/job-store.ts';
import { resultsStore } from '../../src/store/results-store.ts';

/** A ring in a frame, 40 x 30 mm, which says so. */
const RING =
  '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 400 300"><g fill="none" stroke="#000" stroke-width="6"><rect x="20" y="20" width="360" height="260"/><circle cx="200" cy="150" r="80"/></g></svg>';
/** The same without a size. */
const UNSIZED = RING.replace('width="40mm" height="30mm" ', '');
const done = { timeout: 60_000, interval: 50 };

let root: Root | null = null;

/** Shows the window as a fresh visit finds it: only what the browser keeps is left. */
async function visit(): Promise<void> {
  jobStore.setState({ job: null, files: new Map(), past: [], future: [] });
  filesStore.setState({ id: '', handle: null, saved: null, notice: null, kept: 'unknown' });
  document.body.innerHTML = '<div id="root"></div>';
  root = createRoot(document.getElementById('root')!);
  root.render(<App />);
  await vi.waitFor(() => expect(document.querySelector('header')).not.toBeNull(), done);
}

const job = (): Job => jobStore.getState().job!;

function drop(name: string, text: string): void {
  const data = new DataTransfer();
  data.items.add(new File([text], name));
  window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
}

async function dropAsNewJob(name: string, text: string): Promise<void> {
  drop(name, text);
  await userEvent.click(page.getByRole('button', { name: /A new job/ }));
}

const shown = () => vi.waitFor(() => expect(resultsStore.getState().seconds).not.toBeNull(), done);
const kept = () => vi.waitFor(() => expect(filesStore.getState().kept).toBe('yes'), done);

beforeAll(async () => {
  await page.viewport(1440, 900);
  closeVault();
  await new Promise((resolve) => {
    indexedDB.deleteDatabase('keyblock').onsuccess = resolve;
  });
});

afterEach(() => {
  root?.unmount();
  vi.restoreAllMocks();
});

it('makes a job of a dropped drawing, keeps what is done to it, and brings it back', async () => {
  await visit();
  expect(job().name).toBe('Globe artichoke, packet front');
  await dropAsNewJob('ring.svg', RING);
  await vi.waitFor(() => expect(job().name).toBe('ring'), done);
  expect(job().graph.nodes.map(({ kind }) => kind)).toContain('press-file');
  await shown();
  expect(resultsStore.getState().regions?.mm.map(Math.round)).toEqual([40, 30]);
  expect(resultsStore.getState().regions?.regions).toHaveLength(3);

  await userEvent.click(page.getByRole('button', { name: 'Add colourway' }));
  await userEvent.click(page.getByRole('button', { name: 'Rename', exact: true }));
  await userEvent.keyboard('Evening{Enter}');
  expect(document.activeElement?.textContent).toBe('Rename');
  expect(job().colourways.map(({ name }) => name)).toEqual(['A', 'Evening']);
  expect(jobStore.getState().past.map(({ name }) => name)).toEqual(['Add colourway', 'Rename colourway']);
  await userEvent.click(page.getByRole('button', { name: 'Job: ring' }));
  await userEvent.fill(page.getByLabelText('Name of the job'), 'Napkin ring');
  await userEvent.keyboard('{Enter}{Escape}');
  await kept();
  await new Promise((resolve) => setTimeout(resolve, 1500));

  root!.unmount();
  await visit();
  expect(job().name).toBe('Napkin ring');
  expect(job().colourways.map(({ name }) => name)).toEqual(['A', 'Evening']);
  await shown();
  expect(resultsStore.getState().failure).toBeNull();
});

it('saves a file that opens again, and saves to the same file from then on', async () => {
  await visit();
  const folder = await navigator.storage.getDirectory();
  const handle = await folder.getFileHandle('napkin.keyblock', { create: true });
  const choose = vi.fn(() => Promise.resolve(handle));
  vi.stubGlobal('showSaveFilePicker', choose);
  await userEvent.keyboard('{Control>}s{/Control}');
  await vi.waitFor(() => expect(filesStore.getState().notice).toBe('Saved to napkin.keyblock.'), done);
  await userEvent.click(page.getByRole('button', { name: 'Delete' }));
  await userEvent.keyboard('{Control>}s{/Control}');
  await vi.waitFor(() => expect(filesStore.getState().saved).toBe(job()), done);
  expect(choose).toHaveBeenCalledOnce();
  const before = job();
  await userEvent.click(page.getByRole('button', { name: 'Add colourway' }));
  const data = new DataTransfer();
  data.items.add(await handle.getFile());
  window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }));
  await vi.waitFor(() => expect(jobStore.getState().past).toHaveLength(0), done);
  expect({ ...job(), register: null }).toEqual({ ...before, register: null });
  vi.unstubAllGlobals();
});

it('lists the jobs it keeps and opens one of them', async () => {
  await visit();
  await shown();
  await dropAsNewJob('other.svg', RING);
  await vi.waitFor(() => expect(job().name).toBe('other'), done);
  await userEvent.click(page.getByRole('button', { name: 'Job: other' }));
  await userEvent.click(page.getByRole('button', { name: /^Napkin ring/ }).first());
  await vi.waitFor(() => expect(job().name).toBe('Napkin ring'), done);
});

it('asks how wide a drawing prints that does not say so', async () => {
  await visit();
  await dropAsNewJob('unsized.svg', UNSIZED);
  const width = page.getByLabelText('Printed width');
  await vi.waitFor(() => expect(document.querySelector('dialog')?.textContent).toMatch(/How wide/), done);
  await userEvent.fill(width, '60');
  await userEvent.keyboard('{Enter}');
  await vi.waitFor(() => expect(job().name).toBe('unsized'), done);
  await shown();
  expect(resultsStore.getState().regions?.mm.map(Math.round)).toEqual([60, 45]);
});

it('gives the open job another drawing in one step, and regions found again keep their ids', async () => {
  await visit();
  await shown();
  const before = job();
  const ids = resultsStore.getState().regions!.regions.map(({ id }) => id);
  drop('again.svg', UNSIZED.replace('r="80"', 'r="84"'));
  await userEvent.click(page.getByRole('button', { name: /The drawing of this job/ }));
  await vi.waitFor(() => expect(jobStore.getState().past.at(-1)?.name).toBe('Replace drawing'), done);
  await vi.waitFor(() => expect(resultsStore.getState().running).toBeNull(), done);
  expect(resultsStore.getState().regions!.regions.map(({ id }) => id)).toEqual(ids);
  await userEvent.click(page.getByRole('button', { name: 'Undo' }));
  expect(job().assets).toEqual(before.assets);
});

it('leaves everything as it is when a file cannot be used, and says why', async () => {
  await visit();
  const before = job();
  await dropAsNewJob('notes.png', 'no picture');
  await vi.waitFor(() => expect(filesStore.getState().notice).toMatch(/^notes\.png was not opened: /), done);
  drop('torn.keyblock', 'PK, said the printer');
  await vi.waitFor(() => expect(filesStore.getState().notice).toMatch(/^torn\.keyblock .*damaged/), done);
  expect(job().graph).toBe(before.graph);
});

it('delivers plates that can be looked at', async () => {
  await visit();
  await shown();
  const made = vi.spyOn(URL, 'createObjectURL');
  await userEvent.click(page.getByRole('button', { name: 'Deliver' }));
  await userEvent.click(page.getByRole('button', { name: 'Make the plates' }));
  await vi.waitFor(() => expect(made).toHaveBeenCalled(), done);
  const zip = made.mock.calls.map(([blob]) => blob as Blob).find(({ type }) => type === 'application/zip')!;
  const files = unzipSync(new Uint8Array(await zip.arrayBuffer()));
  const names = Object.keys(files);
  const plates = names.filter((name) => /^plate-\d-.*\.png$/.test(name));
  expect(plates).toHaveLength(3);
  expect(names.filter((name) => name.endsWith('.pdf'))).toHaveLength(3);
  expect(JSON.parse(new TextDecoder().decode(files['report.json'])).plates).toHaveLength(3);
  for (const name of [...plates, 'proof.png']) {
    const picture = await createImageBitmap(new Blob([files[name] as Uint8Array<ArrayBuffer>]));
    expect(picture.width / picture.height).toBeCloseTo(4 / 3, 2);
  }
});

it('works in a browser that keeps nothing, and says so once', async () => {
  closeVault();
  vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException('blocked', 'SecurityError');
  });
  await visit();
  expect(job().name).toBe('Globe artichoke, packet front');
  await userEvent.click(page.getByRole('button', { name: 'Add colourway' }));
  await vi.waitFor(() => expect(filesStore.getState().notice).toMatch(/keeps nothing.*save the job/), done);
  await userEvent.click(page.getByRole('button', { name: 'Close this message' }));
  filesStore.setState({ kept: 'unknown' });
  await userEvent.click(page.getByRole('button', { name: 'Duplicate' }));
  await vi.waitFor(() => expect(filesStore.getState().kept).toBe('no'), done);
  expect(filesStore.getState().notice).toBeNull();
});
