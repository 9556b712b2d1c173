"""Windows in round figures: 160 to 170 °F for a slab, 160 to 180 °F for clusters, and a limit that may be met."""

import json

import pytest

from amberbench.config import demo_shop_file
from amberbench.engine import catalogue
from amberbench.engine.core import check
from amberbench.engine.core.problems import Problem
from amberbench.services import initial_shop_events
from amberbench.text.figures import METRIC, figure
from tests.strategies_deposit import ON_NUTS, OVEN

IMPERIAL = {"mass": "lb", "length": "in", "temperature": "°F", "power": "W"}


def fahrenheit(degrees):
    return catalogue.call("units.convert", {"value": degrees, "from": "°F", "to": "°C"})["value"]


def folded(**rows):
    """The shop as the fold of edits: values by field for each doc, "__" for "/"."""
    events = [
        {"id": f"{doc}-{field}", "v": 1, "shop_id": "s", "device_id": "d", "seq": seq, "offset_ms": 0, "at_ms": seq,
         "batch_id": None, "kind": "shop_set", "body": {"doc": doc, "field": field, "value": value, "basis": "typed"}}
        for seq, (doc, field, value) in enumerate(
            (doc.replace("__", "/"), field, value) for doc, row in rows.items() for field, value in row.items()
        )
    ]  # fmt: skip
    return catalogue.call("shop.fold", {"events": events})["shop"]


def lines(caramel):
    slab, deposit = (caramel["windows"][name] for name in ("slab", "deposit"))
    return [slab["low_c"], slab["high_c"], deposit["low_c"], deposit["high_c"], caramel["warn_c"], caramel["stop_c"]]


@pytest.mark.parametrize(
    ("unit", "shown"),
    [("°F", "160 170 160 180 180 185"), ("°C", "71 77 71 82 82 85")],
)
def test_the_usual_windows_are_round_figures_in_the_shops_own_unit(unit, shown):
    units = dict(METRIC, temperature=unit)
    shop = folded(shop={"units.temperature": unit}, caramels__new={"name": "New"})
    found = lines(shop["caramels"][0])
    assert [figure("window_c", one, units=units) for one in found] == [f"{one}\u202f{unit}" for one in shown.split()]
    # Round as typed, not only as shown.
    typed = [one if unit == "°C" else one * 1.8 + 32 for one in found]
    assert typed == pytest.approx([float(one) for one in shown.split()], abs=1e-9)


@pytest.mark.parametrize(("unit", "shown"), [("°F", "160 170 160 180 180 185"), ("°C", "71 77 71 82 82 85")])
def test_the_demo_shop_has_round_windows_in_either_unit(unit, shown):
    seed = json.loads(demo_shop_file().read_text(encoding="utf-8"))
    rows = {}
    for edit in initial_shop_events.of_seed(seed):
        rows.setdefault(edit["doc"].replace("/", "__"), {})[edit["field"]] = edit["value"]
    shop = folded(**rows | {"shop": rows["shop"] | {"units.temperature": unit}})
    assert len(shop["caramels"]) == 2
    for caramel in shop["caramels"]:
        found = [one * 1.8 + 32 if unit == "°F" else one for one in lines(caramel)]
        assert found == pytest.approx([float(one) for one in shown.split()], abs=1e-9)


def test_an_older_shop_keeps_the_windows_it_has_set():
    said = {"windows.slab.low_c": 71, "windows.slab.high_c": 77, "windows.deposit.low_c": 65, "warn_c": 82}
    shop = folded(shop={"units.temperature": "°F"}, caramels__old=said)
    caramel = shop["caramels"][0]
    assert [*lines(caramel)[:3], caramel["warn_c"]] == [71, 77, 65, 82]


def test_clusters_of_a_caramel_that_darkens_early_are_laid_up_to_its_darkening_line():
    shop = folded(caramels__soft={"windows.slab.high_c": 74, "warn_c": 80, "stop_c": 83})
    assert shop["caramels"][0]["windows"]["deposit"] == {"low_c": 71.0, "high_c": 80}


def test_a_window_for_deposits_that_stands_upside_down_is_refused_before_it_is_kept():
    values = {"windows.deposit.low_c": 82.0, "windows.deposit.high_c": 71.0}
    with pytest.raises(Problem) as caught:
        catalogue.call("shop.check", {"doc": "caramels/a", "values": values})
    assert (caught.value.field, caught.value.code) == ("windows.deposit.low_c", "window_upside_down")


def test_clusters_are_planned_up_to_180_fahrenheit_beside_a_darkening_line_of_82_celsius():
    window = {"window_low_c": fahrenheit(160), "window_high_c": fahrenheit(180), "warn_c": 82.0}
    reply = catalogue.call("cluster.plan", ON_NUTS | window)
    assert reply["melt"]["bursts"]
    with pytest.raises(Problem, match="line_above_line"):
        catalogue.call("cluster.plan", ON_NUTS | window | {"window_high_c": fahrenheit(181)})


def test_a_melt_and_a_caramel_may_meet_every_heat_line_in_either_unit():
    at_lines = {"window_low_c": 71.0, "window_high_c": fahrenheit(180), "warn_c": 82.0, "stop_c": 82.0}
    assert catalogue.call("melt.plan", at_lines | {"mass_kg": 1.0, "oven": OVEN})["bursts"]
    values = {"windows.slab.high_c": fahrenheit(180), "warn_c": 82.0, "stop_c": fahrenheit(180), "limit_c": 82.0}
    assert catalogue.call("shop.check", {"doc": "caramels/a", "values": values})["values"] == values


@pytest.mark.parametrize("unit", ["°C", "kg", "m", "W", "s", "m³", ""])
def test_a_value_converted_there_and_back_is_not_beyond_its_own_limit(unit):
    for limit in (0.05, 10.0, 82.0, -20.0, 1e5):
        for off in (1e-12, -1e-12):
            assert not check.is_above(limit * (1 + off), limit, unit)
            assert not check.is_below(limit * (1 + off), limit, unit)
        assert check.is_above(limit + 0.3, limit, unit)
        assert check.is_below(limit - 0.3, limit, unit)


@pytest.mark.parametrize("units", [METRIC, IMPERIAL])
def test_no_whole_degree_is_refused_where_the_limit_reads_the_same(units):
    offset, factor = (32.0, 1.8) if units["temperature"] == "°F" else (0.0, 1.0)
    for tenths in range(300, 1200):
        limit_c = tenths / 10
        for degree in range(int(limit_c * factor + offset), int(limit_c * factor + offset) + 2):
            value_c = (degree - offset) / factor
            if check.is_above(value_c, limit_c, "°C") and units is IMPERIAL:
                assert figure("warn_c", value_c, units=units) != figure("warn_c", limit_c, units=units)
            allowed_c = (round(float(figure("warn_c", limit_c, units=units, toward=-1)[:-3])) - offset) / factor
            assert not check.is_above(allowed_c, limit_c, "°C")
