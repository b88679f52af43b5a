const PREFIX = 'bothhands:';

/** The right to write one session. Whoever holds the pen writes; every other window only reads. */
export interface Pen {
  /** Gives the pen back. It is given back by itself when the window closes or crashes. */
  release(): void;
}

/** Takes the pen of a session, or null where another window holds it. */
export async function takePen(session: string, locks: LockManager = navigator.locks): Promise<Pen | null> {
  return new Promise((resolve, reject) => {
    locks
      .request(`${PREFIX}${session}`, { ifAvailable: true }, (lock) => {
        if (lock === null) {
          resolve(null);
          return undefined;
        }
        return new Promise<void>((release) => resolve({ release }));
      })
      .catch(reject);
  });
}

/** The one who holds this one listens and speaks. It is no session's. */
export const EAR = 'ear';

/** Whether any window of this browser is writing a session at this moment. */
export async function isSessionOpen(locks: LockManager = navigator.locks): Promise<boolean> {
  const { held = [] } = await locks.query();
  return held.some(({ name = '' }) => name.startsWith(PREFIX) && name !== `${PREFIX}${EAR}`);
}
