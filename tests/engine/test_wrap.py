"""Caramels that are wrapped, not dipped: cut, rest, wrap the same day, count."""

from tests.bench import Bench, planned_slab


def cut_sticks() -> Bench:
    bench = Bench(planned_slab() | {"finish": "wrapped"})
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    bench.does("touched", 4 * 3600, firm=True)
    for kind in ("freed", "flipped", "scored", "cut"):
        bench.does(kind, 120)
    return bench


def test_cut_centres_rest_before_they_are_wrapped():
    bench = cut_sticks()
    advice = bench.advice
    assert (advice["step"], advice["say"]["code"]) == ("wrap", "say.wrap_rest")
    assert [clock["name"] for clock in advice["clocks"]] == ["centres"]
    assert advice["number"]["value"] == advice["clocks"][0]["due_ms"]
    bench.waits(16 * 60)
    assert (bench.advice["say"]["code"], bench.advice["number"]) == ("say.wrap", None)


def test_wrapping_comes_before_the_count():
    bench = cut_sticks()
    bench.waits(16 * 60)
    assert bench.advice["caution"] == {"word": "NOTICE", "code": "caution.wrap_soon"}
    bench.taps()
    assert bench.advice["step"] == "count"
    assert bench.advice["clocks"] == []


def test_who_does_not_wrap_today_passes_it():
    bench = cut_sticks()
    skip = bench.advice["choices"][0]
    bench.does(skip["kind"], 5, **skip["body"])
    assert bench.advice["step"] == "count"
    assert bench.run["skipped"] == ["wrap"]


def test_plain_slab_knows_nothing_of_wrapping():
    bench = Bench()
    assert bench.run["wrap"] is False
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    bench.does("touched", 4 * 3600, firm=True)
    bench.does("cut", 600)
    assert bench.advice["step"] == "count"
