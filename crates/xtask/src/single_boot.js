// Starts the program that this file carries, and makes workers from the same text.
"use strict";
(() => {
  const text = id => document.getElementById(id).textContent;
  const glue = text("glue");
  // The program clears the page before it draws: what it may ask for later is read now.
  const dictionaries = new Map([...document.querySelectorAll("script[id^=words-]")].map(script => [script.id, script.textContent]));
  const bytes = Uint8Array.from(atob(text("program")), character => character.charCodeAt(0));
  globalThis.thinwright = {
    version: document.getElementById("program").dataset.version,
    // One file is kept where the person keeps it; it knows of no newer one and is installed nowhere.
    watch(watcher) {
      watcher("file", false, false);
      return () => {};
    },
    async words(language) {
      const words = dictionaries.get(`words-${language}`);
      if (words === undefined) throw new Error(`no words of ${language}`);
      return words;
    },
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
