"""Writing the package into a folder: all of its files or none of them changed."""

import json
import os
from pathlib import Path

from intake.handoff.gather import gather
from intake.handoff.package import HandoffError, Package
from intake.handoff.sheet import sheet
from intake.handoff.values_csv import values_csv
from intake.talk import Interview

FILES = ("spec.json", "spec.md", "values.csv", "result.json")


def write(talk: Interview, folder: str | os.PathLike[str], *, case: str, with_contact: bool = False) -> Package:
    """Write spec.json, spec.md, values.csv and result.json for what stands in the talk.

    The revision letter follows from the talk's `handed_over` events; the caller appends the new one.
    Files are readable by their owner alone. Raises HandoffError when the folder cannot be written.
    """
    result = talk.result()
    package = gather(talk, result, case=case, with_contact=with_contact)
    whole = {"case": case, "revision": package.revision} | result.to_json()
    texts = {
        "spec.json": _json(package.model_dump(mode="json")),
        "spec.md": sheet(package, result),
        "values.csv": values_csv(package),
        "result.json": _json(whole),
    }
    target = Path(folder)
    try:
        target.mkdir(parents=True, exist_ok=True)
        for name, text in texts.items():
            _write_beside(target / name, text)
        for name in texts:
            os.replace(_beside(target / name), target / name)
    except OSError as fault:
        raise HandoffError(
            f"{target}: the hand-off could not be written ({fault.strerror}). Name a folder that you may write to."
        ) from fault
    return package


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def _beside(path: Path) -> Path:
    return path.with_name(f".{path.name}.part")


def _write_beside(path: Path, text: str) -> None:
    """The text under a passing name, on disk before it takes its place."""
    descriptor = os.open(_beside(path), os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    with open(descriptor, "w", encoding="utf-8", newline="\n") as out:
        out.write(text)
        out.flush()
        os.fsync(out.fileno())
