// Keeps the page usable without a network, and never mixes versions.
//
// A version is all that one index.html names. Each has a store of its own, filled whole before it counts: its page goes in
// last, and only then it becomes the newest. A page that opens gets the newest whole version from its store; meanwhile the
// server is asked for a newer one, which is told to the pages and taken when they are opened again. A version stays for
// as long as a page of it is open, and so does the one before the newest.
const HOME = new URL("./", self.location).href;
// Another copy of the page may live beside this one, under another path of the same host.
const PREFIX = `thinwright ${new URL(HOME).pathname} `;
const NOTES = `${PREFIX}notes`;
const ORDER = `${HOME}notes/order`;
const CLIENT = `${HOME}notes/client/`;
// The browser does not list a page at once that it has just begun to open, ms.
const OPENING = 60_000;

const isPage = url => url.origin + url.pathname.replace(/index\.html$/, "") === HOME;
const fingerprint = url => /-([0-9a-f]{16})(?:_bg)?\.[a-z]+$/.exec(new URL(url).pathname)?.[1];
const held = (store, url) => store.match(url, {ignoreVary: true, ignoreSearch: true});
const store = version => caches.open(PREFIX + version);
const whole = async version => Boolean(version && await held(await store(version), HOME));

async function digest(parts) {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", await new Blob(parts).arrayBuffer()));
  return [...bytes.slice(0, 8)].map(byte => byte.toString(16).padStart(2, "0")).join("");
}

// Notes outlive this program, which the browser ends and starts as it likes.
async function note(key, value) {
  await (await caches.open(NOTES)).put(key, new Response(JSON.stringify(value)));
}

async function noted(key) {
  return (await held(await caches.open(NOTES), key))?.json();
}

// Whole versions, the newest first, and which of them a page is of.
const order = async () => await noted(ORDER) ?? [];
const versionOf = async client => opened.get(client) ?? (await noted(CLIENT + client))?.version;
// Versions of pages that were opened since this program was started: a page asks for its files before it is noted.
const opened = new Map();

// Every file of ours that a page names.
function named(html) {
  const found = [...html.matchAll(/ (?:href|src|data-[a-z]+)="(\.\/[^"#?]+)"/g)].map(match => new URL(match[1], HOME).href);
  return [...new Set(found)].filter(url => url !== HOME);
}

// A file from the server. Where the page says its version, its files' names are digests of what they hold: what is
// something else, as it comes from networks that answer in the server's place, is no part of it.
async function fetched(url, checked) {
  const wanted = fingerprint(url);
  for (const cache of wanted ? ["default", "reload"] : ["no-cache"]) {
    const answer = await fetch(url, {cache});
    if (!answer.ok || answer.redirected) continue;
    if (!checked || !wanted || await digest([await answer.clone().arrayBuffer()]) === wanted) return answer;
  }
  throw new Error(`${url} is not there, or not what its name says`);
}

// Asks the server for its version and stores it; nothing counts before all of it is there.
async function look() {
  const page = await fetched(HOME, false);
  const html = await page.clone().text();
  if (!html.includes(" data-js=\"")) throw new Error("this is not the page");
  const said = / data-version="([0-9a-f]+)"/.exec(html)?.[1];
  const urls = named(html);
  // Without a version of its own: digest of the page and of what keeps its name whatever it holds.
  const fixed = new Map();
  if (!said) {
    for (const url of urls.filter(url => !fingerprint(url))) fixed.set(url, await fetched(url, false));
  }
  const bodies = await Promise.all([...fixed.values()].map(answer => answer.clone().arrayBuffer()));
  const version = said ?? await digest([html, ...bodies]);
  const before = await order();
  if (!await whole(version)) {
    const kept = await store(version);
    await Promise.all(urls.map(async url => {
      if (fingerprint(url) && await held(kept, url)) return;
      const same = fingerprint(url) && await held(caches, url);
      await kept.put(url, same || fixed.get(url) || await fetched(url, Boolean(said)));
    }));
    await kept.put(HOME, page);
  }
  if (before[0] !== version) {
    await note(ORDER, [version, ...before.filter(other => other !== version)].slice(0, 2));
    for (const client of await pages()) client.postMessage({changed: true});
  }
  await sweep();
}

let looking = null;
const check = () => looking ??= look().finally(() => looking = null);

async function pages() {
  const all = await clients.matchAll({includeUncontrolled: true, type: "window"});
  return all.filter(client => isPage(new URL(client.url)));
}

// Deletes versions that nobody uses. A page whose version is not known might need any of them.
async function sweep() {
  const notes = await caches.open(NOTES);
  const open = new Set((await pages()).map(client => client.id));
  const needed = new Set([...await order(), "notes"]);
  for (const {url} of await notes.keys()) {
    if (!url.startsWith(CLIENT)) continue;
    const id = url.slice(CLIENT.length);
    const {version, time} = await noted(url);
    if (open.delete(id) || Date.now() - time < OPENING) needed.add(version);
    else await notes.delete(url);
  }
  if (open.size > 0) return;
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && !needed.has(name.slice(PREFIX.length))) await caches.delete(name);
  }
}

const keepNote = (client, version) => note(CLIENT + client, {version, time: Date.now()});

async function navigate(event) {
  event.waitUntil(check().catch(() => {}));
  const [version] = await order();
  const page = version && await held(await store(version), HOME);
  if (!page) return fetch(event.request);
  if (event.resultingClientId) {
    opened.set(event.resultingClientId, version);
    event.waitUntil(keepNote(event.resultingClientId, version));
  }
  return page;
}

// A fingerprinted file is the same in every version; any other comes from the version of the page that asks for it.
async function part(event) {
  const {url} = event.request;
  const version = fingerprint(url) ? null : await versionOf(event.clientId);
  const kept = fingerprint(url) ? await held(caches, url) : version && await held(await store(version), url);
  return kept || fetch(event.request);
}

// Tells a page whether it is kept, and whether a newer one is.
async function answer(client, {own, checks}) {
  if (checks) await check().catch(() => {});
  const [newest] = await order();
  const version = own || await versionOf(client.id) || newest;
  if (own) await keepNote(client.id, own);
  client.postMessage({kept: await whole(version), newer: Boolean(newest) && newest !== version});
}

self.addEventListener("install", event => event.waitUntil(check().then(() => self.skipWaiting())));
self.addEventListener("activate", event => event.waitUntil(self.clients.claim()));
self.addEventListener("message", event => {
  if (event.source && event.data) event.waitUntil(answer(event.source, event.data));
});
self.addEventListener("fetch", event => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(HOME)) return;
  if (event.request.mode !== "navigate") event.respondWith(part(event));
  else if (isPage(url)) event.respondWith(navigate(event));
});
