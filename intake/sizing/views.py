"""One job with one layout filled in, seen in each mode."""

from intake.sizing.engine import feed, lay
from intake.sizing.family import Family, Layout
from intake.sizing.job import Job, View, view
from intake.sizing.unknowns import WORST


class Views:
    """The views of one job with one layout filled in, by mode. Each is filled in when it is first asked for."""

    def __init__(
        self, job: Job, family: Family, layout: Layout | None, swapped: bool = False, turned: bool = False
    ) -> None:  # fmt: skip
        self.turned = turned
        self._job, self._family, self._layout, self._swapped = job, family, layout, swapped
        self._filled: dict[int, View] = {}

    def __getitem__(self, mode: int) -> View:
        found = self._filled.get(mode)
        if found is None:
            found = view(self._job, mode)
            lay(found, self._swapped)
            feed(found, self.turned)
            if self._layout is not None:
                self._family.fill_all(found, self._layout, self._job.data.families[self._family.name])
            self._filled[mode] = found
        return found

    def has(self, mode: int) -> bool:
        """True when the job can be looked at in that mode."""
        return mode != WORST or not self._job.missing_basics
