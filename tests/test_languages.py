"""Spanish says all that English says: key by key, placeholder by placeholder, in the workshop's own words.

Mexican Spanish is Spanish in Mexican words; its own catalogue holds what a change of words leaves wrong.
"""

import re

import pytest

from amberbench.text import VARIANTS, chain, language_of, languages, varied
from tests.text_catalogue import FOLDER, bare, files, forms, own_texts, placeholders, texts, twice

ENGLISH, SPANISH, MEXICAN = texts("en"), texts("es"), texts("es-MX")
WHOLE = [one for one in languages() if one not in VARIANTS]
# Unicode CLDR 48, plural rules, cardinal: Spanish has "many" for whole millions, which no count here reaches.
PLURALS = {"one", "other"}
SAME_IN_BOTH = {
    "language.en",
    "language.es",
    "language.es-MX",
    "desk.row_chocolate",
    "basis.no",
    "field.base",
    "shop.bases.base",
}
SAME_IN_MEXICO = {"allergen.soya", "word.pretzel"}
# Not a word of Spanish among them.
ENGLISH_WORDS = re.compile(
    r"\b(the|of|and|with|is|are|to|from|this|that|what|for|at|by|on|it|be|or|not|batch|slab)\b", re.I
)
# One word for one thing, as DEVELOPERS.md lists them; and nobody is called tú, usted or vos.
OTHER_WORDS = re.compile(
    r"\b(hornos?|ráfagas?|bloques? de tiempo|lámina|placa de caramelo|reglas?|colada|hornada|sala|mezclar|revolver|"
    r"temporizador(es)?|tazón|cuenco|depósitos?|baño(?! maría)|miradas?|camas?|lechos?|templ(ar|ados?|adas?|e|en)|"
    r"nunca sobre|muy pasado|de pie|(?<!alimentaria )local)\b",
    re.I,
)
# Before a time or a duration an article or "unos" is right for some values and wrong for others: "a las 1:05".
BEFORE_TIMES = re.compile(r"\b(las?|un[oa]s) \{\w+_(s|at_ms)\}", re.I)
# Words of Spain that a Mexican kitchen has others for, and endings that no longer fit the word before or after.
NOT_MEXICAN = re.compile(
    rf"\b({'|'.join(VARIANTS['es-MX']['words'])}|"
    r"(los|unos|estos|esos|muchos) nueces|nueces (\w+[aei]dos|sueltos|secos)|"
    r"(las|unas|estas) guantes|guantes de cocina \w+as|(la|una) refrigerador|refrigerador \w+ada)\b",
    re.I,
)
PRONOUNS = re.compile(r"\b(tú|tu|tus|usted|vos|vosotros)\b", re.I)
# Imperatives of tú that an infinitive should stand for.
IMPERATIVES = re.compile(
    r"(?:^|[.;:,] |\by )"
    r"(pon|mide|remueve|vierte|corta|lee|pesa|saca|toma|usa|toca|guarda|elige|escribe|prueba|abre)\b(?! de)",
    re.I,
)
WORK_OF = "source.buffler_1993"  # the title of an English book


def test_there_is_spanish():
    assert languages() == ["en", "es", "es-MX"]
    assert WHOLE == ["en", "es"]
    assert [chain(one) for one in languages()] == [["en"], ["es"], ["es-MX", "es"]]


@pytest.mark.parametrize(
    ("locale", "language"),
    [("es-MX", "es-MX"), ("ES-419", "es-MX"), ("es-us", "es-MX"), ("es-AR", "es"), ("en-GB", "en"), ("de-DE", None)],
)
def test_a_locale_is_read_in_its_own_variant_where_there_is_one(locale, language):
    assert language_of(locale) == language


@pytest.mark.parametrize("variant", VARIANTS)
def test_a_variant_holds_only_what_its_words_leave_wrong_in_the_same_file(variant):
    whole, own = files(variant.split("-")[0]), files(variant)
    assert own_texts(variant)
    assert {name: sorted(set(own[name]) - set(whole.get(name, {}))) for name in own} == {name: [] for name in own}
    same = [key for name in own for key, said in own[name].items() if said == in_words_of(variant, whole[name][key])]
    assert same == []


def in_words_of(variant, sentence):
    """A sentence, or its plural forms, as the variant's words alone make it."""
    if isinstance(sentence, str):
        return varied(sentence, variant)
    return {form: varied(one, variant) for form, one in sentence.items()}


def test_mexican_words_take_the_place_of_whole_words_alone_and_keep_their_capital():
    assert varied("Boles: remover, y a la nevera.", "es-MX") == "Tazones: revolver, y al refrigerador."
    assert varied("Dos manoplas secas, las manoplas.", "es-MX") == "Dos guantes de cocina secos, los guantes de cocina."
    assert varied("{bol} {bol_kg} bolsa rebol", "es-MX") == "{bol} {bol_kg} bolsa rebol"


@pytest.mark.parametrize("variant", VARIANTS)
def test_a_word_of_a_variant_stays_when_the_words_are_changed_again(variant):
    words = VARIANTS[variant]["words"]
    assert all(one == one.lower() for one in words)
    assert {one: varied(one, variant) for one in words.values()} == {one: one for one in words.values()}
    assert len(words) > 40


def test_both_languages_have_the_same_keys_in_the_same_files():
    english, spanish = files("en"), files("es")
    assert sorted(english) == sorted(spanish)
    assert {name: sorted(set(english[name]) ^ set(spanish[name])) for name in english} == {name: [] for name in english}


@pytest.mark.parametrize("language", languages())
def test_no_key_stands_twice_in_a_file(language):
    paths = sorted((FOLDER / language).glob("*.json"))
    assert len(paths) == len(files(language)) > (0 if language in VARIANTS else 5)
    assert {path.name: twice(path.read_text(encoding="utf-8")) for path in paths} == {path.name: [] for path in paths}


def test_a_key_that_stands_twice_would_be_found():
    assert twice('{"a": "one", "b": {"one": "x", "one": "y"}, "a": "two"}') == ["a", "one"]


@pytest.mark.parametrize("language", languages())
def test_no_key_stands_in_two_files(language):
    keys = [key for file in files(language).values() for key in file]
    assert sorted({key for key in keys if keys.count(key) > 1}) == []


@pytest.mark.parametrize("language", languages()[1:])
def test_a_sentence_has_the_same_placeholders_in_every_language(language):
    apart, other = [], texts(language)
    for key, sentence in ENGLISH.items():
        wanted = placeholders(forms(sentence)[-1])
        apart += [key for form in forms(other[key])[-1:] if placeholders(form) != wanted]
        # The form for one may leave the number out, and what only many have.
        apart += [key for form in forms(other[key])[:-1] if not placeholders(form) <= wanted]
    assert apart == []


@pytest.mark.parametrize("language", WHOLE)
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


@pytest.mark.parametrize("spanish", [SPANISH, MEXICAN], ids=["es", "es-MX"])
def test_no_english_is_left_in_spanish(spanish):
    same = {
        key
        for key in ENGLISH
        if ENGLISH[key] == spanish[key] and any(re.search("[a-z]", bare(one)) for one in forms(ENGLISH[key]))
    }
    assert same == SAME_IN_BOTH | (SAME_IN_MEXICO if spanish is MEXICAN else set())
    assert found(ENGLISH_WORDS, spanish).keys() == {WORK_OF}


def found(words, spanish):
    """The texts with one of such words in them, placeholders aside."""
    return {key: form for key, sentence in spanish.items() for form in forms(sentence) if words.search(bare(form))}


@pytest.mark.parametrize(("spanish", "others"), [(SPANISH, OTHER_WORDS), (MEXICAN, NOT_MEXICAN)], ids=["es", "es-MX"])
def test_spanish_keeps_to_the_words_of_the_glossary_and_calls_nobody_by_a_pronoun(spanish, others):
    assert found(others, spanish) == {}
    assert found(PRONOUNS, spanish) == {}
    assert {key: form for key in spanish for form in forms(spanish[key]) if BEFORE_TIMES.search(form)} == {}
    assert {key: form for key in spanish for form in forms(spanish[key]) if IMPERATIVES.search(form)} == {}


@pytest.mark.parametrize("spanish", [SPANISH, MEXICAN], ids=["es", "es-MX"])
def test_spanish_is_punctuated_as_spanish(spanish):
    """Questions and exclamations open with a mark, quotation marks are angular, and a space stands before no colon."""
    for form in (form for sentence in spanish.values() for form in forms(sentence)):
        assert form.count("?") == form.count("¿"), form
        assert form.count("!") == form.count("¡"), form
        assert not re.search(r"[“”]| [:;?!,.](?!\d)", form), form


def test_signal_words_are_those_of_the_standard():
    # ANSI Z535.4 and Z535.6, Spanish signal words as manuals give them; from memory, the standard was not read.
    words = {one: SPANISH[f"signal.{one}"] for one in ("danger", "warning", "caution", "notice")}
    assert words == {"danger": "PELIGRO", "warning": "ADVERTENCIA", "caution": "PRECAUCIÓN", "notice": "AVISO"}


# What a tired person with gloves does not understand at once: an oven bakes, a boxer weighs in, a fact is our own word.
NOT_PLAIN = re.compile(
    r"\bovens?\b|\bweigh(ed|ing)?[ -]in\b(?! water)|\bfacts?\b|\bfrom memory\b|\bstands? (in|on|at|twice)\b|"
    r"\bas it stands\b|\b(take|took|taken) away\b|\bbrimful\b|\bdip away\b|\bseed in\b|\banew\b|\bweld\b",
    re.I,
)


def test_english_keeps_to_words_that_are_understood_at_once():
    said = {key: form for key in ENGLISH for form in forms(ENGLISH[key]) if NOT_PLAIN.search(bare(form))}
    assert said == {}
    assert NOT_PLAIN.search("Weigh in 1.8 kg. Stay by the oven.")
