import { describe, expect, test } from 'vitest';
import { createVersions } from '../../src/ui/versions.ts';

/** A service worker and its container, as a browser has them, with the steps of an update in the test's hand. */
function browser({ controlled = true, isSessionOpen = false } = {}) {
  const said: unknown[] = [];
  const worker = Object.assign(new EventTarget(), { postMessage: (word: unknown) => void said.push(word) });
  const registration = Object.assign(new EventTarget(), {
    waiting: null as unknown as ServiceWorker,
    installing: worker as unknown as ServiceWorker,
  });
  const workers = Object.assign(new EventTarget(), {
    controller: controlled ? ({} as ServiceWorker) : null,
    registered: 0,
    register() {
      this.registered++;
      return Promise.resolve(registration as unknown as ServiceWorkerRegistration);
    },
  });
  let reloads = 0;
  return {
    said,
    workers,
    fittings: { workers, isSessionOpen: () => Promise.resolve(isSessionOpen), reload: () => void reloads++ },
    reloads: () => reloads,
    installs: () => {
      registration.dispatchEvent(new Event('updatefound'));
      Object.assign(registration, { waiting: worker, installing: null });
      worker.dispatchEvent(new Event('statechange'));
    },
  };
}
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('a newer version', () => {
  test('waits until somebody takes it, and then the page is loaded again once', async () => {
    const { fittings, workers, said, installs, reloads } = browser();
    const versions = createVersions(Promise.resolve(), fittings);
    await settled();
    expect(versions.isWaiting()).toBe(false);
    installs();
    expect([versions.isWaiting(), said, reloads()]).toEqual([true, [], 0]);
    expect(await versions.take()).toBe('taken');
    expect(said).toEqual([{ type: 'SKIP_WAITING' }]);
    workers.dispatchEvent(new Event('controllerchange'));
    workers.dispatchEvent(new Event('controllerchange'));
    expect(reloads()).toBe(1);
  });

  test('is not taken while any window writes a session', async () => {
    const { fittings, workers, said, installs, reloads } = browser({ isSessionOpen: true });
    const versions = createVersions(Promise.resolve(), fittings);
    await settled();
    installs();
    expect(await versions.take()).toBe('a session is open');
    workers.dispatchEvent(new Event('controllerchange'));
    expect([said, reloads()]).toEqual([[], 0]);
  });

  test('the first one of all replaces nothing, and comes after the speech model', async () => {
    const { fittings, workers, installs } = browser({ controlled: false });
    let modelIsThere = (): void => undefined;
    const versions = createVersions(new Promise<void>((resolve) => (modelIsThere = resolve)), fittings);
    await settled();
    expect(workers.registered).toBe(0);
    modelIsThere();
    await settled();
    expect(workers.registered).toBe(1);
    installs();
    expect(versions.isWaiting()).toBe(false);
  });

  test('a browser without service workers has no other version', async () => {
    const versions = createVersions(Promise.resolve(), { ...browser().fittings, workers: undefined });
    await settled();
    expect(versions.isWaiting()).toBe(false);
  });
});
