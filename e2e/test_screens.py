"""Every screen and state, measured on three phones against the design (buttons, gaps, lettering, contrast, room) and
by axe: nothing breaks WCAG 2.2 A or AA, dark or light; the bench keeps AAA's contrast.
"""

from e2e import axe, ruler
from e2e.phone import Phone
from e2e.walk_jacket import SHIFTS, Shift

PHONES = ((390, 844), (390, 760), (360, 640))


@SHIFTS
def test_every_screen_holds_the_sizes_and_contrasts_of_the_design(phone: Phone, shift: Shift):
    faults = []
    for state in shift(phone):
        for width, height in PHONES:
            phone.page.set_viewport_size({"width": width, "height": height})
            ruler.settles(phone)
            measured = ruler.bench_faults(phone) if phone.at_the_bench else ruler.desk_faults(phone)
            faults += [f"{state} at {width} × {height}: {fault}" for fault in measured]
        phone.page.set_viewport_size({"width": 390, "height": 844})
        ruler.settles(phone)
        faults += [f"{state}: {fault}" for fault in axe.faults(phone.page, phone.at_the_bench)]
        phone.page.emulate_media(color_scheme="light")
        ruler.settles(phone)
        faults += [f"{state}, in the light: {fault}" for fault in axe.colour_faults(phone.page, phone.at_the_bench)]
        faults += [f"{state} in the light: {fault}" for fault in ruler.contrast_faults_of(phone)]
        phone.page.emulate_media(color_scheme="dark")
    assert not faults, "\n".join(faults)


def test_axe_does_find_what_is_wrong(phone: Phone):
    """The check above can fail: faint letters and a picture without words are seen."""
    phone.page.evaluate("() => document.querySelector('main').append(new Image())")
    phone.page.evaluate("() => void (document.querySelector('h1').style.color = '#777')")
    both = axe.faults(phone.page, at_the_bench=True) + axe.colour_faults(phone.page, at_the_bench=True)
    rules = [fault.split(":")[0] for fault in both]
    assert rules.count("color-contrast-enhanced") == 2
    assert "image-alt" in rules
