"""Every text that server, engine and phone name is in the catalogue, and no text is left over."""

import ast
import re
from http import HTTPStatus

import pytest

from amberbench.engine import catalogue, fields
from amberbench.engine.batch.advice import PAGES
from amberbench.engine.core import field_kinds
from amberbench.engine.core.sources import SOURCES
from amberbench.engine.steps.common.fields import THROWN_AWAY
from amberbench.engine.steps.temper import plan as temper
from amberbench.engine.steps.wash.fields import UNWASHED
from amberbench.text import languages
from tests import strategies_deposit, text_keys
from tests.bench import dipped_slab, jacket_slab, planned_bowl, planned_slab, with_dip
from tests.gathered import of_kinds
from tests.text_catalogue import forms, placeholders, texts

ENGLISH = texts("en")
ROOMS = {key.split(".")[0] for key in ENGLISH}
# "cool.plan", "shop.room_c": functions and paths have a point in them too.
NO_TEXTS = (
    set(fields.FUNCTIONS) | text_keys.options_rooms() | {"event.kind", "shop.room_c", "shop.humidity", "shop.language"}
)
SKIPS_ARE_BUTTONS = {f"button.skip_{step}" for step in text_keys.called_with("skip")}
NOT_UNDONE = {
    "pinned",
    "series_ended",
    "batch_opened",
    "cooling_refitted",
    "wash_told",
    "undone",
    "redone",
    "renamed",
    "noted",
    "photographed",
    "taken_over",
    "left_out",
}
STEPS = {step for pages in PAGES.values() for step in pages}
MELT_STEPS = {"burst", "turn", "stir", "read", "rest", "pour", "touch", "block_in", "soften", "look", "top_up"}
BOWL_STEPS = {"seed", "stir_seed", "rewarm", "mark", "salt", "mark_salt", "stand_look", "wash"}


def melt_reasons():
    """The second of each answer of the melt's decision is the reason's code."""
    for path, tree in text_keys.trees():
        if path.name == "next_action.py":
            for node in ast.walk(tree):
                if isinstance(node, ast.Return) and isinstance(node.value, ast.Tuple) and len(node.value.elts) == 4:
                    yield from text_keys.constants(node.value.elts[1])
                elif isinstance(node, ast.Call) and getattr(node.func, "id", "") == "_without_oven":
                    yield from text_keys.constants(node.args[1])


def problem_codes():
    """What a Problem, or a check of the server's schemas or of the phone's own typing, may be called."""
    yield from text_keys.called_with("Problem", 1)
    yield from text_keys.called_with("refuse")
    yield from text_keys.called_with("cell_problem", 1)
    yield from text_keys.called_with("fault")
    yield from text_keys.faults_of_the_phone()


def named():
    """What the engine and the phone name, by how they name it."""
    yield from (key for key in text_keys.named_literally() if key.split(".")[0] in ROOMS and key not in NO_TEXTS)
    yield from SKIPS_ARE_BUTTONS
    yield from (f"button.{code}" for code in text_keys.called_with("button", files="prompts"))
    yield from (f"button.{code}" for code in text_keys.called_with("plain_page"))
    yield from (f"caution.{code}" for code in text_keys.called_with("plain_page", 3))
    yield from (f"caution.{code}" for code in text_keys.called_with("_by_map", 2))
    for files in ("prompts", "clocks"):
        yield from (f"clock.{code}" for code in text_keys.called_with("clock", files=files))
    yield from (f"problem.{code}" for code in problem_codes())
    yield from (f"reason.{code}" for code in melt_reasons())
    yield from (f"event.{kind}" for kind in set(fields.EVENTS) - {"cooling_refitted", "undone", "redone"})
    yield from (f"undo.{kind}" for kind in set(fields.EVENTS) - NOT_UNDONE)
    yield from (f"step.{step}" for step in STEPS | MELT_STEPS | BOWL_STEPS)
    yield from (f"say.{step}" for step in STEPS - {"melt"})
    yield from (f"why.{reason}" for reason in (*THROWN_AWAY, *UNWASHED))
    yield from (f"signal.{word}" for word in ("danger", "warning", "caution", "notice"))
    yield from (f"basis.{basis}{long}" for basis in field_kinds.BASES for long in ("", "_long"))
    yield from (f"language.{one}" for one in languages())


def may_be_said():
    """What is said where there is a sentence for it, and left out where there is none."""
    yield from named()
    yield from (f"server.status_{one.value}" for one in HTTPStatus if one.value >= 400)
    for kind, body in fields.EVENTS.items():
        flags = [name for name, field in body.items() if field["kind"] == "boolean"]
        yield from (f"event.{kind}_{no}{name}" for name in flags for no in ("", "not_"))
    # A field without words for its path has those of its last step.
    yield from (f"field.{row['field'].rsplit('.', 1)[-1]}" for row in basis_rows())


OWN_CURVE = dict(zip(temper.LINES, (41, 48, 26.5, 27.5, 29.5, 30.5), strict=True))
ALL_ROUND = {"bottom": 0.001, "side": 0.001, "top": 0.001}


def basis_rows():
    """What the plan of a slab rests on, with the figures that only a part of it knows."""
    reply = planned_slab()["reply"]
    for name, request in (("melt.plan", reply["melt_request"]), ("cool.plan", reply["cool_request"])):
        yield from catalogue.call(name, request)["inputs"]
    yield from reply["inputs"]
    yield from jacket_slab()["reply"]["inputs"]
    for request in (strategies_deposit.ON_NUTS, strategies_deposit.ON_A_BED):
        yield from catalogue.call("cluster.plan", request)["inputs"]
    yield from planned_bowl()["reply"]["inputs"]
    yield from (row for plans in of_kinds("PLANS") for planned in plans for row in planned()["reply"]["inputs"])
    yield from dipped_slab()["reply"]["inputs"]
    own = planned_bowl()["reply"]["bowl_request"] | {"targets": OWN_CURVE, "seed_c": 20}
    yield from catalogue.call("chocolate.plan", own)["inputs"]
    yield from with_dip(prebottom_m=0.0005, pickup=0.4, top_mark=True, thickness_m=ALL_ROUND)["reply"]["inputs"]


def test_every_text_that_is_named_is_in_the_catalogue():
    wanted = sorted(set(named()))
    assert len(wanted) > 300
    assert [key for key in wanted if key not in ENGLISH] == []


def test_no_text_is_left_over():
    said = set(may_be_said())
    assert [key for key in ENGLISH if key not in said and not text_keys.is_said(key)] == []


def test_a_text_nobody_names_would_be_found():
    assert not text_keys.is_said("button.never_drawn")
    assert not text_keys.is_said("desk.no_such_text")
    # Words that stand somewhere, though not where such a text is made.
    assert "twice" in text_keys.literals()
    assert not text_keys.is_said("problem.twice")
    assert not text_keys.is_said("settings.awake_caramel")
    assert not text_keys.is_said("desk.by_marble")
    assert "event.stirred_not_free" in set(may_be_said())
    assert text_keys.is_said("desk.by_pieces")


def test_places_where_texts_are_looked_for_are_there():
    for supplier in sorted({one for several in text_keys.SUPPLIERS.values() for one in several}):
        assert text_keys.paths_of(supplier), supplier
    assert len(set(melt_reasons())) > 3
    with pytest.raises(AssertionError, match="nowhere"):
        text_keys.called_with("button", files="no_such_file")
    with pytest.raises(AssertionError, match="no sources at"):
        text_keys.paths_of("engine/no_such_room")


def test_every_figure_a_plan_rests_on_has_a_name_a_source_and_a_way_to_measure_it():
    missing = set()
    for row in basis_rows():
        path = re.sub(r"\[\d+\]", "", row["field"])
        if f"field.{path}" not in ENGLISH and f"field.{path.split('.')[-1]}" not in ENGLISH:
            missing.add(f"field.{path}")
        if row["source"] in SOURCES and f"source.{row['source']}" not in ENGLISH:
            missing.add(f"source.{row['source']}")
        if row["measure_by"] and f"measure.{row['measure_by']}" not in ENGLISH:
            missing.add(f"measure.{row['measure_by']}")
    assert sorted(missing) == []


@pytest.mark.parametrize("key", sorted(key for key in ENGLISH if key.startswith("problem.")))
def test_a_problem_is_filled_from_what_a_problem_carries(key):
    assert set(re.findall(r"\{(\w+)\}", ENGLISH[key])) <= {"field", "given", "low", "high", "unit", "accepted"}


# t("screen.likely_range", { range: … }): a key that stands whole in the phone's sources, and the names it is given.
GIVEN = re.compile(r'\bt\("([a-z]+\.[a-z0-9_.]+)", \{([^{}]*(?:\([^()]*(?:\([^()]*\)[^()]*)*\)[^{}]*)*)\}\)')


def values_given() -> dict[str, set[str]]:
    """Key → the names of the values the phone hands to its sentence, where both stand in one call."""
    given: dict[str, set[str]] = {}
    for source in text_keys.phone_files():
        for key, inside in GIVEN.findall(source):
            flat = inside
            while "(" in flat:
                flat = re.sub(r"\([^()]*\)", "", flat)
            names = (part.split(":")[0].strip() for part in flat.split(","))
            given.setdefault(key, set()).update(name for name in names if re.fullmatch(r"[a-z]\w*", name))
    return given


def test_a_sentence_says_every_value_it_is_given():
    given = values_given()
    assert len(given) > 40
    unsaid = {key: names - placeholders(" ".join(forms(ENGLISH[key]))) for key, names in given.items()}
    # "n" may only choose the form.
    chosen = {key: names - {"n"} if isinstance(ENGLISH[key], dict) else names for key, names in unsaid.items()}
    assert {key: names for key, names in chosen.items() if names} == {}
