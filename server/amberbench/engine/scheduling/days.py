"""A day's work as the scheduler sees it: minutes instead of seconds, numbers instead of names."""

from ..core.problems import Problem
from .free_time import span

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document, Readable

MINUTE_S = 60.0
PEOPLE = "people"
DAY_MIN = 24 * 60
# Beyond the last working hour that was given, so long may a wait go on before the plan gives up.
SPARE_MIN = 3 * DAY_MIN


def minutes(seconds: float) -> int:
    """Whole minutes that hold so many seconds."""
    whole = int(seconds // MINUTE_S)
    return whole if whole * MINUTE_S >= seconds else whole + 1


class Task:
    """One task: a time with hands on it, then a wait.

    after: (task, least wait, most wait or None); uses: names with hands on; keeps: (name, task until whose end it is
    kept). fixed: the minute at which it stands (begun or pinned), else None.
    """

    def __init__(self, asked: "Readable", number: int, job: int) -> None:
        self.id, self.number, self.job = asked["id"], number, job
        self.people = asked["people"]
        self.hands = minutes(asked["hands_s"])
        self.length = self.hands + minutes(asked["wait_s"] or 0.0)
        self.uses: list[str] = list(asked["uses"])
        self.keeps: list[tuple[str, int]] = []
        self.after: list[tuple[int, int, int | None]] = []
        self.earliest = minutes(asked["earliest_s"] or 0.0)
        self.begun = asked["begun_s"] is not None
        at = asked["begun_s"] if self.begun else asked["pinned_s"]
        self.fixed = None if at is None else int(at // MINUTE_S)

        self.wanted: "list[tuple[str, int, int | None]]" = []

    def wants(self) -> "list[tuple[str, int, int | None]]":
        """What it takes from its start on: name, minutes, and the task until whose end it is kept, if any."""
        found: "list[tuple[str, int, int | None]]" = [(name, self.hands, None) for name in self.uses if self.hands]
        if self.people and self.hands:
            found.append((PEOPLE, self.hands, None))
        for name, until in self.keeps:
            found.append((name, self.length, None if until == self.number else until))
        return found


class Work:
    """All tasks of some days, with the people and things there are."""

    def __init__(self, request: "Readable") -> None:
        self.jobs = [dict(job, due=_minute(job["due_s"])) for job in request["jobs"]]
        self.tasks = _tasks(request, _numbered(request["jobs"], "jobs"))
        self.wash = minutes(request["wash_s"])
        self.now = max(0, minutes(request["now_s"] or 0.0))
        work = sum(task.length for task in self.tasks) + self.wash * len(self.tasks)
        ends = [minutes(one["to_s"]) for one in request["hours"]]
        fixed = [task.fixed + task.length for task in self.tasks if task.fixed is not None]
        lags = sum(most[1] for task in self.tasks for most in task.after)
        self.horizon = max(ends + fixed + [self.now]) + work + lags + (SPARE_MIN if ends else 0)
        self.free = self._free(request)
        for task in self.tasks:
            task.wanted = task.wants()
        self.kept_until: "dict[int, list[str]]" = {}
        for task in self.tasks:
            for name, until in task.keeps:
                self.kept_until.setdefault(until, []).append(name)
        self.groups = _groups(self.tasks)
        self.group_of = {number: index for index in range(len(self.groups)) for number in self.groups[index]}
        self._before = _groups_before(self.tasks, self.groups, self.group_of)
        self.group_order = sorted(range(len(self.groups)), key=lambda one: (len(self._before[one]), one))

    def _free(self, request: "Readable") -> "dict[str, list[int]]":
        """The free minutes from now on of each person and of each of the things there are, by name."""
        all_day = span(self.now, self.horizon - self.now)
        open_hours = 0
        for index, one in enumerate(request["hours"]):
            if one["to_s"] <= one["from_s"]:
                path = "hours[" + str(index) + "].to_s"
                raise Problem(path, "ends_before_it_begins", one["to_s"], one["from_s"], None, "s")
            start = minutes(one["from_s"])
            open_hours |= span(start, minutes(one["to_s"]) - start)
        at_work = all_day & open_hours if request["hours"] else all_day
        free = {one["name"]: [all_day] * one["count"] for one in request["resources"]}
        free[PEOPLE] = [at_work] * request["people"]
        for index, task in enumerate(self.tasks):
            self._check_there(task, free, index)
        return free

    def waits_for(self, group: int, other: int) -> bool:
        """Whether a group can only come after another."""
        return other in self._before[group]

    def followers(self, group: int) -> list[int]:
        """Tasks of other groups that wait for one of this."""
        return [
            task.number
            for task in self.tasks
            if self.group_of[task.number] != group and [one for one in task.after if self.group_of[one[0]] == group]
        ]

    def contains_of(self, group: int) -> "list[str] | None":
        """The allergens of a group's job; None for one that does not share the bench."""
        found: "list[str] | None" = self.jobs[self.tasks[self.groups[group][0]].job]["contains"]
        return found

    def hands_on(self, group: int) -> list[int]:
        """The tasks of a group with hands on them."""
        return [number for number in self.groups[group] if self.tasks[number].hands and self.tasks[number].people]

    def leaves(self, one: int, other: int) -> bool:
        """Whether a group leaves something on the bench that another does not declare."""
        allowed = self.contains_of(other) or []
        return bool([name for name in self.contains_of(one) or [] if name not in allowed])

    def _check_there(self, task: Task, free: "dict[str, list[int]]", index: int) -> None:
        path = "tasks[" + str(index) + "]."
        for name in task.uses + [kept[0] for kept in task.keeps]:
            if name not in free or name == PEOPLE:
                raise Problem(path + "uses", "not_an_option", name, accepted=sorted(free))
        if task.people > len(free[PEOPLE]):
            raise Problem(path + "people", "too_many_people", task.people, 0, len(free[PEOPLE]))


def _minute(seconds: float | None) -> int | None:
    return None if seconds is None else int(seconds // MINUTE_S)


def _numbered(rows: "list[Document]", name: str) -> dict[str, int]:
    numbers: dict[str, int] = {}
    for index, row in enumerate(rows):
        if row["id"] in numbers:
            raise Problem(name + "[" + str(index) + "].id", "named_twice", row["id"])
        numbers[row["id"]] = index
    return numbers


def _tasks(request: "Readable", job_numbers: dict[str, int]) -> list[Task]:
    numbers = _numbered(request["tasks"], "tasks")
    tasks = []
    for index, asked in enumerate(request["tasks"]):
        path = "tasks[" + str(index) + "]."
        task = Task(asked, index, _known(asked["job"], job_numbers, path + "job"))
        for link in asked["after"]:
            most = None if link["most_s"] is None else int(link["most_s"] // MINUTE_S)
            least = minutes(link["least_s"] or 0.0)
            if most is not None and most < least:
                raise Problem(path + "after", "ends_before_it_begins", link["most_s"], link["least_s"], None, "s")
            task.after.append((_known(link["task"], numbers, path + "after"), least, most))
        for kept in asked["keeps"]:
            until = index if kept["until"] is None else _known(kept["until"], numbers, path + "keeps")
            task.keeps.append((kept["name"], until))
        tasks.append(task)
    _check_acyclic(tasks)
    for task in tasks:
        for name, until in task.keeps:
            _share(tasks, task, name, until)
    return tasks


def _share(tasks: list[Task], keeper: Task, name: str, until: int) -> None:
    """What a job keeps from one task to another is at hand for its tasks between."""
    for task in tasks:
        if task.job == keeper.job and keeper.number <= task.number <= until and name in task.uses:
            task.uses.remove(name)


def _known(name: str, numbers: dict[str, int], field: str) -> int:
    if name not in numbers:
        raise Problem(field, "not_an_option", name, accepted=sorted(numbers))
    return numbers[name]


def _check_acyclic(tasks: list[Task]) -> None:
    """Raises Problem task_after_itself where a task would have to wait for itself."""
    waits = [len(task.after) for task in tasks]
    ready = [number for number in range(len(tasks)) if not waits[number]]
    for number in ready:  # grows while it is walked
        for task in tasks:
            for before in task.after:
                if before[0] == number:
                    waits[task.number] -= 1
                    if not waits[task.number]:
                        ready.append(task.number)
    if len(ready) < len(tasks):
        stuck = next(task for task in tasks if waits[task.number])
        raise Problem("tasks[" + str(stuck.number) + "].after", "task_after_itself", stuck.id)


def _groups(tasks: list[Task]) -> list[list[int]]:
    """Tasks that must follow each other within a time are placed together: their numbers, in the order of work."""
    group = list(range(len(tasks)))
    for task in tasks:
        for before, _least, most in task.after:
            if most is not None:
                _join(group, task.number, before)
    while _join_one_that_waits_for_itself(tasks, group):
        pass
    members: "dict[int, list[int]]" = {}
    for number in _in_order_of_work(tasks):
        members.setdefault(group[number], []).append(number)
    return [members[one] for one in sorted(members)]


def _join(group: list[int], one: int, other: int) -> None:
    old, new = group[one], group[other]
    for number in range(len(group)):
        if group[number] == old:
            group[number] = new


def _join_one_that_waits_for_itself(tasks: list[Task], group: list[int]) -> bool:
    """Joins a group with what stands between two of its tasks; False where there is none."""
    waits_for: "dict[int, dict[int, bool]]" = {}
    for number in _in_order_of_work(tasks):
        mine = waits_for.setdefault(group[number], {})
        for before, _least, _most in tasks[number].after:
            if group[before] != group[number]:
                mine[group[before]] = True
                mine.update(waits_for[group[before]])
        if group[number] in mine:
            others = [one for one in range(len(group)) if group[one] in mine and group[one] != group[number]]
            between = [one for one in others if group[number] in waits_for[group[one]]]
            _join(group, between[0], number)
            return True
    return False


def _groups_before(tasks: list[Task], groups: list[list[int]], group_of: "dict[int, int]") -> "list[dict[int, bool]]":
    """By group, all groups that must be done before it."""
    found: "list[dict[int, bool]]" = [{} for _ in groups]
    for number in _in_order_of_work(tasks):
        mine = found[group_of[number]]
        for before, _least, _most in tasks[number].after:
            other = group_of[before]
            if other != group_of[number]:
                mine[other] = True
                mine.update(found[other])
    return found


def _in_order_of_work(tasks: list[Task]) -> list[int]:
    """Each task after those it waits for; else as they were given."""
    done: "dict[int, bool]" = {}
    order: list[int] = []
    while len(order) < len(tasks):
        for task in tasks:
            if task.number not in done and not [one for one in task.after if one[0] not in done]:
                done[task.number] = True
                order.append(task.number)
    return order
