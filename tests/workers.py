"""A careful person at a simulated bench of clusters: does what the prompt says, at its own pace, and nothing else."""

from typing import Any

from tests.cluster_simulation import MOST_ACTIONS, LayingBench


class SimulatedWorker:
    """Follows the prompts of one bench to the emptied funnel."""

    def __init__(self, bench: LayingBench) -> None:
        self.bench, self.rng = bench, bench.rng
        self.read_fills, self.again = 0, False

    def works(self) -> LayingBench:
        for _ in range(MOST_ACTIONS):
            advice = self.bench.advice
            step = advice["step"]
            self.bench.steps.append((self.bench.now_ms, step))
            if "melt" in self.bench.run["done"]:
                return self.bench
            getattr(self, "_" + step, self._taps)(advice)
        raise AssertionError(f"never done: {[step for _, step in self.bench.steps[-12:]]}")

    def _presses(self, button: dict[str, Any]) -> None:
        self.bench.tells(button["kind"], **button["body"])

    def _types(self, entry: dict[str, Any], value: float) -> None:
        self.bench.tells(entry["kind"], **entry["body"], **{entry["field"]: value})

    def _taps(self, advice: dict[str, Any]) -> None:
        self.bench.passes(self.rng.uniform(2.0, 6.0))
        self._presses(advice["action"] or advice["choices"][0])

    def _waits_for(self, due_ms: float) -> None:
        """Something will ring: it does, and is heeded, unless this worker ignores prompts."""
        self.bench.passes(max(1.0, min(60.0, (due_ms - self.bench.now_ms) / 1000.0)))
        if self.bench.now_ms >= due_ms:
            self._heeds()

    def _heeds(self) -> None:
        self.bench.passes(self.rng.uniform(1.0, 4.0))
        if self.bench.ignores and self.rng.random() < 0.3:
            self._lays_on(self.rng.uniform(120.0, 480.0))

    # The bowl --------------------------------------------------------------------------------------------------------

    def _burst(self, advice: dict[str, Any]) -> None:
        self._taps(advice)
        self.bench.bowl.burst(advice["action"]["body"]["seconds_s"])

    def _turn(self, advice: dict[str, Any]) -> None:
        self._stirred(advice, self.bench.bowl.turn())

    def _stir(self, advice: dict[str, Any]) -> None:
        self._stirred(advice, self.bench.bowl.stir())

    def _stirred(self, advice: dict[str, Any], free: bool) -> None:
        buttons = [advice["action"]] + advice["choices"]
        self._presses(next((one for one in buttons if one["body"]["free"] == free), advice["action"]))

    def _read(self, advice: dict[str, Any]) -> None:
        if advice["say"]["code"] == "say.stir_read":
            self.bench.passes(self.rng.uniform(10.0, 20.0))
        self._types(advice["entry"], self.bench.bowl.read())

    def _rest(self, advice: dict[str, Any]) -> None:
        if advice["action"].get("kind") == "rested":
            self._taps(advice)
        else:
            self._waits_for(advice["number"]["value"])

    # The funnel ------------------------------------------------------------------------------------------------------

    def _fill(self, advice: dict[str, Any]) -> None:
        """Lifts the bowl, pours, scrapes it: the page is looked at again once the funnel is full."""
        bench = self.bench
        before = advice["action"]
        bench.passes(self.rng.uniform(15.0, 30.0))
        button = bench.advice["action"]
        if button is None or button.get("kind") != "filled":
            button = before
        # To three quarters by eye, or what there is.
        full_kg = max(button["body"]["kg"], bench.reply["fill_kg"])
        wanted_kg = full_kg * (1.0 + self.rng.gauss(0.0, 0.03)) - bench.funnel.kg
        kg = max(0.0, min(wanted_kg, bench.bowl.mass_kg - bench.stays_kg))
        if kg > 0.0:
            # An empty funnel takes up to a kelvin out of what is poured in.
            bench.funnel.gets(kg, bench.bowl.bulk_c - (self.rng.uniform(0.0, 1.0) if bench.funnel.kg < 0.01 else 0.0))
            bench.bowl.holds(bench.bowl.mass_kg - kg)
        self._presses(button)
        self.read_fills = 0

    def _refill(self, advice: dict[str, Any]) -> None:
        kind = advice["action"]["kind"]
        if kind == "filled":
            self._fill(advice)
        elif kind == "fill_ended":
            self._reheat(advice)
        else:
            # The bowl is empty: what is in the funnel is laid.
            laid = 0
            while advice["say"]["code"] == "say.bowl_empty" and self.bench.lays_one(self.again):
                laid += 1
            self.bench.ran_out = True
            own = [one for one in advice["choices"] if one["kind"] == ("second_laid" if self.again else "tray_laid")]
            self._taps({"action": own[0]} if laid and own else advice)

    def _reheat(self, advice: dict[str, Any]) -> None:
        bench = self.bench
        bench.passes(self.rng.uniform(8.0, 15.0))
        if bench.funnel.kg > 0.0:
            bench.bowl.gets(bench.funnel.kg, bench.funnel.mean_c)
        bench.funnel.kg = 0.0
        self._presses(advice["action"])

    def _empty(self, advice: dict[str, Any]) -> None:
        self._reheat(advice)

    # The trays -------------------------------------------------------------------------------------------------------

    def _lay(self, advice: dict[str, Any]) -> None:
        self._works_on(advice, advice["number"]["value"])

    def _second(self, advice: dict[str, Any]) -> None:
        self._works_on(advice, advice["number"]["value"])

    def _works_on(self, advice: dict[str, Any], due_ms: float) -> None:
        """Lays until the tray is done, the funnel's clock rings or nothing runs out of it any more."""
        bench, self.again = self.bench, advice["step"] == "second"
        again = self.again
        while not bench.tray_done(again):
            if bench.now_ms >= due_ms:
                return self._heeds()
            if bench.reads and self.read_fills == 0 and self.rng.random() < 0.02:
                return self._reads_the_funnel(advice)
            if not bench.lays_one(again):
                return self._finds_it_empty(advice, due_ms)
        bench.passes(self.rng.uniform(2.0, 6.0))
        self._presses(advice["action"])

    def _finds_it_empty(self, advice: dict[str, Any], due_ms: float) -> None:
        low = [one for one in advice["choices"] if one["code"] == "button.funnel_empty"]
        if low:
            self._reheat({"action": low[0]})
        else:
            self._waits_for(due_ms)

    def _reads_the_funnel(self, advice: dict[str, Any]) -> None:
        self.read_fills += 1
        self._read_fill({"entry": next(one["entry"] for one in advice["choices"] if one["code"] == "button.read_fill")})

    def _read_fill(self, advice: dict[str, Any]) -> None:
        self.bench.passes(self.rng.uniform(5.0, 12.0))
        self._types(advice["entry"], round(2.0 * (self.bench.funnel.mean_c + self.rng.gauss(0.0, 2.0))) / 2.0)

    def _lays_on(self, seconds_s: float) -> None:
        """Ignores what rings: goes on laying where there is something to lay."""
        until_ms = self.bench.now_ms + 1000.0 * seconds_s
        while self.bench.now_ms < until_ms and self.bench.lays_one(self.again):
            pass
        self.bench.passes(max(0.0, (until_ms - self.bench.now_ms) / 1000.0))

    def _wait(self, advice: dict[str, Any]) -> None:
        self._waits_for(advice["number"]["value"])

    def _tacky(self, advice: dict[str, Any]) -> None:
        bench = self.bench
        bench.passes(self.rng.uniform(3.0, 8.0))
        tray = bench.trays[0]
        tacky = (bench.now_ms - tray[0].at_ms) / 1000.0 >= bench.window_s(tray[0])[0]
        buttons = [advice["action"]] + advice["choices"]
        self._presses(next(one for one in buttons if one["body"].get("tacky") == tacky))
