"""axe on every screen: in each language, in the light and in the dark, on a phone and on a desk."""
from person import Person

CASES = [("de-DE", "dark", 390, 844), ("en-GB", "light", 390, 844), ("en-GB", "dark", 1440, 900), ("es-ES", "light", 1440, 900)]
OPEN_DIALOG = "name => document.querySelector(`dialog.${name}`).parentElement.querySelector(':scope > button').click()"
CLOSE_DIALOG = "name => document.querySelector(`dialog.${name}`).close()"


def run(world):
    site = world.site("screens")
    counts = {}
    for locale, scheme, width, height in CASES:
        context = world.browser().new_context(locale=locale, color_scheme=scheme, viewport={"width": width, "height": height})
        person = Person(context, site.url).open()
        for name, show, away in SCREENS:
            show(person)
            person.page.wait_for_timeout(300)
            world.picture(person, f"screen-{name.split()[-1]}-{locale[:2]}-{scheme}-{width}")
            counts[name] = min(counts.get(name, 1000), person.no_barriers(f"{name}, {locale}, {scheme}, {width} px"))
            away(person)
        person.close()
        context.close()
    return [(f"{name}: rules passed, in {len(CASES)} cases", f"at least {count}") for name, count in counts.items()]


def nothing(person):
    pass


def all_open(person):
    person.page.evaluate("() => document.querySelectorAll('details').forEach(d => d.open = true)")


def step(person):
    person.page.evaluate("() => [...document.querySelectorAll('.step-title')].at(0).closest('button').click()")
    person.until("the findings", "() => document.querySelectorAll('.finding').length > 0")


def dialog(name):
    def show(person):
        person.page.evaluate(OPEN_DIALOG, name)
        person.until(f"the dialog {name}", f"() => document.querySelector('dialog.{name}').open", 10)
    return show, lambda person: person.page.evaluate(CLOSE_DIALOG, name)


def machine(person):
    person.page.evaluate("() => document.getElementById('at-machine-open').click()")
    person.until("the view at the machine", "() => document.querySelector('.lectern-body')?.children.length > 0", 10)


def leave(person):
    person.press("Escape")
    person.until("the page", "() => !document.querySelector('.lectern')", 10)


def wrong(person):
    person.page.fill("#f-part-web", "thin")
    person.press("Tab")
    person.until("the fault at its place", "() => !!document.querySelector('[aria-invalid=true]')", 10)


def refused(person):
    person.page.select_option("#sample", index=4)
    person.until("the refusal", "() => !!document.querySelector('.refusal')")
    person.settled()


SCREENS = [
    ("the page", nothing, nothing),
    ("all that is folded", all_open, nothing),
    ("a step", step, nothing),
    ("the job as a link", *dialog("share")),
    ("the shop", *dialog("shop")),
    ("at the machine", machine, leave),
    ("an answer that is wrong", wrong, nothing),
    ("a job that is refused", refused, nothing),
]
