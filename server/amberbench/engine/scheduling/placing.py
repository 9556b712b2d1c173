"""Places the tasks of some days one group after the other, each as early as it can go; the order decides."""

from .days import PEOPLE
from .free_time import lowest, runs, span, without

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from .days import Task, Work


class NoPlace(Exception):
    """A task fits nowhere before the end of the days."""


class Take:
    """One unit of a thing (or one person) in use by a task from `start`: `length` minutes, or until a task is over."""

    def __init__(self, number: int, start: int, length: int, until: int | None) -> None:
        self.number, self.start, self.length, self.until = number, start, length, until


class Placing:
    """The tasks placed so far: `starts` by number, who and what is in use when, and what is still free."""

    def __init__(self, work: "Work", order: "Sequence[int]") -> None:
        self.work = work
        self.free: "dict[str, list[int]]" = {name: list(work.free[name]) for name in work.free}
        self.uses: "dict[str, list[list[Take]]]" = {name: [[] for _ in work.free[name]] for name in work.free}
        self.starts: list[int] = [-1] * len(work.tasks)
        self.conflicts: list[tuple[int, str]] = []
        # Minute at which a wash before a group begins, by the group; hands on the bench: (from, to, group).
        self.washes: "dict[int, int]" = {}
        self.bench: list[tuple[int, int, int]] = []
        self._asked: "dict[int, bool]" = {}
        # Groups that look for their place: what waits for one of them cannot be placed before it.
        self._looking: list[int] = []
        self._place_fixed()
        for index in order:
            self._place(index)

    def is_placed(self, number: int) -> bool:
        return self.starts[number] >= 0 or self.work.tasks[number].begun

    def end(self, number: int) -> int:
        """The minute at which a placed task is over."""
        return self.starts[number] + self.work.tasks[number].length

    def _place_fixed(self) -> None:
        """What has begun, then what somebody pinned, stands where it is."""
        fixed = [task for task in self.work.tasks if task.fixed is not None]
        for task in sorted(fixed, key=lambda one: (not one.begun, one.fixed, one.number)):
            start: int = task.fixed  # type: ignore[assignment]
            missing = "" if task.begun else self._missing(task, start)
            if missing:
                self.conflicts.append((task.number, missing))
            self._take(task, start)

    def _missing(self, task: "Task", start: int) -> str:
        """What a pinned task wants that is not free then; "" for nothing."""
        for name, length, _until in task.wanted:
            if not self._free_starts(task, name, length, start) & 1:
                return name
        return ""

    def _place(self, index: int) -> None:
        """Places a group, and before it those that it waits for."""
        if index in self._asked:
            return
        self._asked[index] = True
        group = self.work.groups[index]
        for number in group:
            for before, _least, _most in self.work.tasks[number].after:
                self._place(self.work.group_of[before])
        self._looking.append(index)
        self._place_together(index, [number for number in group if not self.is_placed(number)])
        self._looking.pop()
        for number in group:
            if self.work.tasks[number].fixed is not None and not self.work.tasks[number].begun:
                self._check_waits(number)

    def _check_waits(self, number: int) -> None:
        for before, least, most in self.work.tasks[number].after:
            waited = self.starts[number] - self.end(before)
            if waited < least or (most is not None and waited > most):
                self.conflicts.append((number, self.work.tasks[before].id))

    def _place_together(self, index: int, numbers: list[int]) -> None:
        """Places the tasks of a group; one that could not follow another in time moves that one later."""
        not_before = {number: 0 for number in numbers}
        while True:
            late = self._try_together(numbers, not_before) or self._wash_first(index, numbers, not_before)
            if late is None:
                return
            self._give_back(numbers)
            number, start = late
            not_before[number] = start

    def _try_together(self, numbers: list[int], not_before: "dict[int, int]") -> tuple[int, int] | None:
        """Gives each task its place; else which one has to come later, and when."""
        for number in numbers:
            task = self.work.tasks[number]
            start = self._first_place(task, max(not_before[number], self._earliest(task)))
            for before, _least, most in task.after:
                if most is not None and before in not_before and start > self.end(before) + most:
                    return before, self.starts[before] + start - self.end(before) - most
            self._take(task, start)
        return None

    def _earliest(self, task: "Task") -> int:
        found = max(task.earliest, self.work.now)
        for before, least, _most in task.after:
            if self.is_placed(before):
                found = max(found, self.end(before) + least)
        return found

    def _first_place(self, task: "Task", not_before: int) -> int:
        """The first minute at which all is free that a task takes. Raises NoPlace."""
        while True:
            fits = span(0, self.work.horizon - not_before)
            for name, length, _until in task.wanted:
                fits &= self._free_starts(task, name, length, not_before)
            start = lowest(fits)
            if start >= 0:
                return not_before + start
            if not self._place_what_frees(task):
                raise NoPlace(task.number)

    def _free_starts(self, task: "Task", name: str, length: int, not_before: int) -> int:
        """The minutes after one from which a unit of a thing, or as many people as it takes, is free so long."""
        if name == PEOPLE and task.people > 1:
            return _at_least(task.people, [runs(unit >> not_before, length) for unit in self.free[name]])
        found = 0
        for unit in self.free[name]:
            found |= runs(unit >> not_before, length)
        return found

    def _place_what_frees(self, task: "Task") -> bool:
        """Places a task that ends the keeping of a thing this one wants; False where there is none."""
        for name, _length, _until in task.wanted:
            for unit in self.uses[name]:
                for take in unit:
                    if take.until is not None and not self.is_placed(take.until):
                        index = self.work.group_of[take.until]
                        waits = [one for one in self._looking if one == index or self.work.waits_for(index, one)]
                        if index not in self._asked and not waits:
                            self._place(index)
                            return True
        return False

    def _take(self, task: "Task", start: int) -> None:
        self.starts[task.number] = start
        for name, length, until in task.wanted:
            for unit in self._units(task, name, span(start, length)):
                take = Take(task.number, start, length, until)
                self.uses[name][unit].append(take)
                self.free[name][unit] = without(self.free[name][unit], span(start, self.length_of(take)))
        self._free_kept(task.number)

    def _units(self, task: "Task", name: str, bits: int) -> list[int]:
        """Which units a task takes: free ones first, for what is fixed may find none."""
        units = self.free[name]
        taken = sorted(range(len(units)), key=lambda unit: (units[unit] & bits != bits, unit))
        return taken[: task.people if name == PEOPLE else 1]

    def _free_kept(self, number: int) -> None:
        """Reckons again what was kept until this task is over, now that it is known when."""
        for name in self.work.kept_until.get(number, ()):
            for unit in range(len(self.uses[name])):
                if [take for take in self.uses[name][unit] if take.until == number]:
                    self._reckon_free(name, unit)

    def _reckon_free(self, name: str, unit: int) -> None:
        free = self.work.free[name][unit]
        for take in self.uses[name][unit]:
            free = without(free, span(take.start, self.length_of(take)))
        self.free[name][unit] = free

    def length_of(self, take: Take) -> int:
        """How many minutes a unit is in use; until the end of the days where nothing ends it yet."""
        if take.until is None:
            return take.length
        until = self.end(take.until) if self.is_placed(take.until) else self.work.horizon
        return max(until - take.start, take.length)

    def _give_back(self, numbers: list[int]) -> None:
        placed = [number for number in numbers if self.is_placed(number)]
        for number in placed:
            self.starts[number] = -1
        for name in self.uses:
            for unit, takes in enumerate(self.uses[name]):
                kept = [take for take in takes if take.number not in placed]
                if len(kept) < len(takes) or [take for take in kept if take.until in placed]:
                    self.uses[name][unit] = kept
                    self._reckon_free(name, unit)

    def _wash_first(self, index: int, numbers: list[int], not_before: "dict[int, int]") -> tuple[int, int] | None:
        """Notes hands on the bench and a wash before them; else which task has to come later, and when."""
        contains = self.work.contains_of(index)
        touched = self.work.hands_on(index)
        if contains is None or not touched:
            return None
        start = min(self.starts[number] for number in touched)
        end = max(self.starts[number] + self.work.tasks[number].hands for number in touched)
        later = self._clear_of(index, start, end)
        if later is not None and numbers:
            first = min(numbers, key=lambda number: (self.starts[number], number))
            return first, max(self.starts[first] + later - start, not_before[first] + 1)
        self.bench.append((start, end, index))
        return None

    def _clear_of(self, index: int, start: int, end: int) -> int | None:
        """From when on a group may have the bench, where not from `start`; takes people for the wash before it."""
        wash_from = start - self.work.wash
        wanted = False
        for from_, to, other in self.bench:
            left = self.work.leaves(other, index)
            spoils = self.work.leaves(index, other)
            if from_ < end and start < to:
                if left or spoils:
                    return to + self.work.wash if left else to
            elif to <= start:
                # What lay there may have been washed off before another group that came between.
                washed = [at for group, at in self.washes.items() if to <= at < start]
                if left and not washed:
                    wanted = True
                    if to > wash_from:
                        return to + self.work.wash
            elif spoils and not end <= self.washes.get(other, -1):
                return to + self.work.wash if left else to
        if wanted:
            return self._wash(index, wash_from, start)
        return None

    def _wash(self, index: int, at: int, start: int) -> int | None:
        """Takes one person for a wash that ends when a group begins; else from when on that group may begin."""
        length = self.work.wash
        possible = 0
        for unit in self.free[PEOPLE]:
            possible |= runs(unit, length)
        if at < 0 or not possible >> at & 1:
            later = lowest(possible >> max(at + 1, 0))
            if later < 0:
                raise NoPlace(self.work.groups[index][0])
            return max(at + 1, 0) + later + length
        bits = span(at, length)
        unit = next(one for one in range(len(self.free[PEOPLE])) if self.free[PEOPLE][one] & bits == bits)
        self.uses[PEOPLE][unit].append(Take(self.work.groups[index][0], at, length, None))
        self._reckon_free(PEOPLE, unit)
        self.washes[index] = at
        return None


def _at_least(count: int, found: list[int]) -> int:
    """Bits that are set in at least `count` of several."""
    enough = [0] * (count + 1)
    enough[0] = -1
    for bits in found:
        for n in range(count, 0, -1):
            enough[n] |= enough[n - 1] & bits
    return enough[count]
