// What the page is on this device: its version, whether it is kept here, whether a newer one is, whether it can be installed.
const own = document.querySelector("script[data-version]")?.dataset.version ?? "";
const standing = {kept: "", newer: false, installable: false};
const watchers = new Set();
let offer = null;
// How often the server is asked for a newer version while the page stays open, ms.
const BETWEEN_CHECKS = 3_600_000;

const tell = watcher => watcher(standing.kept, standing.newer, standing.installable);
function change(news) {
  Object.assign(standing, news);
  watchers.forEach(tell);
}

addEventListener("beforeinstallprompt", event => {
  event.preventDefault();
  offer = event;
  change({installable: true});
});
addEventListener("appinstalled", () => change({installable: false}));

async function keep() {
  const workers = navigator.serviceWorker;
  if (!workers) return;
  const ask = async checks => (await workers.ready).active.postMessage({own, checks});
  workers.addEventListener("message", ({data}) => {
    if (data?.changed) ask(false);
    else if (data) change({kept: data.kept ? "kept" : "", newer: data.newer});
  });
  // A browser that keeps nothing refuses here; the page goes on without.
  await workers.register(new URL("./sw.js", document.baseURI), {updateViaCache: "none"});
  await ask(false);
  setInterval(() => ask(true), BETWEEN_CHECKS);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && ask(true));
}

globalThis.thinwright = {
  version: own,
  // The watcher hears where it is kept ("", "kept", "file"), whether a newer one waits, whether it can be installed; until
  // what this gives is called.
  watch(watcher) {
    watchers.add(watcher);
    tell(watcher);
    return () => watchers.delete(watcher);
  },
  install() {
    offer?.prompt();
    offer = null;
    change({installable: false});
  },
  keep: () => keep().catch(error => console.info(error))
};
