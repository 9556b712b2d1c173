"""Every screen of the bench, measured on three phones against the design: buttons, gaps, lettering, contrast, room."""

from e2e import ruler
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
        phone.page.emulate_media(color_scheme="light")
        ruler.settles(phone)
        faults += [f"{state} in the light: {fault}" for fault in ruler.contrast_faults_of(phone)]
        phone.page.emulate_media(color_scheme="dark")
        phone.page.set_viewport_size({"width": 390, "height": 844})
    assert not faults, "\n".join(faults)
