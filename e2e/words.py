"""The words on the phone in another language, found by the English ones that the stories are told in."""

from tests.text_catalogue import texts


def spoken(words: str, language: str) -> str:
    """What stands where English has `words`, whole or from its beginning; a name of the shop's own stays."""
    if language == "en":
        return words
    english, other = texts("en"), texts(language)
    whole = {other[key] for key, text in english.items() if text == words}
    begun = {other[key] for key, text in english.items() if isinstance(text, str) and text.startswith(words)}
    found = whole or begun
    assert len(found) < 2, f"“{words}” may be any of {sorted(found)}"
    return found.pop() if found else words
