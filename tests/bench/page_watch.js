// Put into the page before anything of its own runs. Notes how long after loading, and later after a key, a checked
// strategy stands there and all is told; the longest task; and the slowest answer to a key. All in ms.
(() => {
  const seen = globalThis.benchSeen = {checked: null, told: null, longest: 0, slowest: 0};
  const watch = (options, take) => new PerformanceObserver(list => list.getEntries().forEach(take)).observe(options);
  watch({type: "longtask", buffered: true}, task => { seen.longest = Math.max(seen.longest, task.duration); });
  watch({type: "event", durationThreshold: 16, buffered: true}, event => {
    if (/^key|^input/.test(event.name)) seen.slowest = Math.max(seen.slowest, event.duration);
  });
  // What is counted from, and whether what stands there has been old since then.
  let from = 0, old = true;
  seen.begin = time => { from = time; old = false; seen.checked = seen.told = null; };
  addEventListener("keydown", event => seen.begin(event.timeStamp), true);
  // Noted when it has been painted: after the frame that shows it.
  const note = what => {
    const began = from;
    requestAnimationFrame(() => setTimeout(() => {
      if (from === began) seen[what] ??= performance.now() - from;
    }));
  };
  const look = () => {
    const route = document.querySelector(".route");
    const checked = route && !route.classList.contains("route-stale") && !route.querySelector(".route-flag");
    old ||= !checked;
    if (!checked || !old) return;
    note("checked");
    if (document.querySelector(".status-words")?.textContent === "UP_TO_DATE") note("told");
  };
  const all = {subtree: true, childList: true, characterData: true, attributes: true};
  new MutationObserver(look).observe(document, all);
})();
