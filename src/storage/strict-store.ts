import { promisifyRequest, type UseStore } from 'idb-keyval';

/**
 * An idb-keyval store whose writes have reached the disk when their promise settles. idb-keyval's own `createStore`
 * cannot ask for that, and browsers default to "relaxed", where a power cut may lose the last second.
 */
export function createStrictStore(database: string, storeName: string): UseStore {
  let opened: Promise<IDBDatabase> | undefined;
  const open = (): Promise<IDBDatabase> => {
    if (opened) return opened;
    const request = indexedDB.open(database);
    request.onupgradeneeded = () => request.result.createObjectStore(storeName);
    opened = promisifyRequest(request);
    opened.then(
      (db) => {
        // A browser may close the database under us (storage pressure, another tab upgrading): open it again next time.
        db.onclose = () => (opened = undefined);
        // A newer version of the app must not wait for this window.
        db.onversionchange = () => {
          db.close();
          opened = undefined;
        };
      },
      () => (opened = undefined),
    );
    return opened;
  };
  return async (mode, callback) => {
    const db = await open();
    return callback(db.transaction(storeName, mode, { durability: 'strict' }).objectStore(storeName));
  };
}
