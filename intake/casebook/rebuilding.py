"""The index written anew for all cases in one transaction; other programs go on while it is worked out."""

import sqlite3

from intake.casebook import finding, journal, search
from intake.casebook.error import BookError
from intake.casebook.seam import IndexOf, IndexRow


class Ready:
    """What the lists will show, worked out by the caller's `index_of`, with the count of events that it was made of."""

    def __init__(self, index_of: IndexOf) -> None:
        self._index_of = index_of
        self._rows: dict[str, tuple[int, IndexRow]] = {}

    def work_out(self, connection: sqlite3.Connection, case_id: str) -> IndexRow:
        """The line of one case, anew only where it has gone on. One that cannot be read keeps what it had."""
        count = journal.count(connection, case_id)
        known = self._rows.get(case_id)
        if known is not None and known[0] == count:
            return known[1]
        try:
            row = self._index_of(case_id, list(journal.read(connection, case_id)))
        except BookError as trouble:
            if trouble.code != "damaged":
                raise
            row = search.index_of(connection, case_id)
        self._rows[case_id] = (count, row)
        return row


def case_ids(connection: sqlite3.Connection) -> list[str]:
    """All cases that have events."""
    return [case_id for (case_id,) in connection.execute("select case_id from event where seq = 1 order by n")]


def write(connection: sqlite3.Connection, ready: Ready) -> int:
    """Drop the index and write it anew, inside the caller's transaction. Returns how many cases there are."""
    ids = case_ids(connection)
    rows = {case_id: ready.work_out(connection, case_id) for case_id in ids}
    connection.execute("delete from entry")
    search.count_anew(connection, seek=False)
    for case_id, row in rows.items():
        journal.write_index(connection, case_id, row)
    finding.seek_all(connection)
    return len(ids)
