// Plates in the WASM program. Arguments: elements across a rib, how many samples, and what takes the answer.
const [across, count, done] = arguments;
(async () => {
  const glue = await import("/bench.js");
  await glue.default({module_or_path: "/bench_bg.wasm"});
  const bench = new glue.Bench();
  const webs = Array.from({length: count}, (_, index) => Array.from(bench.webs(index)));
  return {solved: Array.from(bench.solve(across)), webs};
})().then(done, error => done({error: String(error)}));
