import { createStore } from 'zustand/vanilla';
import type { RegisterSlack } from '../../workers/client.ts';

/** Register slack of the document: null while it is worked out or nobody asks, a sentence when it cannot be. */
export const slackStore = createStore<{ slack: RegisterSlack | string | null }>(() => ({ slack: null }));
