"""What the runners share: texts come as JSON lines on standard input, quantities in our kinds and units go out.

Reading is timed by itself; what turns a result into our kinds and units is not, so that no extractor pays for it.
"""

import json
import sys
from collections.abc import Callable
from time import process_time
from typing import Any

Quantity = dict[str, Any]
WARM_UP = "Twelve cases of 3.5 kg, 10 in tall, at 20 degrees."
ROUNDS = 3


def serve(load: Callable[[], Callable[[str], Any]], convert: Callable[[str, Any], list[Quantity]]) -> None:
    """One line of quantities for each text, then one with the processor time for getting ready and for each text."""
    texts = [json.loads(line)["text"] for line in sys.stdin]
    begin = process_time()
    extract = load()
    attempt(extract, WARM_UP)
    ready = process_time() - begin
    rounds = []
    for _ in range(ROUNDS):
        begin = process_time()
        found = [attempt(extract, text) for text in texts]
        rounds.append(process_time() - begin)
    for text, one in zip(texts, found, strict=True):
        print(json.dumps([] if one is None else convert(text, one)))
    print(json.dumps({"ready": ready, "seconds": min(rounds)}))


def attempt(extract: Callable[[str], Any], text: str) -> Any:
    """What is found in one text; None where an extractor raises, which counts as nothing found."""
    try:
        return extract(text)
    except Exception:
        return None
