// Starts the program; a file of its own, as the policy allows no inline script.
const tag = document.querySelector("script[data-js]");
const resolved = name => new URL(name, document.baseURI).href;
const glue = resolved(tag.dataset.js);
const program = resolved(tag.dataset.wasm);

// A worker that runs the same compiled program: what it posts first is up to the program.
const page = globalThis.thinwright ??= {};
page.startWorker = module => {
  const worker = new Worker(resolved(tag.dataset.worker), {type: "module"});
  worker.postMessage([glue, module]);
  return worker;
};

// The dictionary of a language; English needs none.
page.words = async language => {
  const answer = await fetch(resolved(tag.dataset[language]));
  if (!answer.ok) throw new Error(`${answer.url}: ${answer.status}`);
  return answer.text();
};

try {
  const {default: start} = await import(glue);
  await start({module_or_path: program});
} catch (error) {
  document.getElementById("no-start")?.removeAttribute("hidden");
  console.error(error);
}
page.keep?.();
