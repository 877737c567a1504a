"""Printed pages: their text, their pictures in grey, the codes on them."""
import subprocess
from person import Person
import PIL.Image
import zxingcpp

SAMPLES = 4


def printed(world, person, name, size):
    """Text of each page, as printed without backgrounds."""
    file = world.out / f"{name}-{size.lower()}.pdf"
    person.page.pdf(path=str(file), format=size, prefer_css_page_size=False)
    text = subprocess.run(["pdftotext", "-layout", file, "-"], check=True, capture_output=True, text=True).stdout
    return text.rstrip("\f").split("\f")


def pictures(world, name, size, resolution):
    """Each page in grey, as a printer without colour has it."""
    stem = world.out / f"{name}-{size.lower()}"
    for old in world.out.glob(f"{stem.name}-*.png"):
        old.unlink()
    subprocess.run(["pdftoppm", "-gray", "-r", str(resolution), "-png", f"{stem}.pdf", stem], check=True)
    return sorted(world.out.glob(f"{stem.name}-*.png"))


def codes(pages):
    found = []
    for page in pages:
        found += [code.text for code in zxingcpp.read_barcodes(PIL.Image.open(page))]
    return found


def run(world):
    site = world.site("paper")
    context = world.browser().new_context(locale="en-GB", viewport={"width": 1280, "height": 900})
    person = Person(context, site.url).open()
    rows = []
    for at in range(1, SAMPLES + 1):
        name = person.page.evaluate("n => document.querySelectorAll('#sample option')[n].textContent", at)
        person.page.select_option("#sample", index=at)
        person.settled()
        refused = person.page.evaluate("() => !!document.querySelector('.refusal')")
        for size in ("A4", "Letter"):
            pages = printed(world, person, f"sheet-{at}", size)
            found = codes(pictures(world, f"sheet-{at}", size, 150))
            if refused:
                assert len(pages) == 1 and not found, f"{name}: a refusal has no sheet"
                continue
            assert len(pages) <= 2, f"{name} on {size}: {len(pages)} pages"
            link = came_back(person, found, name, size)
            rows.append((f"{name}, {size}", f"{len(pages)} pages; code read at 150 dpi, {link} letters"))
    person.close()
    context.close()
    return rows


def came_back(person, found, name, size):
    """The code on the sheet opens the same answers in a browser that never saw them."""
    links = [text for text in found if "#" in text]
    assert len(links) == 1, f"{name} on {size}: codes {found}"
    assert links[0].startswith(person.url), f"{name}: the code leads to {links[0][:60]}"
    answers = "() => [...document.querySelectorAll('[id^=f-]')].map(e => [e.id, e.value])"
    before = person.page.evaluate(answers)
    other = person.page.context.browser.new_context(locale="en-GB", viewport={"width": 390, "height": 844})
    phone = Person(other, links[0])
    phone.open()
    phone.until("the job of the link", f"() => document.getElementById('f-part-name').value === {before_name(before)!r}")
    phone.settled()
    after = phone.page.evaluate(answers)
    assert after == before, f"{name}: {[pair for pair in zip(before, after) if pair[0] != pair[1]][:3]}"
    assert "#j" not in phone.page.url, phone.page.url
    phone.close()
    other.close()
    return len(links[0])


def before_name(answers):
    return dict(map(tuple, answers))["f-part-name"]
