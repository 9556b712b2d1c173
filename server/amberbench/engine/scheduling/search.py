"""Looks for a better order of the groups: moves one before what holds it up, and does not move it back for a while."""

from .placing import NoPlace, Placing

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from .days import Work

    Value = tuple[int, ...]

# A move is not undone for so many steps, and some more by chance; after so many without gain it begins anew, from the
# best so far with some of its moves taken at random.
TENURE, TENURE_MORE = 8, 5
PATIENCE = 60
SHAKEN, SHAKEN_MORE = 2, 6


class Chance:
    """Numbers that look random and are the same for the same seed on every machine."""

    def __init__(self, seed: int) -> None:
        self.state = (seed * 2654435761 + 12345) & 0x7FFFFFFF

    def below(self, count: int) -> int:
        self.state = (self.state * 1103515245 + 12345) & 0x7FFFFFFF
        return (self.state >> 8) % count


def value(placing: Placing) -> "Value":
    """How good a plan is, the less the better: late jobs, minutes late, the end, minutes of standing about."""
    work = placing.work
    ends, begins, busy = [0] * len(work.jobs), [work.horizon] * len(work.jobs), [0] * len(work.jobs)
    for task in work.tasks:
        ends[task.job] = max(ends[task.job], placing.end(task.number))
        begins[task.job] = min(begins[task.job], placing.starts[task.number])
        busy[task.job] += task.length
    late = [max(0, ends[n] - job["due"]) for n, job in enumerate(work.jobs) if job["due"] is not None]
    idle = sum(max(0, ends[n] - begins[n] - busy[n]) for n in range(len(work.jobs)))
    return (len([one for one in late if one]), sum(late), max(ends + [work.now]), idle)


def first_order(work: "Work", chance: "Chance | None") -> list[int]:
    """Groups by the time left to them: when their job is due, less the work after them; some chance in it."""
    left = [0] * len(work.groups)
    for index in reversed(work.group_order):
        members = work.groups[index]
        later = [left[work.group_of[one]] for one in work.followers(index)]
        left[index] = sum(work.tasks[number].length for number in members) + max(later + [0])
    due = [job["due"] for job in work.jobs]
    longest = max(left + [0])
    latest = max([one for one in due if one is not None] + [longest])
    keys: list[tuple[int, int, int]] = []
    for index in work.group_order:
        job_due = due[work.tasks[work.groups[index][-1]].job]
        spread = 0 if chance is None else chance.below(1 + longest // 8)
        keys.append(((latest if job_due is None else job_due) - left[index] + spread, len(keys), index))
    return [key[2] for key in sorted(keys)]


def improved(work: "Work", order: "Sequence[int] | None", rounds: int, seed: int) -> tuple[Placing, int]:
    """The best placing found in so many rounds (a round places all tasks once), and how many it took.

    The first is that of `order`, or of the time left. Raises NoPlace where nothing fits.
    """
    chance = Chance(seed)
    best, used = _first(work, list(order) if order else first_order(work, None)), 1
    start = best
    if rounds > len(work.jobs):
        best, used = _with_jobs_moved(best, rounds, used)
        start, used = (best, used) if order is None else _shaken(best, used, chance)
    while used < rounds and len(work.groups) > 1:
        found, used = _walk(start, rounds, used, chance)
        if value(found) < value(best):
            best = found
        start, used = _shaken(best, used, chance)
    return best, used


def _with_jobs_moved(best: Placing, rounds: int, used: int) -> tuple[Placing, int]:
    """Puts all of a job last or first, as long as that is better: what is late anyway may let the others be in time."""
    work = best.work
    job_of = [work.tasks[members[0]].job for members in work.groups]
    while value(best)[0]:
        found = best
        for job in range(len(work.jobs)):
            order = order_of(best)
            own = [index for index in order if job_of[index] == job]
            others = [index for index in order if job_of[index] != job]
            for moved in (others + own, own + others):
                if used < rounds and moved != order:
                    tried, used = _tried(work, moved), used + 1
                    if tried is not None and value(tried) < value(found):
                        found = tried
        if found is best:
            break
        best = found
    return best, used


def _shaken(placing: Placing, used: int, chance: Chance) -> tuple[Placing, int]:
    """A few moves away, whatever they cost; where there are none, by the time left and chance."""
    for _ in range(SHAKEN + chance.below(SHAKEN_MORE)):
        moves = _moves(placing, chance)
        if not moves:
            return _tried(placing.work, first_order(placing.work, chance)) or placing, used + 1
        first, second = moves[chance.below(len(moves))]
        placing, used = _with_before(placing, second, first) or placing, used + 1
    return placing, used


def _first(work: "Work", order: list[int]) -> Placing:
    """The placing in an order or, where things that are kept block each other in it, job by job."""
    try:
        return Placing(work, order)
    except NoPlace:
        place = {index: n for n, index in enumerate(order)}
        first_of_job: "dict[int, int]" = {}
        for index in order:
            first_of_job.setdefault(work.tasks[work.groups[index][0]].job, place[index])
        jobs = [(first_of_job[work.tasks[work.groups[index][0]].job], place[index], index) for index in order]
        return Placing(work, [one[2] for one in sorted(jobs)])


def _walk(start: Placing, rounds: int, used: int, chance: Chance) -> tuple[Placing, int]:
    """Takes the best move of each step, even a bad one, until nothing was gained for long."""
    here, best, best_value = start, start, value(start)[:3]
    barred: "dict[tuple[int, int], int]" = {}
    step = since = 0
    while since < PATIENCE and used < rounds:
        step, since = step + 1, since + 1
        chosen, chosen_value, move = None, None, (0, 0)
        # Standing about is left out of a walk: among plans that are else as good it must be free to go on.
        for first, second in _moves(here, chance):
            tried = _with_before(here, second, first)
            used += 1
            if tried is None:
                continue
            worth = value(tried)[:3]
            if barred.get((second, first), 0) > step and worth >= best_value:
                continue
            if chosen_value is None or worth < chosen_value or (worth == chosen_value and chance.below(2)):
                chosen, chosen_value, move = tried, worth, (first, second)
        if chosen is None or chosen_value is None:
            barred, since = {}, since + PATIENCE // 8
            continue
        here = chosen
        barred[move] = step + TENURE + chance.below(TENURE_MORE)
        if chosen_value < best_value:
            best, best_value, since = here, chosen_value, 0
    return best, used


def order_of(placing: Placing) -> list[int]:
    """The groups by the time at which they start."""
    groups = placing.work.groups
    keys = [(min(placing.starts[number] for number in groups[index]), index) for index in range(len(groups))]
    return [key[1] for key in sorted(keys)]


def _with_before(placing: Placing, moved: int, other: int) -> Placing | None:
    order = [index for index in order_of(placing) if index != moved]
    order.insert(order.index(other), moved)
    return _tried(placing.work, order)


def _tried(work: "Work", order: list[int]) -> Placing | None:
    try:
        return Placing(work, order)
    except NoPlace:
        return None


def _moves(placing: Placing, chance: Chance) -> list[tuple[int, int]]:
    """Pairs (first, second) where second waits for something that first has, on a way back from what ends last.

    Of groups that wait for one thing in a row only the ends are worth moving; the first two of all that way are not,
    nor the last two where nothing is late (that is proven for job shops).
    """
    path = _way_back(placing, chance)
    late = value(placing)[0]
    rows: list[list[int]] = []
    for index, shares in path:
        if shares and rows:
            rows[-1].append(index)
        else:
            rows.append([index])
    moves: list[tuple[int, int]] = []
    for n, row in enumerate(rows):
        if len(row) > 1:
            if n < len(rows) - 1 or late:
                moves.append((row[-2], row[-1]))
            if n:
                moves.append((row[0], row[1]))
            moves.append((row[0], row[-1]))
    return [move for n, move in enumerate(moves) if move not in moves[:n]]


def _way_back(placing: Placing, chance: Chance) -> list[tuple[int, bool]]:
    """Groups from first to last, each held up by the one before: by something both want (True) or by its work."""
    work = placing.work
    at = work.group_of[_last(placing, chance)]
    back: list[tuple[int, bool]] = []
    seen: "dict[int, bool]" = {}
    while at >= 0:
        seen[at] = True
        holders = [one for one in _holders(placing, at) if one[0] not in seen]
        if not holders:
            back.append((at, False))
            break
        before, shares = holders[chance.below(len(holders))]
        back.append((at, shares))
        at = before
    return back[::-1]


def _last(placing: Placing, chance: Chance) -> int:
    """A task that ends a late job, or the one that ends last of all."""
    work = placing.work
    late = []
    for task in work.tasks:
        due = work.jobs[task.job]["due"]
        if due is not None and placing.end(task.number) > due:
            late.append(task.number)
    if late:
        return late[chance.below(len(late))]
    end = max(placing.end(task.number) for task in work.tasks)
    last = [task.number for task in work.tasks if placing.end(task.number) == end]
    return last[chance.below(len(last))]


def _holders(placing: Placing, index: int) -> list[tuple[int, bool]]:
    """What a group would have to wait for if it came a minute earlier: (group, whether they share a thing)."""
    work = placing.work
    found: list[tuple[int, bool]] = []
    for number in work.groups[index]:
        task, start = work.tasks[number], placing.starts[number]
        for before, least, _most in task.after:
            if placing.end(before) + least == start and work.group_of[before] != index:
                found.append((work.group_of[before], False))
        for name, _length, _until in task.wanted:
            for unit in placing.uses[name]:
                for take in unit:
                    other = work.group_of[take.number]
                    if other != index and take.start < start <= take.start + placing.length_of(take):
                        found.append((other, True))
    if index in placing.washes:
        before_wash = placing.washes[index]
        found += [(other, True) for _from, to, other in placing.bench if other != index and to <= before_wash]
    return [one for one in found if _may_move(work, index, one)]


def _may_move(work: "Work", index: int, holder: tuple[int, bool]) -> bool:
    """A group that stands still, or that this one waits for, is no group to go before."""
    return not holder[1] or not work.waits_for(index, holder[0])
