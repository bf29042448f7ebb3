"""Time of the processor for the tests that compare how time grows: no other process and no collection counts."""

from __future__ import annotations

import gc
import time
from collections.abc import Callable


def seconds_of(work: Callable[[], object]) -> float:
    """How long a call keeps the processor busy.

    The objects of a whole test run wait for the collector; a pass over them in the middle would be taken for growth.
    """
    gc.disable()
    try:
        started = time.process_time()
        work()
        return time.process_time() - started
    finally:
        gc.enable()
