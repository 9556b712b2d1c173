"""Who waits is served with the others, in order, and by himself where one of them is at fault."""

import time
from concurrent.futures import ThreadPoolExecutor

from sqlalchemy import event

from amberbench.services.in_groups import MOST, InGroups
from amberbench.store import Unusable, db
from tests.log import Phone, push, results


def served_together(groups, given):
    """Asks for all of these while the turn is taken, one after another; what each gets, or raises."""

    def asks(one):
        try:
            return groups.do(one)
        except Exception as error:
            return repr(error)

    with ThreadPoolExecutor(len(given)) as pool:
        with groups.turn:
            done = []
            for number, one in enumerate(given, start=1):
                done.append(pool.submit(asks, one))
                while len(groups.waiting) < number:
                    time.sleep(0.001)
        return [one.result(10) for one in done]


def test_those_who_wait_are_served_in_one_go_in_their_order():
    seen = []

    def work(given):
        seen.append(given)
        return [10 * one for one in given]

    groups = InGroups(work)
    assert served_together(groups, [3, 1, 2]) == [30, 10, 20]
    assert seen == [[3, 1, 2]]
    assert groups.do(4) == 40


def test_a_go_takes_so_many_and_no_more():
    sizes = []

    def work(given):
        sizes.append(len(given))
        return given

    assert served_together(InGroups(work), list(range(MOST + 3))) == list(range(MOST + 3))
    assert sizes == [MOST, 3]


def test_fault_of_one_harms_no_other():
    groups = InGroups(lambda given: [1 // one for one in given])
    assert served_together(groups, [1, 0, 1]) == [1, repr(ZeroDivisionError("integer division or modulo by zero")), 1]


def test_database_that_is_busy_is_not_asked_again_for_each():
    asked = []

    def busy(given):
        asked.append(given)
        raise Unusable("busy")

    assert len(set(served_together(InGroups(busy), [1, 2, 3]))) == 1
    assert asked == [[1, 2, 3]]


def test_pushes_that_come_together_are_kept_at_once_and_answered_each_for_itself(app, client):
    noted = [Phone().event("noted", text=str(number)) for number in range(3)]
    assert results(push(client, noted[0])) == ["stored"]
    pushes = [noted, [noted[1], {"id": 7}], [Phone().opens()]]
    commits = []
    with app.app_context():
        event.listen(db.engine, "commit", commits.append)
    groups = app.extensions["amberbench_pushes"]
    with ThreadPoolExecutor(len(pushes)) as pool:
        with groups.turn:
            done = []
            for number, one in enumerate(pushes, start=1):
                done.append(pool.submit(lambda events: push(app.test_client(), *events), one))
                while len(groups.waiting) < number:
                    time.sleep(0.001)
        answered = [one.result(10) for one in done]
    assert [results(one) for one in answered] == [["known", "stored", "stored"], ["known", "refused"], ["stored"]]
    assert [one["id"] for one in answered[0]] == [one["id"] for one in noted]
    assert len(commits) == 1
