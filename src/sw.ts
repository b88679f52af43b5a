/**
 * The service worker: keeps the files of the program, so that it starts without a network. The speech model is not among
 * them; the page fetches and keeps it itself (hearing/model-cache.ts).
 *
 * A new version is fetched beside the old one, file by file, and what is the same is kept. It serves when all windows were
 * closed, or when it is told to (ui/versions.ts).
 */

/** What this file uses of a service worker: the types of pages and of workers do not go together. */
interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Worker {
  /** The files of this version, put in by the build: the name of a file has its hash in it, or `revision` is that. */
  readonly __WB_MANIFEST: readonly { readonly url: string; readonly revision: string | null }[];
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(name: 'install' | 'activate', listener: (event: Extendable) => void): void;
  addEventListener(name: 'fetch', listener: (event: Fetching) => void): void;
  addEventListener(name: 'message', listener: (event: MessageEvent<unknown>) => void): void;
}
const worker = self as unknown as Worker;

const SHELF = 'bothhands-program';

/** Where a file is kept, by its address. */
const places = new Map(
  // The build looks for these very words.
  (self as unknown as Worker).__WB_MANIFEST.map(({ url, revision }) => {
    const { href } = new URL(url, location.href);
    return [href, revision === null ? href : `${href}?${revision}`];
  }),
);
const page = new URL('index.html', location.href).href;

worker.addEventListener('install', (event) => event.waitUntil(fetchAll()));
worker.addEventListener('activate', (event) => event.waitUntil(clearAway().then(() => worker.clients.claim())));
worker.addEventListener('message', ({ data }) => {
  if ((data as { readonly type?: unknown } | null)?.type === 'SKIP_WAITING') void worker.skipWaiting();
});
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const { origin, pathname } = new URL(request.url);
  const file = places.has(origin + pathname) ? origin + pathname : page;
  if (file !== page || request.mode === 'navigate') event.respondWith(answer(file, request));
});

/** @throws where any file cannot be had: then there is no new version, and what came is there at the next try */
async function fetchAll(): Promise<void> {
  const shelf = await caches.open(SHELF);
  await Promise.all(
    [...places].map(async ([file, place]) => {
      if (await shelf.match(place)) return;
      // What has its hash in its name may come from anywhere; the others from the server.
      const response = await fetch(file, { cache: file === place ? 'default' : 'reload' });
      if (!response.ok) throw new Error(`${file}: ${response.status}`);
      // A page may not be answered with something that was fetched from elsewhere in the end.
      await shelf.put(place, response.redirected ? new Response(response.body, response) : response);
    }),
  );
}

/** Files of older versions, and shelves of older service workers. */
async function clearAway(): Promise<void> {
  const shelf = await caches.open(SHELF);
  const kept = new Set(places.values());
  const old = (await caches.keys()).filter((name) => name.startsWith('workbox-'));
  await Promise.all([
    ...(await shelf.keys()).map(({ url }) => kept.has(url) || shelf.delete(url)),
    ...old.map((name) => caches.delete(name)),
  ]);
}

/** The file as it is kept; where the browser has thrown it away, from the server. */
async function answer(file: string, request: Request): Promise<Response> {
  const shelf = await caches.open(SHELF);
  return (await shelf.match(places.get(file) ?? file)) ?? fetch(request);
}
