import { createStore } from 'zustand/vanilla';
import type { Client } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';

/** A question that waits for an answer; null means that the person let it be. */
export type Question =
  | {
      kind: 'width';
      file: string;
      /** Pixels of the picture; null for a drawing without pixels of its own. */
      pixels: [number, number] | null;
      /** What is offered, mm. */
      guessMm: number;
      /** Height over width. */
      shape: number;
      answer(widthMm: number | null): void;
    }
  | { kind: 'style' }
  | { kind: 'changed'; file: string; answer(take: boolean | null): void }
  | { kind: 'dropped'; file: string; answer(what: 'replace' | 'new' | 'rough' | null): void };

/** Something under way that can be ended. */
export interface Busy {
  text: string;
  cancel(): void;
}

/** Where the open document lives, and what the window says about files. */
export interface FilesState {
  /** The engine, once it runs. */
  client: Client | null;
  /** Under which id the browser keeps the document. */
  id: string;
  /** The file it was opened from or saved to, where the browser can write to it again. */
  handle: FileSystemFileHandle | null;
  /** The file the drawing came from, where the browser can read it again, and when it was last changed. */
  drawing: { handle: FileSystemFileHandle; changed: number } | null;
  /** The document as it was last saved to a file; null before. */
  saved: Job | null;
  /** The example as it comes: it is not kept before something is changed in it. */
  example: Job | null;
  /** One sentence that stays until it is put away. */
  notice: string | null;
  busy: Busy | null;
  question: Question | null;
  /** Whether this browser keeps the document: not yet tried, yes, or no. */
  kept: 'unknown' | 'yes' | 'no';
}

export const filesStore = createStore<FilesState>(() => ({
  client: null,
  id: '',
  handle: null,
  drawing: null,
  saved: null,
  example: null,
  notice: null,
  busy: null,
  question: null,
  kept: 'unknown',
}));

export function setFiles(change: Partial<FilesState>): void {
  filesStore.setState(change);
}

/** Says one sentence until it is put away or another takes its place. */
export function say(notice: string): void {
  setFiles({ notice });
}

/** How long a sentence stays that needs no answer, ms. */
const BRIEF_MS = 4000;

/** Says one sentence for a moment. */
export function sayBriefly(notice: string): void {
  say(notice);
  setTimeout(() => {
    if (filesStore.getState().notice === notice) setFiles({ notice: null });
  }, BRIEF_MS);
}

/** Questions with an answer that someone waits for. */
type Awaited = Extract<Question, { answer: unknown }>;
type AnswerOf<Kind extends Awaited['kind']> = Parameters<Extract<Awaited, { kind: Kind }>['answer']>[0];
type AskedOf<Kind extends Awaited['kind']> = Omit<Extract<Awaited, { kind: Kind }>, 'kind' | 'answer'>;

/** Asks the person; a question that still stands is let be. */
export function ask<Kind extends Awaited['kind']>(kind: Kind, asked: AskedOf<Kind>): Promise<AnswerOf<Kind>> {
  const { question } = filesStore.getState();
  if (question && 'answer' in question) question.answer(null);
  return new Promise((resolve) => {
    const answer = (value: AnswerOf<Kind>) => {
      setFiles({ question: null });
      resolve(value);
    };
    setFiles({ question: { kind, ...asked, answer } as Question });
  });
}
