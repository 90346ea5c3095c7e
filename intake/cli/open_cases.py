"""The cases open in one `ask`: one in front, the others as they were left."""

from collections.abc import Iterator

from intake.desk.effect import Go, Slip
from intake.desk.keeping import Keeper, opened
from intake.desk.steps import Steps
from intake.desk.work import Work


class OpenCases:
    """Begins with one case. All later ones are kept, and so is the first as soon as it is left."""

    def __init__(self, work: Work) -> None:
        self._all = [Steps(work, panels=False)]
        self._place = 0
        self._names = work.beside
        self._note_names()

    def __iter__(self) -> Iterator[Steps]:
        return iter(self._all)

    @property
    def front(self) -> Steps:
        """The case in front."""
        return self._all[self._place]

    def go(self, to: Go) -> list[str]:
        """Bring another case to the front. Returns what to say of the one that is left.

        Raises BookError for a case that cannot be opened, Slip when there is no other.
        """
        if to.onward:
            if len(self._all) == 1:
                raise Slip("No other case is open here. /open CASE goes to a kept one, /new begins one.")
            following = self._all[(self._place + 1) % len(self._all)]
            return self._change_to(following)
        name = to.case or self.front.work.book.new_id()
        if name not in self._names:
            talk, keeper = opened(name)
            front = self.front.work
            work = Work(talk, keeper, units=front.units, beside=self._names)
            self._all.append(Steps(work, panels=False))
        return self._change_to(next(steps for steps in self._all if steps.work.name == name))

    def _change_to(self, steps: Steps) -> list[str]:
        told = self._leave()
        self._place = self._all.index(steps)
        self._note_names()
        return told

    def _leave(self) -> list[str]:
        """Keep what was said without a name, so that it can be come back to; drop a case in which nothing was."""
        left = self.front.work
        if left.keeper is not None:
            trouble = self.front.trouble
            kept = [f"Intake: {left.name} is kept."] if left.talk.events else []
            return [f"NOT SAVED: {left.name}: {trouble}"] if trouble else kept
        if not left.talk.events:
            left.close()
            del self._all[self._place]
            return []
        left.keeper = Keeper(left.book.new_id(), book=left.book)
        trouble = left.keeper.keep(left.talk) or left.keeper.index(left.talk)
        return [f"NOT SAVED: {trouble}"] if trouble else [f"Intake: what was said so far is kept as {left.name}."]

    def _note_names(self) -> None:
        self._names[:] = [steps.work.name for steps in self._all if steps.work.name]
