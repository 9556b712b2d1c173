"""Notes written at the bench, and prompts spoken for who wants them."""

from playwright.sync_api import BrowserContext, expect

from e2e.phone import Phone

# Keeps every sentence handed to the browser's own speech; the phone then speaks it as it would anyway.
HEAR = """() => {
  window.heard = [];
  const speak = speechSynthesis.speak.bind(speechSynthesis);
  speechSynthesis.speak = (one) => { window.heard.push([one.lang, one.text]); speak(one); };
}"""
VOICES = "() => speechSynthesis.getVoices().some((one) => one.lang.startsWith('en'))"


def test_a_note_written_off_line_stands_in_the_log(phone: Phone):
    phone.installs()
    phone.plans_and_starts()
    phone.loses_the_network()
    phone.opens("More")
    phone.opens("Write a note")
    phone.page.get_by_label("What to remember").fill("The new bowl, a little damp")
    phone.page.get_by_role("button", name="Keep the note").tap()
    expect(phone.page.get_by_role("dialog")).to_have_count(0)
    assert [fact["body"]["text"] for fact in phone.facts_of("noted")] == ["The new bowl, a little damp"]
    phone.is_at("set_up")


def test_a_prompt_is_spoken_or_the_missing_voice_is_told(context: BrowserContext):
    phone = Phone(context.new_page(), fake_clock=False)
    phone.page.goto("/settings")
    phone.page.evaluate(HEAR)
    phone.page.get_by_role("button", name="Say something").tap()
    told = phone.page.get_by_text("This phone has no voice for this language.")
    phone.page.wait_for_function("() => window.heard.length > 0 || document.querySelector('[role=alert]')")
    if phone.page.evaluate(VOICES):
        assert phone.page.evaluate("window.heard")[0][1] == "The block is ready to pour."
    else:
        expect(told).to_be_visible()
