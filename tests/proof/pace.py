"""How long one waits: the page as it is, and with its own thread slowed down four times. Browsers slow no worker."""
from person import SETTLED, Person
import statistics
import time

VISITS = 5
KEY = """() => new Promise(done => { const entry = document.getElementById('f-part-web'); const from = performance.now();
    entry.value = entry.value === '5 mm' ? '5.5 mm' : '5 mm'; entry.dispatchEvent(new InputEvent('input', {bubbles: true}));
    requestAnimationFrame(() => setTimeout(() => done(performance.now() - from))); })"""


def run(world):
    rows = []
    for slowed in (1, 4):
        first, again, strategy, keys = [], [], [], []
        for _ in range(VISITS):
            site = world.site("pace")
            context = world.browser().new_context(locale="en-GB", viewport={"width": 820, "height": 1180})
            person = Person(context, site.url)
            devtools = context.new_cdp_session(person.page)
            devtools.send("Emulation.setCPUThrottlingRate", {"rate": slowed})
            first.append(opened(person, lambda: person.page.goto(person.url)))
            person.settled()
            person.kept()
            again.append(opened(person, lambda: person.page.reload()))
            strategy.append(waited(person, SETTLED))
            keys += [person.page.evaluate(KEY) for _ in range(6)]
            person.close()
            context.close()
        told = "as it is" if slowed == 1 else f"{slowed} times slower"
        rows += [(f"{told}: from the start of loading to the form, first visit; kept page, ms", f"{middle(first)}; {middle(again)}"),
                 (f"{told}: from there to a settled strategy, kept page, ms", middle(strategy)),
                 (f"{told}: from a key to the next frame, ms", middle(keys))]
    return rows


def opened(person, load):
    start = time.monotonic()
    load()
    person.until("the form", "() => !!document.querySelector('#f-part-web')")
    return 1000 * (time.monotonic() - start)


def waited(person, wanted):
    start = time.monotonic()
    person.until("it", wanted)
    return 1000 * (time.monotonic() - start)


def middle(values):
    return f"{statistics.median(values):.0f} (worst {max(values):.0f})"
