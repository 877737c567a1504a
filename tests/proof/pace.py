"""How long one waits: the page as it is, and with its own thread slowed down four times. Browsers slow no worker."""
from person import SETTLED, Person
import json
import statistics
import time

VISITS = 5
# What a thread of the browser does is told in these pieces.
TASK = "ThreadControllerImpl::RunTask"
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
    form, settled = spent(world)
    rows.append(("processor time of the page's own thread, kept page: until the form stands; until all is settled, ms", f"{form:.0f}; {settled:.0f}"))
    return rows


def spent(world):
    """Processor time of the page's own thread for opening a kept page, until the form stands and until all is settled: what
    other work on this machine does not change."""
    site = world.site("pace")
    context = world.browser().new_context(locale="en-GB", viewport={"width": 820, "height": 1180})
    person = Person(context, site.url).open()
    person.kept()
    world.browser().start_tracing(page=person.page, categories=["toplevel", "disabled-by-default-devtools.timeline", "devtools.timeline"])
    person.page.reload()
    person.until("the form", "() => !!document.querySelector('#f-part-web')")
    stood = person.page.evaluate("() => { console.timeStamp('stood'); return true; }")
    person.settled()
    events = json.loads(world.browser().stop_tracing())["traceEvents"]
    person.close()
    context.close()
    mark = next(event for event in events if event["name"] == "TimeStamp" and event["args"]["data"]["message"] == "stood")
    own = [event for event in events if event.get("ph") == "X" and event["name"] == TASK and (event["pid"], event["tid"]) == (mark["pid"], mark["tid"])]
    before = sum(event.get("tdur", 0) for event in own if event["ts"] < mark["ts"]) / 1000
    assert stood and 0 < before, "the trace holds no tasks"
    return before, sum(event.get("tdur", 0) for event in own) / 1000


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
