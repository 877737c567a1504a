"""Without a network, through updates, and as one file from a disk."""
from person import Person
import time

VERSION = "() => thinwright.version + ' ' + (globalThis.mark ?? 'first') + ' ' + (getComputedStyle(document.documentElement).getPropertyValue('--mark') || 'first')"
COME_TO_FRONT = "() => document.dispatchEvent(new Event('visibilitychange'))"
GONE = ["ERR_INTERNET_DISCONNECTED", "ERR_CONNECTION_REFUSED", "Failed to load resource"]


def run(world):
    return installable(world) + offline(world) + updates(world) + one_file(world)


def installable(world):
    """The browser itself finds nothing that keeps the page from being installed; where it offers that, the page has a button."""
    site = world.site("installable")
    context = world.browser().new_context(locale="en-GB")
    person = Person(context, site.url).open()
    person.kept()
    devtools = context.new_cdp_session(person.page)
    manifest = devtools.send("Page.getAppManifest")
    assert not manifest["errors"] and manifest["url"].endswith(".webmanifest"), manifest
    # A profile that is thrown away afterwards takes no application; that is no fault of the page.
    errors = [error["errorId"] for error in devtools.send("Page.getInstallabilityErrors")["installabilityErrors"]]
    errors = [error for error in errors if error != "in-incognito"]
    assert not errors, errors
    person.page.evaluate("""() => dispatchEvent(Object.assign(new Event('beforeinstallprompt', {cancelable: true}),
        {prompt() { globalThis.offered = true; }}))""")
    person.until("the way to install", "() => !!document.querySelector('.foot button')", 5)
    person.no_barriers("the page with the way to install")
    person.page.click(".foot button")
    assert person.page.evaluate("() => globalThis.offered && !document.querySelector('.foot button')")
    person.close()
    context.close()
    return [("what keeps the page from being installed, by the browser's own list", "nothing")]


def offline(world):
    site = world.site("offline")
    context = world.browser().new_context(locale="en-GB")
    person = Person(context, site.url).open()
    person.kept()
    site.stop()
    loads = []
    for web in ("5 mm", "5.5 mm", "4.5 mm"):
        start = time.monotonic()
        person.page.reload()
        person.settled()
        loads.append(time.monotonic() - start)
        person.page.fill("#f-part-web", web)
        person.press("Tab")
        person.settled()
    for tag in ("de", "es", "en"):
        person.page.select_option("#language", tag)
        person.until("the language", f"() => document.documentElement.lang === '{tag}'")
    person.close(expected=GONE)
    context.close()
    return [("server gone: three loads, three strategies, three languages; slowest load with strategy, s", f"{max(loads):.1f}")]


def updates(world):
    """Ten versions, one after the other, while two tabs are open; no tab ever sees files of two."""
    site = world.site("updates")
    context = world.browser().new_context(locale="en-GB")
    person = Person(context, site.url).open()
    person.kept()
    old = Person(context, site.url).open()
    first = old.page.evaluate(VERSION)
    for number in range(10):
        version = site.replace(f"v{number}")
        before = person.page.evaluate(VERSION)
        person.page.evaluate(COME_TO_FRONT)
        person.until("the notice", "() => !!document.querySelector('.newer button')", 20)
        assert person.page.evaluate(VERSION) == before
        person.page.click(".newer button")
        person.until("the newer version", f"() => globalThis.thinwright?.version === '{version}'", 20)
        person.settled()
        after = person.page.evaluate(VERSION)
        assert after == f"{version} v{number} v{number}", after
        asked = person.page.evaluate("""() => performance.getEntriesByType('resource').map(e => e.name)
            .filter(name => name.startsWith(location.origin)).map(name => new URL(name).pathname.slice(1))""")
        strangers = [name for name in asked if name and name not in site.names()]
        assert not strangers, strangers
    assert old.page.evaluate(VERSION) == first
    stores = person.page.evaluate("async () => (await caches.keys()).length")
    site.stop()
    old.page.reload()
    old.settled()
    assert old.page.evaluate(VERSION) == after, "the other tab does not come along"
    old.close(expected=GONE)
    person.close(expected=GONE)
    context.close()
    return [("ten updates with two tabs open: told, taken at a reload, never mixed; stores left", str(stores))]


def one_file(world):
    context = world.browser().new_context(locale="en-GB")
    person = Person(context, world.single.resolve().as_uri()).open()
    context.set_offline(True)
    person.page.fill("#f-part-web", "5 mm")
    person.press("Tab")
    person.settled()
    foot = " ".join(person.said(".foot"))
    assert "build" in foot and "One file" in foot, foot
    for tag in ("de", "es", "en"):
        person.page.select_option("#language", tag)
        person.until("the language", f"() => document.documentElement.lang === '{tag}'")
    person.no_barriers("the one-file page")
    person.page.reload()
    person.settled()
    kept = person.value("f-part-web")
    person.close()
    context.close()
    return [("one file from a disk, offline: strategy, worker, languages; answers kept over a reload", "yes" if kept == "5 mm" else f"no: {kept}")]
