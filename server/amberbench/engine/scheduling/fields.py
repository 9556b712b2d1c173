"""Fields of `schedule.plan`: tasks, jobs, people and things, and when each task starts."""

from ..core.allergens import ALLERGENS
from ..core.dates import WEEKDAYS
from ..core.field_kinds import boolean, choice, document, integer, many, number, record, text, together

MOST_S = 14 * 24 * 3600.0
MOST_TASKS = 400
# In one call: who looks longer asks again with the order found, so that nobody waits for an answer.
MOST_ROUNDS = 400
ID = text(80, "its id")


def _time(meaning: str, **more: object) -> "dict[str, object]":
    return number("s", -MOST_S, MOST_S, meaning + ", from the start of the first day", **more)


TASK = record(
    {
        "id": ID,
        "job": text(80, "the job it is of"),
        "hands_s": number("s", 0, MOST_S, "time with hands on it"),
        "wait_s": number("s", 0, MOST_S, "time after that which needs nobody; null: none", default=None),
        "people": integer(0, 20, "how many people it takes while hands are on it", default=1),
        "uses": many(text(80, "a thing it takes while hands are on it"), 0, 10, "things", default=[]),
        "keeps": many(
            record(
                {"name": text(80, "the thing"), "until": text(80, "the task; null: this one", default=None)}, "a thing"
            ),
            0,
            10,
            "things that it takes from its start until a task is over",
            default=[],
        ),
        "after": many(
            record(
                {
                    "task": text(80, "the task before it"),
                    "least_s": number("s", 0, MOST_S, "how long after its end at least; null: at once", default=None),
                    "most_s": number("s", 0, MOST_S, "how long after at most; null: any time", default=None),
                },
                "a task it waits for",
            ),
            0,
            50,
            "what it waits for",
            default=[],
        ),
        "earliest_s": _time("not before", default=None),
        "pinned_s": number("s", 0, MOST_S, "where somebody pinned it, from the start of the first day", default=None),
        "begun_s": _time("when it began, of one that has", default=None),
    },
    "a task: hands on it, then a wait",
)
JOB = record(
    {
        "id": ID,
        "due_s": _time("when it must be done; null: any time", default=None),
        "contains": many(
            choice(ALLERGENS, "an allergen"), 0, 40, "its allergens; null: it does not share the bench", default=None
        ),
    },
    "a job: a batch, or the boxes of an order",
)
_MS = number("ms", 0, 1e14, "an instant, corrected")
PLANNED = {"plan": document("its plan", of="PlanDocument"), "run": document("its state", of="Run")}
MISSING = record(
    {
        "box_id": text(80, "the box; null: single pieces or loose", default=None),
        "product_id": text(80, "the product; null: boxes", default=None),
        "missing": number("", 0, 1e12, "how many are still to be packed"),
    },
    "a line",
)
ROW = record(
    {
        "id": ID,
        "batch_id": text(80, "the batch it is of; null: it is of an order", nullable=True),
        "order_id": text(80, "the order it is of; null: it is of a batch", nullable=True),
        "name": text(40, "what is done"),
        "begun": boolean("whether it has begun"),
        "pinned": boolean("whether somebody pinned it"),
    },
    "what a task is",
)
DAY = {
    "tasks": many(TASK, 0, MOST_TASKS, "the tasks"),
    "jobs": many(JOB, 0, 100, "the jobs"),
    "resources": many(
        record({"name": text(80, "its name"), "count": integer(1, 50, "how many there are")}, "a kind of thing"),
        0,
        50,
        "ovens, bars, table, trays, bowls",
        default=[],
    ),
    "people": integer(0, 20, "how many people", default=1),
    "hours": many(
        record({"from_s": _time("from"), "to_s": _time("to")}, "a span at work"),
        0,
        60,
        "when people work; none: round the clock",
        default=[],
    ),
    "wash_s": number(
        "s", 0, 7200, "a wash of tools, surfaces and hands", default=900.0, basis="assumed", source="practice"
    ),
    "now_s": _time("nothing starts before; null: the start", default=None),
}
FUNCTIONS = {
    "schedule.tasks": {
        "request": {
            "shop": document("the shop", of="Shop"),
            "days": many(
                record(
                    {
                        "weekday": choice(WEEKDAYS, "its name"),
                        "midnight_ms": dict(_MS, meaning="its beginning"),
                        "noon_ms": dict(_MS, meaning="noon by the clock; null: twelve hours later", default=None),
                    },
                    "a day",
                ),
                1,
                14,
                "the days that are planned, today first",
            ),
            "now_ms": dict(_MS, meaning="corrected time now"),
            "batches": many(
                record(dict(PLANNED, id=text(64, "its id")), "a batch"), 0, 40, "planned and running batches"
            ),
            "orders": many(
                record(
                    {
                        "order_id": text(64, "its id"),
                        "wanted_ms": dict(_MS, meaning="when it is wanted; null: any time", default=None),
                        "pinned_ms": dict(_MS, meaning="when its boxing is to begin; null: any time", default=None),
                        "lines": many(MISSING, 0, 60, "what is missing"),
                    },
                    "an open order",
                ),
                0,
                40,
                "open orders",
                default=[],
            ),
            "closed": many(record(PLANNED, "a batch"), 0, 100, "batches that are over", default=[]),
        },
        "reply": {
            "day": record(DAY, "for schedule.plan"),
            "rows": many(ROW, 0, MOST_TASKS, "what each task is, in the same order"),
            "start_ms": dict(_MS, meaning="where the seconds of the day begin"),
            "left_out": many(text(64, "a batch"), 0, 40, "batches for which there was no room"),
        },
    },
    "schedule.plan": {
        "request": together(
            DAY,
            {
                "rounds": integer(1, MOST_ROUNDS, "how often all tasks may be placed to look for a better", default=1),
                "seed": integer(0, 2**31 - 1, "another seed looks elsewhere", default=1),
                "order": many(
                    text(80, "a task"), 0, MOST_TASKS, "`order` of an earlier reply, to go on from", default=[]
                ),
            },
        ),
        "reply": {
            "tasks": many(
                record(
                    {
                        "id": ID,
                        "start_s": _time("its start"),
                        "hands_end_s": _time("when hands are free again"),
                        "end_s": _time("its end"),
                        "takes": many(
                            record({"name": text(80, "people or a thing"), "unit": integer(1, 50, "which one")}, "one"),
                            0,
                            80,
                            "who and what it takes",
                        ),
                        "wash_s": _time("start of the wash before it; null: none", nullable=True),
                    },
                    "a task that has its place",
                ),
                0,
                MOST_TASKS,
                "the tasks, as they were given",
            ),
            "jobs": many(
                record(
                    {
                        "id": ID,
                        "end_s": _time("when it is done"),
                        "late_s": number("s", 0, 1e9, "how much too late"),
                        "spare_s": number("s", 0, 1e9, "how much too early; null: no hour is set", nullable=True),
                    },
                    "a job",
                ),
                0,
                100,
                "the jobs, as they were given",
            ),
            "late_jobs": integer(0, 100, "how many are late"),
            "late_s": number("s", 0, 1e9, "how late they are in all"),
            "end_s": _time("when all is done"),
            "conflicts": many(
                record(
                    {"task": ID, "wants": text(80, "what is not free, or the task it would have to wait for")}, "one"
                ),
                0,
                MOST_TASKS,
                "pinned tasks that cannot stand where they are",
            ),
            "helps": many(
                record(
                    {
                        "name": text(80, "people, or a thing"),
                        "late_jobs": integer(0, 100, "how many would be late"),
                        "late_s": number("s", 0, 1e9, "how late in all"),
                    },
                    "what one more would do",
                ),
                0,
                50,
                "of what one more would help, the most useful first",
            ),
            "order": many(ID, 0, MOST_TASKS, "the first task of each group, by start"),
            "rounds": integer(0, 40000, "how many rounds it took"),
        },
    },
}
