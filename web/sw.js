// Keeps the page usable without a network. Names with a fingerprint never change and are kept; the page itself is fetched
// anew whenever there is a network, and what it no longer names is thrown away.
const STORE = "thinwright";
const FIXED = ["./boot.js", "./worker.js"];
const fingerprinted = url => /-[0-9a-f]{8,}(_bg)?\.(js|wasm|css)$/.test(new URL(url).pathname);
const home = () => new URL("./", self.location).href;
const isPage = url => new URL(url).pathname.replace(/index\.html$/, "") === new URL(home()).pathname;

// Every file of ours that the page names.
function named(html) {
  const found = [...html.matchAll(/ (?:href|src|data-js|data-wasm)="([^"#]+)"/g)].map(match => match[1]);
  const urls = [...FIXED, ...found].map(name => new URL(name, self.location)).filter(url => url.origin === self.location.origin);
  return new Set(urls.map(url => url.href));
}

// Stores all that a page needs, and the page last, so that what is stored always fits together.
async function keep(page) {
  const store = await caches.open(STORE);
  const needed = named(await page.clone().text());
  await Promise.all([...needed].map(async url => {
    if (fingerprinted(url) && await store.match(url)) return;
    const answer = await fetch(url, {cache: "no-cache"});
    if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
    await store.put(url, answer);
  }));
  await store.put(home(), page);
  for (const request of await store.keys()) {
    if (request.url !== home() && !needed.has(request.url)) await store.delete(request);
  }
}

async function navigate(event) {
  try {
    const page = await fetch(event.request);
    if (page.ok) event.waitUntil(keep(page.clone()).catch(() => {}));
    return page;
  } catch (error) {
    const kept = await (await caches.open(STORE)).match(home());
    if (kept) return kept;
    throw error;
  }
}

async function part(request) {
  const store = await caches.open(STORE);
  if (fingerprinted(request.url)) return (await store.match(request.url)) ?? fetch(request);
  try {
    return await fetch(request);
  } catch (error) {
    const kept = await store.match(request.url);
    if (kept) return kept;
    throw error;
  }
}

self.addEventListener("install", event => event.waitUntil((async () => {
  await keep(await fetch(home(), {cache: "no-cache"}));
  await self.skipWaiting();
})()));
self.addEventListener("activate", event => event.waitUntil(self.clients.claim()));
self.addEventListener("fetch", event => {
  const {request} = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === "navigate" && isPage(request.url) ? navigate(event) : part(request));
});
