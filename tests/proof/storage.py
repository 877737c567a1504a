"""What the browser keeps is broken, of another version, full or forbidden: the page opens, says so, and loses nothing."""
from person import Person

# Everything that is kept, as texts.
KEPT = """async () => {
    const out = Object.values({...localStorage});
    for (const {name} of await indexedDB.databases()) {
        const database = await new Promise((yes, no) => { const r = indexedDB.open(name); r.onsuccess = () => yes(r.result); r.onerror = () => no(r.error); });
        for (const store of database.objectStoreNames) {
            const all = await new Promise(yes => { const r = database.transaction(store).objectStore(store).getAll(); r.onsuccess = () => yes(r.result); });
            out.push(...all.map(v => typeof v === 'string' ? v : JSON.stringify(v)));
        }
        database.close();
    }
    return out.join('\\n'); }"""
# Writes a text in the place of every record of the database.
BREAK = """async text => {
    const database = await new Promise(yes => { const r = indexedDB.open('thinwright'); r.onsuccess = () => yes(r.result); });
    const change = database.transaction('things', 'readwrite');
    const store = change.objectStore('things');
    const keys = await new Promise(yes => { const r = store.getAllKeys(); r.onsuccess = () => yes(r.result); });
    keys.forEach(key => store.keyPath ? store.put({...{}, [store.keyPath]: key, text}) : store.put(text, key));
    await new Promise(yes => { change.oncomplete = yes; });
    database.close();
    return keys.length; }"""
NEWER = "() => new Promise(yes => { const r = indexedDB.open('thinwright', 99); r.onsuccess = () => { r.result.close(); yes(true); }; })"
FORBIDDEN = """Storage.prototype.getItem = Storage.prototype.setItem = () => { throw new DOMException('no', 'SecurityError'); };
    IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };"""
FULL = """Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };
    IDBObjectStore.prototype.put = IDBObjectStore.prototype.add = () => { throw new DOMException('full', 'QuotaExceededError'); };"""
BROKEN = '{"broken": "Müller 7,5 mm'


def run(world):
    return [case(world) for case in (small_store, records, newer, forbidden, full)]


def visitor(world, script=None):
    site = world.site("storage")
    context = world.browser().new_context(locale="en-GB")
    if script:
        context.add_init_script(script)
    return context, Person(context, site.url)


def said(person):
    """What is told, but for what is not of storage."""
    return " ".join(person.said(".message, [role=alert]"))


def small_store(world):
    context, person = visitor(world, f"if (!sessionStorage.seen) {{ sessionStorage.seen = 1; localStorage.thinwright = {BROKEN!r}; localStorage['thinwright.language'] = 'xx'; localStorage['thinwright.theme'] = '\\u0000'; }}")
    person.open()
    told = said(person)
    assert told, "nothing is said of a broken store"
    person.page.fill("#f-part-web", "5 mm")
    person.press("Tab")
    person.settled()
    person.page.wait_for_timeout(1500)
    assert "Müller 7,5 mm" in person.page.evaluate(KEPT), "the broken text is lost"
    person.close()
    context.close()
    return ("small store broken", f"opens; kept aside; says: {told[:160]}")


def records(world):
    context, person = visitor(world)
    person.open()
    person.page.fill("#f-part-web", "5 mm")
    person.press("Tab")
    person.settled()
    person.page.wait_for_timeout(1500)
    broken = person.page.evaluate(BREAK, BROKEN)
    assert broken > 0, "nothing was kept"
    person.page.reload()
    person.settled()
    told = said(person)
    person.page.wait_for_timeout(1500)
    assert "Müller 7,5 mm" in person.page.evaluate(KEPT), "the broken text is lost"
    world.demand(bool(told), "nothing is said of broken records")
    person.no_barriers("the page after broken records")
    person.close()
    context.close()
    return (f"all {broken} records of the database broken", f"opens; kept; says: {told[:160]}")


def newer(world):
    context, person = visitor(world)
    person.open()
    person.page.goto(person.url + "icon.svg")
    person.page.evaluate(NEWER)
    person.page.goto(person.url)
    person.settled()
    told = said(person)
    world.demand(bool(told), "nothing is said of a newer database")
    # Its own address has no icon beside it.
    person.close(expected=["404 (Not Found)"])
    context.close()
    return ("database of a newer version", f"opens; says: {told[:160]}")


def forbidden(world):
    context, person = visitor(world, FORBIDDEN)
    person.open()
    person.page.fill("#f-part-web", "5 mm")
    person.press("Tab")
    person.settled()
    told = said(person)
    world.demand(bool(told), "nothing is said where nothing can be kept")
    person.close()
    context.close()
    return ("storage forbidden", f"opens, works; says: {told[:160]}")


def full(world):
    context, person = visitor(world, FULL)
    person.open()
    person.page.fill("#f-part-web", "5 mm")
    person.press("Tab")
    person.settled()
    person.page.wait_for_timeout(1500)
    told = said(person)
    world.demand(bool(told), "nothing is said where there is no room")
    person.close()
    context.close()
    return ("storage full", f"opens, works; says: {told[:160]}")
