"""`intake tested`: what a test on samples showed, kept in its case, and which verdicts it moved."""

import argparse
from typing import TYPE_CHECKING, Any

from intake.cli.input_error import InputError
from intake.cli.streams import print_json

if TYPE_CHECKING:
    from intake.desk.tests_on_samples import Report
    from intake.sizing.result import Result

_EXAMPLE = 'intake tested tea_cartons "slip angle" "22 deg" --by "R. Osei" --on today --samples "3 cartons of line 2"'

_EPILOG = f"""examples:
  {_EXAMPLE}
  intake tested tea_cartons transfer_ok yes --by works --on 2026-03-02 --samples "20 trays, empty" --json

TEST is a test by its name: intake advise CASE tests tells which are wanted. The figure replaces what was assumed of
the same thing; every check that leans on it says so."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "tested",
        help="keep what a test on samples showed, and see which verdicts it moves",
        description="Keeps one test with who measured, when, on which samples, and tells what it moved.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("case", metavar="CASE", help="a kept case")
    parser.add_argument("test", metavar="TEST", help="slip angle, tip angle ...")
    parser.add_argument("value", metavar="VALUE", help="what it showed, in words: 22 deg, yes, 90 N")
    parser.add_argument("--by", required=True, metavar="WHO", help="who measured")
    parser.add_argument("--on", required=True, metavar="DAY", help="when: 2026-03-02, today, yesterday")
    parser.add_argument("--samples", required=True, metavar="TEXT", help="on which samples, and how many")
    parser.add_argument("--json", action="store_true", help="the same for programs")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Keep the test and print what it moved. Raises BookError, Slip, and InputError when it is not safe on disk."""
    from intake.casebook.error import no_case
    from intake.desk.effect import Slip
    from intake.desk.keeping import opened
    from intake.desk.tests_on_samples import keep_report, report_of, test_named

    talk, keeper = opened(args.case)
    try:
        if not talk.events:
            raise no_case(args.case)
        field = test_named(args.test)
        report = report_of(talk, field, args.value, by=args.by, on=args.on, samples=args.samples)
        before = talk.bounds()
        keep_report(talk, report)
        trouble = keeper.keep(talk) or keeper.index(talk)
        if trouble:
            raise InputError(f"intake tested: NOT SAVED: {trouble}")
    except Slip as slip:
        told = str(slip).partition(" As in:")[0]
        raise InputError(f"intake tested: {told} As in: {_EXAMPLE}") from None
    finally:
        keeper.book.close()
    after = talk.bounds()
    if args.json:
        print_json(_shape(args.case, report, before, after))
    else:
        print(*_lines(report, before, after, talk.system), sep="\n")
    return 0


def _lines(report: "Report", before: "Result", after: "Result", system: Any) -> list[str]:
    """The test, every verdict that changed, and what that makes of the best."""
    from intake.advice import family_name
    from intake.desk.talk_text import Standing
    from intake.spec.clean import one_line

    standing = Standing()
    list(standing.news(before, system))
    news = list(standing.news(after, system))
    firmer = [
        f"Was {before.families[name].verdict}, now {found.verdict}: {family_name(name)}"
        for name, found in after.families.items()
        if found.verdict != before.families[name].verdict
        and "out" not in (found.verdict, before.families[name].verdict)
    ]
    moved = [*news, *firmer] or ["No verdict moves."]
    return [f"Tested: {one_line(report.words)}", *moved]


def _shape(case: str, report: "Report", before: "Result", after: "Result") -> dict[str, Any]:
    def verdicts(result: "Result") -> dict[str, str]:
        return {name: found.verdict for name, found in result.families.items()}

    return {
        "case": case,
        "test": report.field,
        "value": report.value,
        "by": report.by,
        "on": report.on,
        "samples": report.samples,
        "before": {"best": before.best, "verdicts": verdicts(before)},
        "after": {"best": after.best, "verdicts": verdicts(after)},
    }
