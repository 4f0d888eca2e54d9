import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A job as the browser keeps it. */
export interface KeptJob {
  id: string;
  name: string;
  /** Milliseconds since 1970. */
  savedAt: number;
  /** The document's JSON. */
  text: string;
  /** Hashes of the files it needs. */
  files: string[];
  /** PNG of a small proof; null before there was one. */
  thumbnail: Uint8Array<ArrayBuffer> | null;
  handle: FileSystemFileHandle | null;
  /** Whether that file holds the document as it is. */
  inFile: boolean;
}

export interface KeptFile {
  hash: string;
  name: string;
  bytes: Uint8Array<ArrayBuffer>;
}

interface Schema extends DBSchema {
  jobs: { key: string; value: KeptJob; indexes: { savedAt: number } };
  files: { key: string; value: KeptFile };
  state: { key: string; value: string };
}

const NAME = 'keyblock';
const VERSION = 1;

export type Vault = IDBPDatabase<Schema>;

let opened: Promise<Vault> | null = null;

function open(): Promise<Vault> {
  opened ??= openDB<Schema>(NAME, VERSION, {
    upgrade(db) {
      db.createObjectStore('jobs', { keyPath: 'id' }).createIndex('savedAt', 'savedAt');
      db.createObjectStore('files', { keyPath: 'hash' });
      db.createObjectStore('state');
    },
    blocking: () => closeVault(),
    terminated: () => {
      opened = null;
    },
  });
  opened.catch(() => {
    opened = null;
  });
  return opened;
}

/** Lets go of the database; the next use opens it again. */
export function closeVault(): void {
  void opened?.then((db) => db.close()).catch(() => {});
  opened = null;
}

/** Works with what the browser keeps; once more on a fresh connection when the old one was lost. */
export async function withVault<Result>(work: (vault: Vault) => Promise<Result>): Promise<Result> {
  try {
    return await work(await open());
  } catch (error) {
    if ((error as DOMException).name !== 'InvalidStateError') throw error;
    closeVault();
    return work(await open());
  }
}

/** Waits for a transaction and the work in it; why the transaction failed comes before why the work did. */
export async function whole<Result>(done: Promise<void>, work: Promise<Result>): Promise<Result> {
  const [ended, worked] = await Promise.allSettled([done, work]);
  if (ended.status === 'rejected') throw ended.reason;
  if (worked.status === 'rejected') throw worked.reason;
  return worked.value;
}
