"""No screen and no state of it breaks WCAG 2.2 A or AA, dark or light; the bench keeps AAA's contrast."""

from e2e import axe, ruler
from e2e.phone import Phone
from e2e.walk_jacket import SHIFTS, Shift


@SHIFTS
def test_axe_finds_nothing_on_any_screen_in_the_dark_and_in_the_light(phone: Phone, shift: Shift):
    found = []
    for state in shift(phone):
        at_the_bench = phone.at_the_bench
        ruler.settles(phone)
        found += [f"{state}: {fault}" for fault in axe.faults(phone.page, at_the_bench)]
        phone.page.emulate_media(color_scheme="light")
        ruler.settles(phone)
        found += [f"{state}, in the light: {fault}" for fault in axe.colour_faults(phone.page, at_the_bench)]
        phone.page.emulate_media(color_scheme="dark")
    assert not found, "\n".join(found)


def test_axe_does_find_what_is_wrong(phone: Phone):
    """The check above can fail: faint letters and a picture without words are seen."""
    phone.page.evaluate("() => document.querySelector('main').append(new Image())")
    phone.page.evaluate("() => void (document.querySelector('h1').style.color = '#777')")
    both = axe.faults(phone.page, at_the_bench=True) + axe.colour_faults(phone.page, at_the_bench=True)
    rules = [fault.split(":")[0] for fault in both]
    assert rules.count("color-contrast-enhanced") == 2
    assert "image-alt" in rules
