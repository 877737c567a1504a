// The chart of a step of the first sample in the WASM program. Argument: what takes the answer.
const [done] = arguments;
(async () => {
  const glue = await import("/bench.js");
  await glue.default({module_or_path: "/bench_bg.wasm"});
  return Array.from(new glue.Bench().chart());
})().then(done, error => done({error: String(error)}));
