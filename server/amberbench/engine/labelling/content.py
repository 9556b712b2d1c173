"""What stands on the label of a box: its ingredients in order, allergens as the rule wants them, and what is missing.

Guide only: local rules decide.
"""

from ..core.allergens import ALLERGENS, TREE_NUTS, in_label_order
from ..core.check import is_above, is_below
from ..core.problems import Problem
from . import dates, declarations

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..core.annotations import Document, Readable

# 21 USC 321(qq): no coconut, no cereal but wheat, none of the EU's celery, mustard, lupin, sulphites, molluscs.
NINE = ("milk", "egg", "fish", "crustaceans", "nuts") + TREE_NUTS + ("wheat", "peanuts", "soya", "sesame")
# Annex II of Regulation (EU) No 1169/2011: what it does not name is no allergen there (pine nuts).
FOURTEEN = tuple([one for one in ALLERGENS if one != "pine_nut"])
# Neither rule takes these for an answer: both want the kind.
KINDLESS = ("gluten", "nuts")
# Of these the US rule wants the species by name (21 USC 343(w)(2)), which no list here has.
OF_SPECIES = ("fish", "crustaceans")
MANY = 9
# The e mark is for packages of one nominal quantity of 5 g to 10 kg (directive 76/211/EEC; this
# scope from an encyclopedia, the directive itself was not opened).
E_MARK_KG = (0.005, 10.0)
# What keeps a label from being printed as a label for sale.
STOPS = ("label_unknown", "net_missing", "address_missing", "nothing_known", "kind_missing", "day_missing",
         "species_missing")  # fmt: skip


def content(request: "Readable") -> "Document":
    """What the label of a box says, and what is missing before it may be sold with it.

    Request: rule (us, eu or uk), name, parts [{name, ingredients (as their label lists them), contains (allergens on
    it; null: nobody copied them), kg (what went into a box, or into all of them)}], may_contain (allergens), words
    [{allergen, words (of every language of the label, the first is printed)}], label_kg (kg; null: not set), face_m2
    (m²; null: unknown), code, made_on, best_by (days; null), address, e_mark (whether the e mark is wanted), net_passed
    (whether the lot's net contents passed by the EU's rule).
    Reply: name, ingredients [{text, is_strong}] (one list in descending weight, parts of a part in brackets; strong:
    the allergen words, eu and uk alone), contains (allergens for the line "Contains", us alone), allergens (all that
    the rule names), may_contain (those it does not contain), net (the declared weight as `label.net_weight` has it;
    null), e_mark (whether it may stand beside it), code, made_on, best_by, address, warnings [{code, values}],
    is_complete (nothing is missing).
    Raises: Problem not_a_day (made_on, best_by), best_by_before_made (best_by).
    Relation: parts with the same list of ingredients are one; equal weights keep the order they were given in. An
    allergen that no word of its list names is added to it, and that is told. us names allergens on a line of their
    own, eu and uk within the list, never both. The e mark is refused, and that is told, by the US rule, outside 5 g to
    10 kg, and before the lot passed: its maker answers for the mean and for packages short (uk_si_2006_659).
    Source: cfr_101_4 for the order, usc_343_w and usc_321_qq for the US, eu_1169_2011 for the EU; memory for parts in
    brackets (21 CFR 101.4(b)(2)) and for the UK, whose rule is alike.
    """
    _days(request)
    european = request["rule"] != "us"
    named = FOURTEEN if european else NINE
    parts = _merged(request["parts"])
    said = in_label_order(one for part in parts for one in part["contains"])
    contains = [one for one in said if one in named]
    may = in_label_order(one for one in request["may_contain"] if one in named and one not in contains)
    warnings = _missing(request, parts, contains + may) + _unnamed(european, said, request["may_contain"])
    refused = _e_mark_refused(request, european) if request["e_mark"] else None
    if refused is not None:
        warnings.append({"code": refused, "values": {}})
    runs: "list[Document]" = []
    for number, part in enumerate(parts):
        _add(runs, ", " if number else "", False)
        words = _words(request["words"], part, named) if european else []
        missed = _part(runs, part, words)
        warnings.extend({"code": "allergen_added", "values": {"name": part["name"], "allergen": one}} for one in missed)
    _add(runs, ".", False)
    return {
        "name": request["name"],
        "ingredients": runs,
        "contains": [] if european else contains,
        "allergens": contains,
        "may_contain": may,
        "net": _net(request, european),
        "e_mark": request["e_mark"] and refused is None,
        "code": request["code"],
        "made_on": request["made_on"],
        "best_by": request["best_by"],
        "address": request["address"],
        "warnings": warnings,
        "is_complete": not [one for one in warnings if one["code"] in STOPS],
    }


def _days(request: "Readable") -> None:
    for field in ("made_on", "best_by"):
        if request[field] is not None:
            dates.parsed(request[field], field)
    made_on, best_by = request["made_on"], request["best_by"]
    if made_on is not None and best_by is not None and best_by < made_on:
        raise Problem("best_by", "best_by_before_made", best_by, accepted=[made_on])


def _net(request: "Readable", european: bool) -> "Document | None":
    if request["label_kg"] is None:
        return None
    rule = "eu" if european else "us"
    return declarations.net_weight({"label_kg": request["label_kg"], "rule": rule, "face_m2": request["face_m2"]})


def _e_mark_refused(request: "Readable", european: bool) -> str | None:
    """Why the e mark may not stand there; None: it may."""
    if not european:
        return "e_mark_rule"
    label_kg = request["label_kg"]
    if label_kg is None or is_below(label_kg, E_MARK_KG[0], "kg") or is_above(label_kg, E_MARK_KG[1], "kg"):
        return "e_mark_weight"
    return None if request["net_passed"] else "e_mark_unchecked"


def _merged(parts: "Sequence[Readable]") -> "list[Document]":
    """The parts by weight, the heaviest first; what has the same list of ingredients and allergens once."""
    merged: "dict[str, Document]" = {}
    for number, part in enumerate(parts):
        listed = " ".join(part["ingredients"].split()).rstrip(" .;,")
        # Nothing is known of what has no list: it is one with its own kind alone.
        key = (listed or part["name"]).lower()
        if key not in merged:
            merged[key] = {"name": part["name"], "ingredients": listed, "contains": [], "is_known": True, "kg": 0.0,
                           "number": number}  # fmt: skip
        one = merged[key]
        one["kg"] += part["kg"]
        one["is_known"] = one["is_known"] and part["contains"] is not None
        one["contains"] = in_label_order(one["contains"] + (part["contains"] or []))
    return sorted(merged.values(), key=lambda one: (-one["kg"], one["number"]))


def _missing(request: "Readable", parts: "Sequence[Readable]", allergens: "list[str]") -> "list[Document]":
    found: "list[Document]" = []
    if not parts:
        found.append({"code": "nothing_known", "values": {}})
    for part in parts:
        if not part["ingredients"] or not part["is_known"]:
            found.append({"code": "label_unknown", "values": {"name": part["name"]}})
    if len(allergens) > MANY:
        found.append({"code": "many_allergens", "values": {"count": len(allergens)}})
    for field, code in (("label_kg", "net_missing"), ("address", "address_missing"), ("best_by", "day_missing")):
        if not request[field]:
            found.append({"code": code, "values": {}})
    return found


def _unnamed(european: bool, said: "Sequence[str]", may_contain: "Sequence[str]") -> "list[Document]":
    """Allergens of which the rule wants the kind. Gluten of no kind may be wheat, the one cereal the US rule names."""
    found: "list[Document]" = []
    for one in KINDLESS:
        among = list(said) if one in said else list(said) + list(may_contain)
        if one in among and (european or one != "gluten" or "wheat" not in among):
            found.append({"code": "kind_missing", "values": {"allergen": one}})
    species = [] if european else [one for one in OF_SPECIES if one in said]
    return found + [{"code": "species_missing", "values": {"allergen": one}} for one in species]


def _words(words: "Sequence[Readable]", part: "Readable", named: "Sequence[str]") -> "list[Readable]":
    said = part["contains"]
    return [one for one in words if one["allergen"] in said and one["allergen"] in named and one["words"]]


def _part(runs: "list[Document]", part: "Readable", words: "Sequence[Readable]") -> "list[str]":
    """Adds one part, its own parts in brackets; gives the allergens that its list does not name and that were added."""
    listed = part["ingredients"]
    name = part["name"]
    if not listed or listed.lower() == name.lower() or not ("," in listed or ";" in listed):
        opening, closing, listed = "", "", listed or name
    else:
        opening, closing = ("[", "]") if "(" in listed else ("(", ")")
        _add(runs, name + " " + opening, False)
    found = _strong(runs, listed, words)
    missed = [one for one in words if one["allergen"] not in found]
    for one in missed:
        _add(runs, ", " if closing else " (", False)
        _add(runs, one["words"][0], True)
        _add(runs, "" if closing else ")", False)
    _add(runs, closing, False)
    return [one["allergen"] for one in missed]


def _strong(runs: "list[Document]", text: str, words: "Sequence[Readable]") -> "list[str]":
    """Adds a text with its allergen words strong; gives the allergens that it names."""
    lower, found = text.lower(), []
    looked_for = [(word.lower(), one["allergen"]) for one in words for word in one["words"] if word]
    # The longest first: "almonds" before "almond".
    looked_for.sort(key=lambda one: (-len(one[0]), one[0], one[1]))
    at, plain = 0, 0
    while at < len(text):
        here = [one for one in looked_for if _is_word(lower, at, one[0])]
        if not here:
            at += 1
            continue
        word, allergen = here[0]
        _add(runs, text[plain:at], False)
        _add(runs, text[at : at + len(word)], True)
        found.append(allergen)
        at += len(word)
        plain = at
    _add(runs, text[plain:], False)
    return found


def _is_word(text: str, at: int, word: str) -> bool:
    """Whether a word begins there. It may go on ("milkfat", "almonds"); in the middle of another it is none."""
    return text[at : at + len(word)] == word and (at == 0 or not _is_letter(text[at - 1]))


def _is_letter(one: str) -> bool:
    return "a" <= one <= "z" or ord(one) >= 0xC0


def _add(runs: "list[Document]", text: str, is_strong: bool) -> None:
    if not text:
        return
    if runs and runs[-1]["is_strong"] == is_strong:
        runs[-1]["text"] += text
    else:
        runs.append({"text": text, "is_strong": is_strong})
