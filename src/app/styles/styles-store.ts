import { createStore } from 'zustand/vanilla';
import { parseStyle, type Style } from '../../graph/style.ts';
import { nodeKinds } from '../../nodes/registry.ts';
import { withVault } from '../files/vault.ts';

const KEY = 'styles';

/** The house styles this browser keeps, the latest first; null until they were read. */
export const stylesStore = createStore<{ styles: readonly Style[] | null }>(() => ({ styles: null }));

/** Reads the kept styles; one that cannot be read any more is left out. */
export async function readStyles(): Promise<readonly Style[]> {
  const known = stylesStore.getState().styles;
  if (known) return known;
  const text = await withVault((vault) => vault.get('state', KEY)).catch(() => undefined);
  const kept = text === undefined ? [] : (JSON.parse(text) as string[]);
  const styles = kept.flatMap((each) => {
    try {
      return [parseStyle(each, nodeKinds)];
    } catch {
      return [];
    }
  });
  stylesStore.setState({ styles });
  return styles;
}

/** Keeps a style; it takes the place of one of the same name. @throws when the browser keeps nothing */
export async function keepStyle(style: Style): Promise<void> {
  const others = (await readStyles()).filter(({ name }) => name !== style.name);
  await write([style, ...others]);
}

export async function forgetStyle(style: Style): Promise<void> {
  await write((await readStyles()).filter((each) => each !== style));
}

async function write(styles: readonly Style[]): Promise<void> {
  stylesStore.setState({ styles });
  const texts = styles.map((style) => JSON.stringify(style));
  await withVault((vault) => vault.put('state', JSON.stringify(texts), KEY));
}
