// Works out one job in the WASM program and tells its times, ms. Arguments: the job's index, and what takes the answer.
const [index, done] = arguments;
const CHECKED = 1, DONE = 2;
(async () => {
  const glue = await import("/bench.js");
  if (!globalThis.bench) {
    const program = await glue.default({module_or_path: "/bench_bg.wasm"});
    globalThis.bench = {program, tables: new glue.Bench()};
  }
  const {program, tables} = globalThis.bench;
  const drawn = tables.draw(index);
  const from = performance.now();
  const work = tables.start(drawn);
  let checked = null, stage = 0;
  while (stage < DONE) {
    const turn = performance.now();
    stage = work.turn();
    work.took(performance.now() - turn);
    if (stage >= CHECKED) checked ??= performance.now() - from;
  }
  const told = {
    name: drawn.name(), checked, done: performance.now() - from, checks: work.checks(),
    feasible: work.feasible(), memory: program.memory.buffer.byteLength
  };
  work.free();
  drawn.free();
  return told;
})().then(done, error => done({error: String(error)}));
