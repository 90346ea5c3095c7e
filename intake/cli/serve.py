"""`intake serve`: the desk in a browser, for those who know the passphrase."""

import argparse
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from intake.cli.input_error import InputError

if TYPE_CHECKING:
    from intake.desk.web.server import Settings

_INSTALL = "intake serve needs an extra that is not installed: pip install 'rise-intake[web]'"
_EPILOG = """examples:
  intake serve                            on this computer only, with a passphrase made for this run
  intake serve --passphrase-file desk.txt
  intake serve --host 0.0.0.0 --public-url https://desk.example

The passphrase (12 characters or more) comes from --passphrase-file, else from INTAKE_PASSPHRASE, else one is made and
printed once. It is no argument of the command, because arguments can be seen by others on the computer. Everyone who
knows it can open every kept case.

All keys of the desk work in the browser but Ctrl+N, which opens a window of its own: Alt+N does the same here."""


def register(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser(
        "serve",
        help="serve the desk to browsers (an extra: rise-intake[web])",
        description="Serves the desk to browsers that know the passphrase. Reached from this computer only, unless "
        "--host says otherwise.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--host", default="127.0.0.1", help="the address to listen on (default: 127.0.0.1)")
    parser.add_argument("--port", type=_port, default=8017, help="the port to listen on (default: 8017)")
    parser.add_argument("--public-url", metavar="URL", help="the address people type, where a proxy stands before this")
    parser.add_argument("--passphrase-file", metavar="FILE", help="its first line is the passphrase")
    parser.add_argument("--passphrase", help=argparse.SUPPRESS)  # only to say why not, without repeating it
    parser.add_argument("--desks", type=_desks, default=8, metavar="N", help="desks at once (default: 8)")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Serve until Ctrl+C."""
    if args.passphrase is not None:
        raise InputError(
            "intake serve: a passphrase among the arguments can be seen by others on this computer. Take another one, "
            "and give it with --passphrase-file or in INTAKE_PASSPHRASE."
        )
    try:
        from intake.desk.web.origin import AddressError, is_loopback, public
        from intake.desk.web.passphrase import Passphrase, PassphraseError, given, made_up
        from intake.desk.web.server import Settings
    except ModuleNotFoundError as missing:
        if (missing.name or "").partition(".")[0] == "intake":
            raise
        raise InputError(_INSTALL) from missing
    try:
        address = public(args.public_url) if args.public_url else None
        words = given(args.passphrase_file)
        made = made_up() if words is None else ""
        passphrase = Passphrase(made or words or "")
    except (AddressError, PassphraseError) as fault:
        raise InputError(f"intake serve: {fault}.") from fault
    settings = Settings(
        passphrase=passphrase, words=desk_words, host=args.host, port=args.port, public=address, most=args.desks
    )
    at = address.origin if address else _address(args.host, args.port)
    lines = [f"The desk is served at {at} (Ctrl+C stops it)."]
    lines += [f"Passphrase for this run, told once: {made}"] if made else []
    if not is_loopback(args.host):
        safe = address is not None and address.scheme == "https"
        lines += cautions(args.host, safe)
    return keep_serving(settings, lines)


def _address(host: str, port: int) -> str:
    """What to type into a browser on this computer, or on another one that knows this one's name."""
    from socket import gethostname

    name = gethostname() if host in ("0.0.0.0", "::") else host
    return f"http://{f'[{name}]' if ':' in name else name}:{port}"


def cautions(host: str, behind_tls: bool) -> list[str]:
    """What to know before others can reach it."""
    lines = [
        f"Caution: every computer that can reach {host} can try the passphrase, and whoever knows it sees all cases. "
        "Let the firewall pass your own people only."
    ]
    if not behind_tls:
        lines.append(
            "Caution: without TLS passphrase and talks can be read on the way. Put a reverse proxy with TLS before "
            "it, listen on 127.0.0.1, and give its address with --public-url https://..."
        )
    return lines


def desk_words(sitting: str) -> Sequence[str]:
    """The command that opens the desk of a sitting."""
    return sys.executable, "-m", "intake", "desk", "--sitting", sitting


def keep_serving(settings: "Settings", lines: Sequence[str]) -> int:
    """Serve; one line where the port cannot be had."""
    import asyncio

    from intake.desk.web.server import serve

    try:
        asyncio.run(serve(settings, _tell, lines))
    except OSError as fault:
        raise InputError(
            f"intake serve: {settings.host} port {settings.port} cannot be had ({fault.strerror or fault}). Is it "
            "in use, or not an address of this computer? Choose with --host and --port."
        ) from fault
    _tell(["Stopped. What was said is kept."])
    return 0


def _tell(lines: Sequence[str]) -> None:
    for line in lines:
        print(line, flush=True)


def _port(text: str) -> int:
    if not (text.isascii() and text.isdigit() and 0 < int(text) < 65536):
        raise argparse.ArgumentTypeError("a port is a number from 1 to 65535")
    return int(text)


def _desks(text: str) -> int:
    if not (text.isascii() and text.isdigit() and 0 < int(text) <= 200):
        raise argparse.ArgumentTypeError("give a number from 1 to 200")
    return int(text)
