"""The whole page in each language: chosen by the browser, nothing left in English, nothing cut or overlapping, no barriers."""
from person import Person
import paper
import re

LOCALES = {"de": "de-DE", "en": "en-GB", "es": "es-ES"}
# Texts of the page, line by line, in the open and folded; what people typed is theirs.
LINES = """() => [...document.querySelectorAll('h1, h2, h3, h4, p, li, dt, dd, th, td, button, label, legend, summary, option, caption, span, figcaption')]
    .filter(e => ![...e.children].some(c => c.textContent.trim().split(/\\s+/).length > 2) && !e.closest('.title-value, [lang]:not(html), .lines'))
    .map(e => e.textContent.trim().replace(/\\s+/g, ' '))"""
WIDTHS = [(360, 740), (390, 844), (820, 1180), (1440, 900), (3840, 2160)]


def words(line):
    return re.findall(r"[^\W\d_]{3,}", line)


def run(world):
    site = world.site("languages")
    seen, rows = {}, []
    for tag, locale in LOCALES.items():
        context = world.browser().new_context(locale=locale, viewport={"width": 1440, "height": 900})
        person = Person(context, site.url).open()
        assert person.page.evaluate("() => document.documentElement.lang") == tag, f"the browser's {locale} is not followed"
        person.page.evaluate("() => document.querySelectorAll('details').forEach(d => d.open = true)")
        person.page.evaluate("() => document.querySelector('.step button')?.click()")
        person.until("a step", "() => document.querySelectorAll('.finding').length > 0")
        person.page.wait_for_timeout(1500)
        seen[tag] = {line for line in person.page.evaluate(LINES) if len(words(line)) >= 3}
        barriers = person.no_barriers(f"the page in {tag}")
        trouble = widths(world, person, tag)
        pages = sheets(world, person, tag)
        person.close()
        context.close()
        rows.append((f"{tag}: texts of three words and more; axe rules passed; most pages of a sample's sheet", f"{len(seen[tag])}; {barriers}; {pages}"))
        rows.append((f"{tag}: cut, too wide or too low at 360, 390, 820, 1440, 3840 px", "; ".join(trouble) or "nothing"))
    for tag in ("de", "es"):
        same = sorted(seen[tag] & seen["en"])
        rows.append((f"{tag}: texts that stand there in English", "; ".join(same[:8]) + (f" and {len(same) - 8} more" if len(same) > 8 else "") if same else "none"))
        world.demand(not same, f"{len(same)} texts in {tag} are English: {same[:8]}")
    return rows


def sheets(world, person, tag):
    """Most pages that the sheet of a sample takes."""
    person.page.set_viewport_size({"width": 1280, "height": 900})
    most = 0
    for at in range(1, paper.SAMPLES):
        person.page.select_option("#sample", index=at)
        person.settled()
        person.page.wait_for_timeout(500)
        for size in ("A4", "Letter"):
            pages = len(paper.printed(world, person, f"sheet-{tag}-{at}", size))
            world.demand(pages <= 2, f"the sheet of sample {at} in {tag} takes {pages} pages on {size}")
            most = max(most, pages)
    return most


def widths(world, person, tag):
    trouble = []
    for width, height in WIDTHS:
        person.page.set_viewport_size({"width": width, "height": height})
        person.page.wait_for_timeout(400)
        found = person.too_wide() + person.small_targets()
        trouble += [f"{width}: {what}" for what in found]
        world.picture(person, f"{tag}-{width}")
    world.demand(not trouble, f"{tag}: {trouble[:5]}")
    return trouble
