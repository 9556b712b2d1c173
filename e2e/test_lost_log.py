"""A server whose database is deleted, replaced or put back from a copy: its phones notice and bring all back."""

import re
import sys

from e2e.proofs import proved


def test_three_phones_bring_everything_back_once_whatever_became_of_the_database():
    said = proved("lostLog", PYTHON=sys.executable)
    assert re.search(r"Tests +3 passed", said)
