import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

const saidStore = createStore<{ text: string }>(() => ({ text: '' }));

/** Has screen readers say something. */
export function say(text: string): void {
  saidStore.setState({ text });
}

/** The line that screen readers say, unseen. */
export function useSaid(): string {
  return useStore(saidStore, ({ text }) => text);
}
