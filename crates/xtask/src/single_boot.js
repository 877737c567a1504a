// Starts the program that this file carries, and makes workers from the same text.
"use strict";
(() => {
  const text = id => document.getElementById(id).textContent;
  const glue = text("glue");
  const bytes = Uint8Array.from(atob(text("program")), character => character.charCodeAt(0));
  globalThis.thinwright = {
    version: document.getElementById("program").dataset.version,
    // One file is kept where the person keeps it; it knows of no newer one and is installed nowhere.
    watch: watcher => watcher("file", false, false),
    words: async language => text(`words-${language}`),
    startWorker(module) {
      const wait = `self.onmessage = event => {
        self.onmessage = null;
        wasm_bindgen({module_or_path: event.data[1]}).catch(error => setTimeout(() => { throw error; }));
      };`;
      const url = URL.createObjectURL(new Blob([glue, "\n", wait], {type: "text/javascript"}));
      const worker = new Worker(url);
      worker.postMessage(["", module]);
      return worker;
    }
  };
  wasm_bindgen({module_or_path: bytes}).catch(error => {
    document.getElementById("no-start")?.removeAttribute("hidden");
    console.error(error);
  });
})();
