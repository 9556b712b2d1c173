"""Each hazard has its caution at the step where the hand moves, in words that name it; NOTICE is not of injury."""

import ast
from collections.abc import Callable
from typing import Any

import pytest

from amberbench.engine import catalogue
from tests import text_keys
from tests.bench import (
    SLAB_REQUEST,
    Bench,
    dipped_slab,
    jacket_slab,
    planned_bowl,
    planned_clusters,
    planned_slab,
    stand_up_test,
)
from tests.text_catalogue import texts

WARNING, CAUTION = "WARNING", "CAUTION"
# What only spoils the goods. Whatever carries an allergen, a foreign body or heat is WARNING or CAUTION by ANSI Z535.6,
# under which NOTICE is not related to injury (the definitions as quoted by a maker of safety labels).
OF_THE_GOODS = {"chocolate_dry", "infrared", "no_fridge", "sweats", "wrap_soon"}
HEATERS = ("Dryer", "heat gun", "water bath", "Dry hands")
FOREIGN = ("parchment", "glass", "glove", "hair", "new gloves")
HOUR_S = 3600


def slab(*kinds: str, lot: str | None = "A-117") -> Bench:
    """A slab that was poured and is firm, then what these events say."""
    bench = Bench(planned_slab() | {"lot": lot})
    bench.does("ready_checked", 60)
    bench.does("weighed", 120, kg=1.8, lot=lot)
    if lot is None:
        bench.does("step_skipped", 5, step="lot")
    bench.melts()
    bench.does("poured")
    for kind in ("touched", *kinds):
        bench.does(kind, 4 * HOUR_S, **{"touched": {"firm": True}, "counted": {"pieces": 190}}.get(kind, {}))
    return bench


def closing(lot: str | None) -> Bench:
    bench = slab("freed", "flipped", "scored", "cut", "counted", lot=lot)
    bench.does("weighed_out", 60, kg=0.1, what="rest")
    return bench


def first_burst() -> Bench:
    bench = Bench()
    bench.sets_up()
    return bench


def heating() -> Bench:
    bench = first_burst()
    bench.taps()
    return bench


def heated() -> Bench:
    bench = heating()
    bench.waits(bench.events[-1]["body"]["seconds_s"])
    return bench


def too_little() -> Bench:
    """So little caramel that the shortest burst is too strong: it is melted by eye."""
    request = SLAB_REQUEST | {"step_s": 30.0, "oven": {"rated_w": 1500, "turntable": True}}
    bench = Bench(planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)})
    bench.does("ready_checked", 60)
    bench.does("weighed", 120, kg=0.06, lot="A-117")
    return bench


def ready() -> Bench:
    bench = Bench()
    bench.sets_up()
    bench.melts()
    return bench


def soaking() -> Bench:
    bench = ready()
    bench.does("poured")
    return bench


def bowl(*readings: tuple[float, float], strip: bool = False) -> Bench:
    """A bowl of chocolate melted, seeded and read so; with a good strip if wanted."""
    bench = Bench(planned_bowl())
    bench.sets_up_bowl()
    bench.does("bowl_read", 60, bowl_c=46.0)
    bench.taps(30)
    for after_s, bowl_c in readings:
        bench.does("bowl_read", after_s, bowl_c=bowl_c)
    if strip:
        bench.taps(120)
    return bench


def thick() -> Bench:
    bench = bowl((300, 31.8), strip=True)
    bench.does("bowl_thickened", 60)
    return bench


def due() -> Bench:
    bench = bowl((300, 31.8), strip=True)
    bench.waits((bench.advice["number"]["value"] - bench.now_ms) / 1000 + 1)
    return bench


def melting_bowl() -> Bench:
    bench = Bench(planned_bowl())
    bench.sets_up_bowl()
    bench.taps()
    return bench


def leftover() -> Bench:
    bench = bowl((300, 31.8), strip=True)
    bench.does("bowl_used", 1800)
    bench.does("weighed_out", 60, kg=0.3, what="chocolate")
    return bench


def dipping() -> Bench:
    bench = Bench(dipped_slab())
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    bench.does("touched", 4 * HOUR_S, firm=True)
    for kind in ("freed", "flipped", "scored", "cut"):
        bench.does(kind, 120)
    bench.does("strip_tested", 20 * 60, good=True)
    return bench


def separating() -> Bench:
    bench = Bench(planned_clusters())
    bench.sets_up_clusters()
    bench.melts(until="fill")
    bench.taps(20)
    for tray in range(2):
        bench.does("tray_laid", 60, seen=tray)
    for tray in range(2):
        bench.does("second_laid", 100, seen=tray)
    bench.taps()
    bench.waits(2 * HOUR_S)
    for tray in range(2):
        bench.does("tray_freed", 60, free=True, seen=tray)
    return bench


def counting_clusters() -> Bench:
    bench = separating()
    bench.does("separated", 10)
    return bench


def laying_out() -> Bench:
    bench = Bench(planned_clusters())
    bench.does("ready_checked", 60)
    bench.does("allergens_checked", 60)
    while bench.advice["step"] == "under_lot":
        bench.does("step_skipped", 5, step="under_lot")
    return bench


def cube(*heights_m: float) -> Bench:
    bench = Bench(stand_up_test())
    bench.sets_up_cube()
    for wait_s, height_m in zip((30, HOUR_S, 23 * HOUR_S, 48 * HOUR_S), heights_m, strict=False):
        bench.does("stood", wait_s, height_m=height_m)
    return bench


def checked(plan: dict[str, Any]) -> Bench:
    bench = Bench(plan)
    bench.does("ready_checked", 60)
    return bench


@pytest.mark.parametrize(("hazard", "bench", "step", "word", "names"), [
    ("sugar burn, by eye", too_little, "read", WARNING, ("spit", "mitts")),
    ("steam of a jacket", lambda: Bench(jacket_slab()), "set_up", WARNING, ("steam", "vented", "never dry")),
    ("smoke, fire", heating, "burst", WARNING, ("smokes", "door shut", "unplug", "mitts")),
    ("smoke, fire, chocolate", melting_bowl, "melt_bowl", WARNING, ("smokes", "door shut", "unplug")),
    ("glass bowl, chips", first_burst, "burst", WARNING, ("no chips", "metal")),
    ("glass bowl, cold stone", heated, "turn", WARNING, ("Dry cloth", "cold stone")),
    ("glass bowl, cold shock", soaking, "cool", CAUTION, ("Hot water", "empty bowl")),
    ("foreign bodies after the flip", lambda: slab("freed"), "flip", CAUTION, ("no parchment",)),
    ("foreign bodies", lambda: slab("freed", "flipped", "scored", "cut"), "count", WARNING,
     FOREIGN),
    ("foreign bodies, clusters", counting_clusters, "count", WARNING, FOREIGN),
    ("blades", lambda: slab("freed", "flipped"), "score", CAUTION, ("Roller", "handles", "other hand")),
    ("blades, knife", slab, "loosen", CAUTION, ("away from your other hand",)),
    ("warming a cool bowl", lambda: bowl((300, 29.0)), "stir_seed", WARNING, HEATERS),
    ("warming a thick bowl", thick, "use", WARNING, HEATERS),
    ("warming a bowl in use", due, "rewarm", WARNING, HEATERS),
    ("electricity at the sink", soaking, "cool", CAUTION, ("Dry hands at plugs",)),
    ("slips and lifting", ready, "pour", WARNING, ("Floor clear and dry", "both hands")),
    ("stand-up cube", lambda: cube(), "stand", WARNING, ("Do not eat or sell",)),
    ("stand-up cube, waiting", lambda: cube(0.02), "stand", WARNING, ("Do not eat or sell",)),
    ("stand-up cube, closing", lambda: cube(0.02, 0.0199, 0.0198, 0.0195), "close", WARNING, ("Do not eat or sell",)),
    ("labels", lambda: closing("A-117"), "close", WARNING, ("lot", "date", "allergens", "leftovers")),
    ("labels without a lot", lambda: closing(None), "close", WARNING, ("cannot be traced", "date", "allergens")),
    ("milk", lambda: checked(planned_slab()), "weigh", WARNING, ("milk", "label")),
    ("allergens of chocolate", lambda: checked(planned_bowl()), "weigh", WARNING, ("milk", "label")),
    ("allergens in the bowl", lambda: Bench(planned_bowl()), "set_up", WARNING, ("nuts", "Wash")),
    ("allergens of fork and bowl", dipping, "dip", WARNING, ("Fork", "bowl")),
    ("allergens of leftovers", leftover, "leftover", WARNING, ("dipped in it",)),
    ("allergens of what goes under", laying_out, "under", WARNING, ("Wash hands",)),
    ("loose nuts", separating, "separate", WARNING, ("this lot only",)),
])  # fmt: skip
def test_a_hazard_has_its_caution_at_the_step_where_the_hand_moves(
    hazard: str, bench: Callable[[], Bench], step: str, word: str, names: tuple[str, ...]
):
    advice = bench().advice
    assert advice["step"] == step, hazard
    assert advice["caution"] is not None, hazard
    said = texts("en")[advice["caution"]["code"]]
    assert (advice["caution"]["word"], [name for name in names if name not in said]) == (word, []), said


def strings(node: ast.Dict) -> dict[str, list[str]]:
    """What the members of a record written down in the sources may be, where they are strings."""
    return {
        key.value: text_keys.constants(value)
        for key, value in zip(node.keys, node.values, strict=True)
        if isinstance(key, ast.Constant) and isinstance(key.value, str)
    }


def cautions_of(word: str) -> set[str]:
    """The cautions that the server's prompts say with a signal word."""
    found: set[str] = set()
    nodes = [node for _, tree in text_keys.trees() for node in ast.walk(tree)]
    for row in (strings(node) for node in nodes if isinstance(node, ast.Dict)):
        if word in row.get("word", []):
            found |= {code.removeprefix("caution.") for code in row["code"]}
    for call in (node for node in nodes if isinstance(node, ast.Call)):
        if getattr(call.func, "id", "") == "plain_page" and word in text_keys.constants(call.args[2]):
            found |= set(text_keys.constants(call.args[3]))
    return found


def test_notice_is_never_said_of_what_may_hurt_somebody():
    assert cautions_of("NOTICE") == OF_THE_GOODS
    assert {"set_up", "wash"} <= cautions_of("WARNING")


@pytest.mark.parametrize("key", ["measure.oven_water_test", "caution.superheated"])
def test_both_water_tests_warn_of_overheated_water(key: str):
    assert "erupt when moved or stirred" in texts("en")[key]


def test_who_passes_over_the_lot_is_told_what_that_costs():
    bench = Bench(planned_slab() | {"lot": None})
    bench.does("ready_checked", 60)
    bench.does("weighed", 120, kg=1.8, lot=None)
    (skip,) = bench.advice["choices"]
    assert "not traceable" in texts("en")[skip["code"]]


def test_trim_is_melted_again_by_common_practice_and_the_maker_s_label():
    said = texts("en")["more.leftovers"]
    assert "Common practice" in said
    assert "maker's label" in said


def phone_files_with(words: str) -> list[str]:
    return [path.name for path in text_keys.phone_paths() if words in path.read_text(encoding="utf-8")]


@pytest.mark.parametrize(("key", "names"), [
    ("help.shelf_life", ("Shelf life", "water activity", "listeria", "laboratory", "local code")),
    ("help.floor", ("spilt caramel", "plugs", "heavy")),
    ("help.warming", ("hair dryer", "heat gun", "dust", "water bath", "steam")),
])  # fmt: skip
def test_help_says_once_what_belongs_to_no_single_step(key: str, names: tuple[str, ...]):
    assert phone_files_with(f'"{key}"') == ["HelpScreen.tsx"]
    assert [name for name in names if name not in texts("en")[key]] == []


@pytest.mark.parametrize("caution", ["caution.set_up", "caution.superheated"])
def test_guides_of_density_and_water_carry_their_caution(caution: str):
    assert "Guides.tsx" in phone_files_with(f'caution="{caution}"')
