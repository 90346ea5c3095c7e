"""A desk that a server started ends with it, also when the server was killed and could not say so."""

import os
import signal
import threading
import time

_LOOK_EVERY = 2.0
_PATIENCE = 5.0


def leave_with_the_server() -> None:
    """Watch the parent process from a thread; when it is gone leave the usual way, and after a while at once.

    Nothing is lost by that: each step is kept before the screen shows it.
    """
    threading.Thread(target=_watch, args=(os.getppid(),), name="intake-parent", daemon=True).start()


def _watch(parent: int) -> None:
    while os.getppid() == parent:
        time.sleep(_LOOK_EVERY)
    os.kill(os.getpid(), signal.SIGTERM)
    time.sleep(_PATIENCE)
    os._exit(1)
