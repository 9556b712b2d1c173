"""Every kind of batch has a course that its events, pages and words agree with."""

import pytest

from amberbench.engine import fields
from amberbench.engine.batch import courses
from amberbench.engine.batch.advice import PAGES
from amberbench.engine.batch.folds import FOLDS

COURSES = [pytest.param(kind, id=kind) for kind in courses.STEPS]


@pytest.mark.parametrize("kind", COURSES)
def test_every_step_has_a_page_and_an_event_that_ends_it(kind):
    for step, event in courses.STEPS[kind]:
        assert step in PAGES[kind], step
        assert event in FOLDS, event
        assert event in fields.EVENTS, event


@pytest.mark.parametrize("kind", COURSES)
def test_an_event_ends_a_step_of_the_same_name_in_every_kind(kind):
    assert {event: step for step, event in courses.STEPS[kind]}.items() <= courses.STEP_OF.items()


@pytest.mark.parametrize("kind", COURSES)
def test_a_course_ends_with_closing_and_names_each_step_once(kind):
    order = courses.ORDER[kind]
    assert order[-1] == "close"
    assert len(set(order)) == len(order)
