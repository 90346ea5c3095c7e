"""`intake size`: a flat spec to verdicts, figures and a recommendation."""

import argparse
from collections.abc import Mapping
from typing import Any

from intake.cli.input_error import InputError
from intake.cli.lines import answer_lines
from intake.cli.spec_file import EXAMPLE, load
from intake.cli.streams import print_json

_EPILOG = f"""example:
  echo '{EXAMPLE}' | intake size - --json
  intake size job.toml                 a file with lines such as  "product.length" = 0.4
  intake size handover/spec.json       what a hand-off wrote
  intake size job.json --sketch        the leading machine drawn to scale, from the side and from above
  intake size job.json --reach         how high, how fast, and what would have to change
  intake size --lines < jobs.jsonl     lines such as  {{"id": "a", "spec": {{"rate.peak": 45}}}}

Figures are in the fields' own units (m, kg, 1/min, degC, N, Pa)."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "size",
        help="size a spec: which machines stand, with figures",
        description="Sizes a flat spec: verdicts on every family, checks, figures, recommendation, follow-ups.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument(
        "file", nargs="?", metavar="FILE", help="JSON or TOML, a hand-off's spec.json, a kept case; - for stdin"
    )
    parser.add_argument("--json", action="store_true", help="the whole result as JSON")
    parser.add_argument("--lines", action="store_true", help="one job a line on stdin, one result a line back")
    parser.add_argument("--worth", action="store_true", help="also say how sure the best family is, by sampling")
    parser.add_argument(
        "--reach", action="store_true", help="also how high and how fast it could go, and what would let others stand"
    )
    parser.add_argument("--sketch", action="store_true", help="also draw the leading machine to scale, with text")
    parser.add_argument("--ascii", action="store_true", help="draw the sketch with ASCII signs alone")
    parser.add_argument("--units", choices=("us", "si"), default="us", help="units of the plain text (default: us)")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Size one file, or every line of standard input."""
    if args.lines:
        if args.file:
            raise InputError("intake size --lines reads from standard input: give it no FILE, or use < FILE")
        if args.reach:
            raise InputError("intake size --lines has no --reach: that is for one job at a time, as it takes seconds")
        if args.sketch:
            raise InputError("intake size --lines has no --sketch: that is for one job at a time")
        return answer_lines(_answerer(args.worth), '{"id": "a", "spec": ' + EXAMPLE + "}")
    if not args.file:
        raise InputError("intake size needs a FILE (- for standard input), or --lines. See: intake size --help")
    if args.json and args.sketch:
        raise InputError("a sketch is drawn with text and has no place in JSON: give --sketch or --json, not both")
    from intake.sizing import size

    spec = load(args.file)
    result = size(spec, worth=args.worth)
    if args.json:
        print_json(result.to_json() | ({"reach": _reach(spec, result)} if args.reach else {}))
        return 0
    from intake.cli.result_text import reach_text, result_lines, sketch_text

    for line in result_lines(result, spec, args.units):
        print(line)
    for line in reach_text(result, spec, args.units) if args.reach else ():
        print(line)
    for line in sketch_text(result, spec, args.units, args.ascii) if args.sketch else ():
        print(line)
    return 0


def _reach(spec: Any, result: Any) -> dict[str, Any]:
    from intake.advice import Brief, reach, reach_json

    return reach_json(reach(Brief(spec=spec, sized=result)))


def _answerer(worth: bool) -> Any:
    """The function that answers one line; sizing is imported and its data read once, before the first line."""
    from intake.sizing import size

    def answer(row: Mapping[str, Any]) -> dict[str, Any]:
        spec = row.get("spec")
        if not isinstance(spec, Mapping):
            raise InputError('there is no "spec" object on this line')
        return size(spec, worth=worth).to_json()

    return answer
