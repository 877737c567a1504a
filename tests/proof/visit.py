"""From the first visit to a printed sheet, the machine and a saved note of what worked: by keyboard alone, the network gone after
the first load."""
from person import Person
import paper
import time


def run(world):
    site = world.site("visit")
    context = world.browser().new_context(locale="en-GB", viewport={"width": 1280, "height": 900})
    start = time.monotonic()
    person = Person(context, site.url).open()
    first = time.monotonic() - start
    person.kept()
    site.stop()
    sample(person)
    answers(person)
    barriers = person.no_barriers("the page")
    confirmed = confirm(person)
    step(person)
    person.tab_to("Print", lambda at: at["tag"] == "BUTTON" and at["words"] == "Print", back=True)
    person.press("Enter")
    person.until("the print dialogue", "() => globalThis.printed === 1")
    pages = paper.printed(world, person, "visit", "A4")
    assert len(pages) <= 2 and "Trial plate" in pages[0], pages
    leaves = machine(world, person)
    note(world, person)
    person.page.reload()
    person.settled()
    kept = " ".join(person.said("#ran"))
    assert "Quiet, chips flew well" in kept, f"the note is gone: {kept[:300]}"
    assert person.value("f-part-name") == "Trial plate"
    person.close(expected=["ERR_INTERNET_DISCONNECTED", "ERR_CONNECTION_REFUSED"])
    context.close()
    return [("first visit: page and first strategy shown, s", f"{first:.1f}"),
            ("by keyboard alone, network off after the first load", f"sheet of {len(pages)} pages, {leaves} pages at the machine, note kept over a reload"),
            ("confirmed before the sheet was printed", str(confirmed)),
            ("axe on the page: rules passed, violations", f"{barriers}, 0")]


def sample(person):
    person.tab_to("the list of samples", lambda at: at["id"] == "sample")
    name = person.page.evaluate("() => document.querySelector('#sample option:nth-child(4)').textContent")
    before = person.said(".route")
    person.page.keyboard.type(name[:6])
    person.until("the sample", "() => document.getElementById('f-part-name').value.length > 0")
    person.settled()
    assert person.said(".route") != before, "the sample is not taken up"


def answers(person):
    person.tab_to("what is asked besides", lambda at: at["tag"] == "SUMMARY" and at["group"] == "group-part")
    person.press("Enter")
    person.tab_to("the name", lambda at: at["id"] == "f-part-name")
    person.write("Trial plate")
    person.tab_to("the greatest speed of the spindle", lambda at: at["id"] == "f-machine-speed-max")
    before = person.said(".route")
    person.write("9000 rpm")
    person.press("Enter")
    person.until("the answers to be taken up", "() => document.getElementById('f-machine-speed-max').value === '9000 rpm'", 5)
    person.settled()
    assert person.said(".route") != before, "slower, and the same strategy"


def confirm(person):
    """What has to be confirmed before the sheet is without a stop mark."""
    count = person.page.evaluate("() => document.querySelectorAll('input[id^=confirm-]').length")
    for at in range(count):
        person.tab_to("what is to be confirmed", lambda focus: focus["id"] == f"confirm-{at}")
        person.press("Space")
        person.until("the confirmation", f"() => document.getElementById('confirm-{at}')?.checked", 5)
    return count


def step(person):
    person.tab_to("the first step", lambda at: at["tag"] == "BUTTON" and at["words"].startswith("1"))
    person.press("Enter")
    person.until("the findings of the step", "() => document.querySelectorAll('.finding').length > 0")
    person.no_barriers("an open step")


def machine(world, person):
    """Through all pages of the view at the machine, and out again."""
    person.tab_to("the way to the machine", lambda at: at["id"] == "at-machine-open")
    person.press("Enter")
    person.until("the view", "() => document.querySelector('.lectern-body')?.children.length > 0")
    leaves = 0
    while True:
        leaves += 1
        person.until("the page to fit", "() => { const b = document.querySelector('.lectern-body'); return b.scrollHeight <= b.clientHeight + 1; }", 5)
        if leaves in (1, 4, 7):
            person.no_barriers(f"page {leaves} at the machine")
            world.picture(person, f"machine-{leaves}")
        low = person.page.evaluate("""() => [...document.querySelectorAll('.lectern button')].filter(e => e.checkVisibility())
            .map(e => e.getBoundingClientRect().height).filter(h => h < 55.5).length""")
        assert low == 0, f"{low} targets lower than 56 px"
        if person.page.evaluate("() => document.getElementById('lectern-next').getAttribute('aria-disabled') === 'true'"):
            break
        before = person.page.evaluate("() => location.hash")
        person.press("ArrowRight")
        person.until("the next page", f"() => location.hash !== '{before}'", 5)
        assert leaves < 400
    person.press("Escape")
    person.until("the page again", "() => !document.querySelector('.lectern')")
    assert leaves > 4, leaves
    return leaves


def note(world, person):
    """What worked, said by keyboard."""
    person.tab_to("the section of what was run", lambda at: at["tag"] == "SUMMARY" and "ran" in at["group"])
    person.press("Enter")
    person.tab_to("how it went", lambda at: at["type"] == "radio")
    person.press("Space")
    person.tab_to("the note in words", lambda at: at["tag"] == "TEXTAREA" and at["id"].startswith("ran"))
    person.page.keyboard.type("Quiet, chips flew well.")
    person.no_barriers("what was run")
    world.picture(person, "note")
    person.tab_to("the button that keeps the note", lambda at: at["tag"] == "BUTTON" and "trouble-button" in at["classes"] and at["group"] == "ran")
    person.press("Enter")
    person.until("the note in the history", "() => document.getElementById('ran').textContent.includes('Quiet, chips flew well')")
    time.sleep(1.0)
