"""Work that costs little more for many than for one: who waits meanwhile is served in the next go, in order."""

import threading
from collections import deque
from collections.abc import Callable
from concurrent.futures import Future
from typing import Generic, TypeVar

from amberbench.store import Unusable

Given = TypeVar("Given")
Done = TypeVar("Done")

MOST = 20
"""So many are served at once; who comes later waits for the next go."""


class InGroups(Generic[Given, Done]):
    """Does some work for all who wait for it. One of them does it for the others: there is no thread of its own."""

    def __init__(self, work: Callable[[list[Given]], list[Done]]) -> None:
        self.work = work
        self.waiting: deque[tuple[Given, Future[Done]]] = deque()
        self.turn = threading.Lock()

    def do(self, given: Given) -> Done:
        """The result for one; raises what the work raised."""
        mine: Future[Done] = Future()
        self.waiting.append((given, mine))
        with self.turn:
            while not mine.done():  # those before it come first
                self._serve([self.waiting.popleft() for _ in range(min(len(self.waiting), MOST))])
        return mine.result()

    def _serve(self, group: list[tuple[Given, "Future[Done]"]]) -> None:
        try:
            for (_, future), done in zip(group, self.work([given for given, _ in group]), strict=True):
                future.set_result(done)
        except BaseException as error:
            if len(group) == 1 or isinstance(error, Unusable):
                for _, future in group:
                    future.set_exception(error)
            else:  # the fault of one harms no other
                for one in group:
                    self._serve([one])
