// Runs the page's own compiled program a second time, beside the page: the first message names the glue and brings it.
self.onmessage = async event => {
  self.onmessage = null;
  try {
    const [glue, module] = event.data;
    const {default: start} = await import(glue);
    await start({module_or_path: module});
  } catch (error) {
    // Thrown anew outside the promise, so that the page's `onerror` hears of it.
    setTimeout(() => { throw error; });
  }
};
