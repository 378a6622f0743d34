// Keeps the files of the bench page at hand, so that it opens without a network once it was opened with one.

interface KeptFiles {
  readonly version: string;
  readonly page: string;
  readonly files: readonly string[];
}

/** What a service worker is told, as far as it is needed here (W3C, Service Workers). */
interface WaitingEvent extends Event {
  readonly waitUntil: (done: Promise<unknown>) => void;
}
interface AskedEvent extends WaitingEvent {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}

declare global {
  var meltboundsOffline: KeptFiles;
}

const { version, files } = globalThis.meltboundsOffline;
const prefix = 'meltbounds-bench-';
const own = prefix + version;
const folder = new URL('./', location.href).href;

addEventListener('install', (event) => {
  (event as WaitingEvent).waitUntil(caches.open(own).then((cache) => cache.addAll([...files])));
});

addEventListener('activate', (event) => {
  (event as WaitingEvent).waitUntil(
    caches
      .keys()
      .then((names) => names.filter((name) => name.startsWith(prefix) && name !== own))
      .then((old) => Promise.all(old.map((name) => caches.delete(name)))),
  );
});

addEventListener('fetch', (event) => {
  const { request, respondWith } = event as AskedEvent;
  const path = pathOf(request.url);
  if (request.method !== 'GET' || path === null || !isOfBench(path)) return;
  respondWith.call(event, kept(path, request));
});

/** Path from the folder of the site; null for what lies outside. */
function pathOf(address: string): string | null {
  const { href } = new URL(address);
  const bare = href.replace(/[?#].*$/, '');
  return bare.startsWith(folder) ? bare.slice(folder.length) : null;
}

/** The files of the page, and the parts of the registry, of which a large one has more than are kept from the start. */
function isOfBench(path: string): boolean {
  return files.includes(path) || path.startsWith('bench/');
}

async function kept(path: string, request: Request): Promise<Response> {
  const cache = await caches.open(own);
  const known = await cache.match(path);
  if (known !== undefined) return known;
  const loaded = await fetch(request);
  if (loaded.ok) await cache.put(path, loaded.clone());
  return loaded;
}
