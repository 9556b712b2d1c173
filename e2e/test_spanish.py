"""A phone that speaks Spanish: chosen under Settings, typed with a decimal comma, kept, followed by the other tab."""

from playwright.sync_api import expect

from e2e.phone import Phone


def test_from_the_settings_to_the_first_burst_in_spanish(phone: Phone):
    phone.speaks("es")
    phone.opens_place("Plan")
    phone.page.get_by_label("Caramelo", exact=True).fill("900,5")
    expect(phone.refused().first).to_contain_text("900,5\u202fkg es demasiado. Se admite: de 50\u202fg a 50\u202fkg.")
    phone.page.get_by_label("Caramelo", exact=True).fill("1.8 kilos")
    phone.answered()
    expect(phone.page.locator(".plan-answer")).to_contain_text("Pesar 1,8\u202fkg de caramelo.")
    phone.start.tap()
    phone.is_at("set_up")
    expect(phone.page.get_by_role("heading")).to_have_text("¿Papel, barras, guantes, bol de agua listos?")
    expect(phone.bench).to_contain_text("ADVERTENCIA")
    phone.taps("All ready")
    phone.keys("1.75")
    expect(phone.button).to_contain_text("Usar 1,75 kg")
    phone.taps()
    phone.keys("117")
    phone.taps()
    phone.starts_a_burst()
    expect(phone.page.get_by_role("heading")).to_have_text("Calentando. No alejarse del microondas.")
    assert phone.facts_of("weighed")[-1]["body"]["kg"] == 1.75


def test_the_language_is_kept_when_the_page_comes_back(phone: Phone):
    phone.speaks("es")
    phone.page.reload()
    expect(phone.page.locator("html")).to_have_attribute("lang", "es")
    expect(phone.page.get_by_role("navigation").get_by_role("link", name="Registros")).to_be_visible()


def test_another_tab_follows_the_language_chosen_in_this_one(phone: Phone):
    second = Phone(phone.page.context.new_page())
    second.page.goto("/plan")
    phone.speaks("es")
    expect(second.page.locator("html")).to_have_attribute("lang", "es")
    expect(second.page.get_by_role("navigation").get_by_role("link", name="Registros")).to_be_visible()
