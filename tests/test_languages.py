"""Spanish says all that English says: key by key, placeholder by placeholder, in the workshop's own words."""

import re

import pytest

from amberbench.text import languages
from tests.text_catalogue import FOLDER, bare, files, forms, placeholders, texts, twice

ENGLISH, SPANISH = texts("en"), texts("es")
# Unicode CLDR 48, plural rules, cardinal: Spanish has "many" for whole millions, which no count here reaches.
PLURALS = {"one", "other"}
SAME_IN_BOTH = {
    "language.en",
    "language.es",
    "desk.place_plan",
    "desk.row_chocolate",
    "basis.no",
    "field.base",
    "allergen.gluten",
}
# Not a word of Spanish among them.
ENGLISH_WORDS = re.compile(
    r"\b(the|of|and|with|is|are|to|from|this|that|what|for|at|by|on|it|be|or|not|batch|slab)\b", re.I
)
# One word for one thing, as DEVELOPERS.md lists them; and nobody is called tú, usted or vos.
OTHER_WORDS = re.compile(
    r"\b(hornos?|ráfagas?|bloques? de tiempo|lámina|placa de caramelo|reglas?|colada|hornada|sala|mezclar|revolver|"
    r"temporizador(es)?|tazón|cuenco|depósitos?|tú|tu|tus|usted|vos|vosotros)\b",
    re.I,
)
# Imperatives of tú that an infinitive should stand for.
IMPERATIVES = re.compile(
    r"(?:^|[.;:,] |\by )"
    r"(pon|mide|remueve|vierte|corta|lee|pesa|saca|toma|usa|toca|guarda|elige|escribe|prueba|abre)\b(?! de)",
    re.I,
)
WORK_OF = "source.buffler_1993"  # the title of an English book


def test_there_is_spanish():
    assert languages() == ["en", "es"]


def test_both_languages_have_the_same_keys_in_the_same_files():
    english, spanish = files("en"), files("es")
    assert sorted(english) == sorted(spanish)
    assert {name: sorted(set(english[name]) ^ set(spanish[name])) for name in english} == {name: [] for name in english}


@pytest.mark.parametrize("language", languages())
def test_no_key_stands_twice_in_a_file(language):
    paths = sorted((FOLDER / language).glob("*.json"))
    assert len(paths) == len(files(language)) > 5
    assert {path.name: twice(path.read_text(encoding="utf-8")) for path in paths} == {path.name: [] for path in paths}


def test_a_key_that_stands_twice_would_be_found():
    assert twice('{"a": "one", "b": {"one": "x", "one": "y"}, "a": "two"}') == ["a", "one"]


@pytest.mark.parametrize("language", languages())
def test_no_key_stands_in_two_files(language):
    keys = [key for file in files(language).values() for key in file]
    assert sorted({key for key in keys if keys.count(key) > 1}) == []


def test_a_sentence_has_the_same_placeholders_in_both_languages():
    apart = []
    for key, sentence in ENGLISH.items():
        wanted = placeholders(forms(sentence)[-1])
        apart += [key for form in forms(SPANISH[key])[-1:] if placeholders(form) != wanted]
        # The form for one may leave the number out, and what only many have.
        apart += [key for form in forms(SPANISH[key])[:-1] if not placeholders(form) <= wanted]
    assert apart == []


@pytest.mark.parametrize("language", languages())
def test_plural_forms_are_those_of_the_language(language):
    plural = {key: set(sentence) for key, sentence in texts(language).items() if not isinstance(sentence, str)}
    assert plural.keys() == {key for key, sentence in ENGLISH.items() if not isinstance(sentence, str)}
    assert {key: forms for key, forms in plural.items() if forms != PLURALS} == {}


@pytest.mark.parametrize("language", languages())
def test_a_prompt_at_the_bench_has_at_most_eight_words(language):
    prompts = {key: sentence for key, sentence in texts(language).items() if key.startswith("say.")}
    long = {key: one for key, one in prompts.items() for form in forms(one) if len(form.split()) > 8}
    assert len(prompts) > 25
    assert long == {}


@pytest.mark.parametrize("language", languages())
def test_a_button_at_the_bench_has_at_most_four_words(language):
    long = [one for key, one in texts(language).items() if key.startswith("undo.") and len(one.split()) > 4]
    assert long == []


def test_no_english_is_left_in_spanish():
    same = {
        key
        for key in ENGLISH
        if ENGLISH[key] == SPANISH[key] and any(re.search("[a-z]", bare(one)) for one in forms(ENGLISH[key]))
    }
    assert same == SAME_IN_BOTH
    english = {key: form for key in SPANISH for form in forms(SPANISH[key]) if ENGLISH_WORDS.search(bare(form))}
    assert english.keys() == {WORK_OF}


def test_spanish_keeps_to_the_words_of_the_glossary_and_calls_nobody_by_a_pronoun():
    assert {key: form for key in SPANISH for form in forms(SPANISH[key]) if OTHER_WORDS.search(bare(form))} == {}
    assert {key: form for key in SPANISH for form in forms(SPANISH[key]) if IMPERATIVES.search(form)} == {}


def test_spanish_is_punctuated_as_spanish():
    """Questions and exclamations open with a mark, quotation marks are angular, and a space stands before no colon."""
    for form in (form for sentence in SPANISH.values() for form in forms(sentence)):
        assert form.count("?") == form.count("¿"), form
        assert form.count("!") == form.count("¡"), form
        assert not re.search(r"[“”]| [:;?!,.](?!\d)", form), form


def test_signal_words_are_those_of_the_standard():
    # ANSI Z535.4 and Z535.6, Spanish signal words as manuals give them; from memory, the standard was not read.
    words = {one: SPANISH[f"signal.{one}"] for one in ("danger", "warning", "caution", "notice")}
    assert words == {"danger": "PELIGRO", "warning": "ADVERTENCIA", "caution": "PRECAUCIÓN", "notice": "AVISO"}
