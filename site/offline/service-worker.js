/**
 * Keeps the guide for use without a network. The build puts two lines before this one: `files`, the address of each
 * file from the top of the guide with the hash of its content, and nothing else that changes.
 *
 * Every file is kept under its address and its hash. So a new version of the guide fetches only what has changed, and
 * until a reader takes it up the old version stays whole: pages, scripts and figures of one version never mix.
 */

/* global self, caches, crypto, fetch, Headers, Response, files */

const scope = new URL('./', self.location.href).href;
const cacheName = `winter-bench-guide ${scope}`;
/** Digits of the hash that names a content: enough that no two contents of a guide share them. */
const hashDigits = Object.values(files)[0]?.length ?? 0;

/** The page for an address that leads nowhere. */
const notHere = '404.html';

const kept = (path) => `${scope}${path}?content=${files[path]}`;

async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const digits = Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return digits.slice(0, hashDigits);
}

/** Fetches a file and keeps it, if it is the one that this version was built with. */
async function keep(cache, path) {
  if (await cache.match(kept(path))) return;
  const response = await fetch(scope + path, { cache: 'no-cache', credentials: 'same-origin' });
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  const bytes = await response.arrayBuffer();
  // While a host is being given a new version, it may have files of both.
  if ((await hashOf(bytes)) !== files[path]) throw new Error(`${path} is of another version`);
  const headers = new Headers(response.headers);
  // The bytes are unpacked by now.
  headers.delete('Content-Encoding');
  headers.delete('Content-Length');
  await cache.put(kept(path), new Response(bytes, { status: 200, headers }));
}

async function keepAll() {
  const cache = await caches.open(cacheName);
  const left = Object.keys(files);
  // A few at a time: the page that the reader is looking at comes first.
  const hands = Array.from({ length: 4 }, async () => {
    for (let path = left.shift(); path !== undefined; path = left.shift()) await keep(cache, path);
  });
  await Promise.all(hands);
}

/** Lets go of what belongs to older versions only. */
async function clear() {
  const cache = await caches.open(cacheName);
  const present = new Set(Object.keys(files).map(kept));
  const old = (await cache.keys()).filter(({ url }) => !present.has(url));
  await Promise.all(old.map((request) => cache.delete(request)));
}

async function answer(request, path) {
  const cache = await caches.open(cacheName);
  // What the browser has thrown away comes from the network again.
  return (await cache.match(kept(path))) ?? fetch(request);
}

/** A page that is not kept: from the network, or without one what the guide says of an address that it does not have. */
async function visit(request) {
  try {
    return await fetch(request);
  } catch {
    const cache = await caches.open(cacheName);
    const page = await cache.match(kept(notHere));
    return page ? new Response(page.body, { status: 404, headers: page.headers }) : Response.error();
  }
}

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(clear()));
self.addEventListener('message', ({ data }) => {
  if (data === 'take over') void self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const [address] = request.url.split(/[?#]/u);
  if (request.method !== 'GET' || !address.startsWith(scope)) return;
  const path = address.slice(scope.length);
  if (Object.hasOwn(files, path)) event.respondWith(answer(request, path));
  else if (request.mode === 'navigate') event.respondWith(visit(request));
});
