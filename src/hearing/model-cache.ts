// The engine keeps unpacked models in IndexedDB, in the layout of Emscripten's IDBFS: one record a file, keyed by its path.
// Writing an archive there ourselves lets the page fetch and verify it; the engine then unpacks it and needs no network.
import { HearingError, textOf } from './failures.ts';

const DATABASE = '/vosk';
const VERSION = 21;
const STORE = 'FILE_DATA';
const DIRECTORY_MODE = 0o40755;
const FILE_MODE = 0o100644;
/** The engine writes this last of all: a folder without it is half unpacked. */
const UNPACKED = 'extracted.ok';
const NAME = 'name.txt';

/** The model's address as the engine gets it. It is never fetched: it only names the folder. */
export const addressOf = (sha256: string): string => `sha256-${sha256}`;
/** The engine names the folder by the address, with every character that is not of a word replaced by `_`. */
const folderOf = (sha256: string): string => `${DATABASE}/${addressOf(sha256).replace(/\W/g, '_')}`;
const FOLDER = new RegExp(`^${DATABASE}/sha256_([0-9a-f]{64})$`);

const settled = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('The database gave no reason.'));
  });

const committed = (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onerror = transaction.onabort = () =>
      reject(transaction.error ?? new Error('The transaction was aborted.'));
  });

async function withFiles<T>(mode: IDBTransactionMode, work: (files: IDBObjectStore) => Promise<T>): Promise<T> {
  try {
    const opening = indexedDB.open(DATABASE, VERSION);
    opening.onupgradeneeded = () => {
      opening.result.createObjectStore(STORE).createIndex('timestamp', 'timestamp', { unique: false });
    };
    const database = await settled(opening);
    try {
      const transaction = database.transaction(STORE, mode);
      const commit = committed(transaction);
      const [result] = await Promise.all([work(transaction.objectStore(STORE)), commit]);
      return result;
    } finally {
      database.close();
    }
  } catch (error) {
    throw new HearingError('model no room', textOf(error));
  }
}

const paths = async (files: IDBObjectStore): Promise<string[]> =>
  (await settled(files.getAllKeys())).filter((key) => typeof key === 'string');

const inside = (folder: string) => (path: string) => path === folder || path.startsWith(`${folder}/`);

/** Is the model there, unpacked to the end? */
export const isKept = async (sha256: string): Promise<boolean> =>
  (await withFiles('readonly', (files) => settled(files.count(`${folderOf(sha256)}/${UNPACKED}`)))) > 0;

/** Lays down an archive for the engine to unpack. */
export async function seed(sha256: string, name: string, archive: Uint8Array): Promise<void> {
  const folder = folderOf(sha256);
  const timestamp = new Date();
  const file = (contents: Uint8Array) => ({ timestamp, mode: FILE_MODE, contents });
  await withFiles('readwrite', async (files) => {
    for (const path of (await paths(files)).filter(inside(folder))) files.delete(path);
    files.put({ timestamp, mode: DIRECTORY_MODE }, folder);
    files.put(file(archive), `${folder}/downloaded.tar.gz`);
    files.put(file(new Uint8Array()), `${folder}/downloaded.ok`);
    files.put(file(new TextEncoder().encode(name)), `${folder}/${NAME}`);
  });
}

export const forget = (sha256: string): Promise<void> => removeWhere(inside(folderOf(sha256)));

/** At its start the engine reads every kept model into memory, so old versions cost more than disk. */
export const keepOnly = (sha256: string): Promise<void> => removeWhere((path) => !inside(folderOf(sha256))(path));

const removeWhere = (chosen: (path: string) => boolean): Promise<void> =>
  withFiles('readwrite', async (files) => {
    for (const path of (await paths(files)).filter(chosen)) files.delete(path);
  });

/** The engine writes signed bytes: any view will do. */
const contentsOf = (record: unknown): ArrayBufferView<ArrayBuffer> =>
  typeof record === 'object' && record !== null && 'contents' in record && ArrayBuffer.isView(record.contents)
    ? (record.contents as ArrayBufferView<ArrayBuffer>)
    : new Uint8Array();

/** The files of a kept model whose path ends so, with their text. */
export const readTexts = (sha256: string, ending: string): Promise<string[]> =>
  withFiles('readonly', async (files) => {
    const found = (await paths(files)).filter((path) => inside(folderOf(sha256))(path) && path.endsWith(ending));
    const records = await Promise.all(found.map((path) => settled<unknown>(files.get(path))));
    return records.map((record) => new TextDecoder().decode(contentsOf(record)));
  });

/** Bytes of all files of a kept model. */
export const sizeOf = (sha256: string): Promise<number> =>
  withFiles('readonly', async (files) => {
    const found = (await paths(files)).filter(inside(folderOf(sha256)));
    const records = await Promise.all(found.map((path) => settled<unknown>(files.get(path))));
    return records.reduce<number>((sum, record) => sum + contentsOf(record).byteLength, 0);
  });

export const hasFile = (sha256: string, ending: string): Promise<boolean> =>
  withFiles('readonly', async (files) =>
    (await paths(files)).some((path) => inside(folderOf(sha256))(path) && path.endsWith(ending)),
  );

/**
 * The model that this browser keeps, to be loaded as `{ kind: 'kept', …kept }`; null when there is none.
 * @throws never: a browser without storage keeps nothing
 */
export async function keptModel(): Promise<{ readonly name: string; readonly sha256: string } | null> {
  try {
    const all = await withFiles('readonly', paths);
    for (const path of all) {
      const sha256 = FOLDER.exec(path)?.[1];
      if (sha256 && all.includes(`${path}/${UNPACKED}`)) {
        return { sha256, name: (await readTexts(sha256, `/${NAME}`))[0] ?? sha256 };
      }
    }
    return null;
  } catch {
    return null;
  }
}
