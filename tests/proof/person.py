"""What a person does at the page, and what the page then shows; nothing here knows a language but by its parts."""
import pathlib
import re
import time

AXE = pathlib.Path(__file__).resolve().parent.parent / "browser" / "vendor" / "axe.min.js"
PATIENCE = 90.0
# What axe has found in the part in hand.
BARRIERS = []
INTERVAL = 0.05
# The button beside the status line has nothing to do where the work is done; it says so.
SETTLED = """() => document.querySelectorAll('.route').length === 1 && !document.querySelector('.route-stale, .status-alarm')
    && document.querySelector('.status-button')?.getAttribute('aria-disabled') === 'true'"""
FOCUS = """() => { const e = document.activeElement; if (!e || e === document.body) return null;
    return {id: e.id, tag: e.tagName, words: (e.getAttribute('aria-label') || e.textContent).trim().replace(/\\s+/g, ' '),
        type: e.type || '', group: e.closest('[id]')?.id || '', classes: e.className?.baseVal ?? e.className}; }"""
# Faults that the page would not show by itself.
LISTEN = "addEventListener('securitypolicyviolation', e => console.error('policy: ' + e.violatedDirective + ' ' + e.blockedURI));"
NO_PRINTER = "globalThis.printed = 0; globalThis.print = () => { globalThis.printed += 1; };"


class Person:
    """One page of one browser, and all that went wrong in it."""

    def __init__(self, context, url):
        self.page = context.new_page()
        self.faults = []
        self.page.add_init_script(LISTEN + NO_PRINTER)
        self.page.on("pageerror", lambda error: self.faults.append(str(error)))
        self.page.on("console", lambda m: self.faults.append(m.text) if m.type == "error" else None)
        self.url = url

    def open(self, fragment=""):
        self.page.goto(self.url + fragment)
        return self.settled()

    def until(self, what, wanted, patience=PATIENCE):
        start = time.monotonic()
        while True:
            try:
                value = self.page.evaluate(wanted)
            except Exception as error:  # The page is just being loaded anew.
                if "context was destroyed" not in str(error):
                    raise
                value = None
            if value:
                return value
            assert time.monotonic() - start < patience, f"waited in vain for {what}"
            time.sleep(INTERVAL)

    def settled(self):
        self.until("a strategy", SETTLED)
        return self

    def kept(self):
        """Waits until the browser keeps all of the page."""
        ready = "async () => (await caches.keys()).filter(name => !name.endsWith(' notes')).length > 0 && !!navigator.serviceWorker.controller"
        self.until("the page to be kept", ready)
        time.sleep(0.3)

    def said(self, css):
        """Texts of what a selector finds, blanks as one."""
        texts = self.page.evaluate("css => [...document.querySelectorAll(css)].map(e => e.textContent)", css)
        return [re.sub(r"\s+", " ", text).strip() for text in texts]

    def value(self, id):
        return self.page.evaluate("id => document.getElementById(id)?.value", id)

    def tab_to(self, what, wanted, most=700, back=False):
        """Goes on by tabulator until the focus is where it is wanted."""
        for _ in range(most):
            self.page.keyboard.press("Shift+Tab" if back else "Tab")
            focus = self.page.evaluate(FOCUS)
            if focus and wanted(focus):
                return focus
        raise AssertionError(f"{what} is not reached by keyboard")

    def press(self, *keys):
        for key in keys:
            self.page.keyboard.press(key)

    def write(self, text):
        """In place of what stands in the entry in hand."""
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)

    def no_barriers(self, where):
        """axe finds nothing, which is told with the part's results; how many of its rules found something to look at."""
        if not self.page.evaluate("() => 'axe' in globalThis"):
            self.page.evaluate(AXE.read_text())
        found = self.page.evaluate("""() => axe.run(document, {resultTypes: ['violations']}).then(found => ({passes: found.passes.length,
            violations: found.violations.map(v => v.id + ': ' + v.help + ' at ' + v.nodes.map(n => n.target.join(' ')).join(', '))}))""")
        BARRIERS.extend(f"{where}: {violation}" for violation in found["violations"])
        assert found["passes"] > 10, f"{where}: axe saw {found['passes']} things only"
        return found["passes"]

    def too_wide(self):
        """What stands out of the window at the side, or is cut off."""
        return self.page.evaluate("""() => { const wide = document.documentElement.scrollWidth > innerWidth + 1
            ? ['the page scrolls sideways: ' + document.documentElement.scrollWidth] : [];
            const cut = [...document.querySelectorAll('button, a, label, legend, h1, h2, h3, h4, p, dt, dd, td, th, li')]
                .filter(e => e.checkVisibility() && !e.closest('svg') && e.scrollWidth > e.clientWidth + 2 && e.clientWidth > 0
                    && ['hidden', 'clip'].includes(getComputedStyle(e).overflowX) && !e.classList.contains('away'));
            return [...wide, ...cut.slice(0, 5).map(e => 'cut: ' + e.textContent.trim().slice(0, 60))]; }""")

    def small_targets(self):
        """Buttons, lists and entries lower than a finger needs, 44 px."""
        return self.page.evaluate("""() => [...document.querySelectorAll('button, select, input:not([type=file]), summary')]
            .filter(e => e.checkVisibility() && !e.classList.contains('away'))
            .map(e => [e.closest('label')?.getBoundingClientRect().height || 0, e.getBoundingClientRect().height, e])
            .filter(([label, own]) => Math.max(label, own) > 0 && Math.max(label, own) < 43.5)
            .slice(0, 5).map(([, own, e]) => Math.round(own) + ' px: ' + (e.id || e.textContent.trim().slice(0, 40)))""")

    def close(self, expected=()):
        faults = [fault for fault in self.faults if not any(part in fault for part in expected)]
        assert not faults, f"told in the console: {faults[:5]}"
        self.page.close()
