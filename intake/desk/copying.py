"""Copying by way of the terminal (OSC 52): it is sent once, and no answer comes back."""

import os

from textual.app import App


def copy_out(app: App[object], text: str) -> str:
    """Send text to the clipboard. Returns what to tell the person: some terminals throw it away without a word."""
    app.copy_to_clipboard(text)
    if os.environ.get("TMUX"):
        return "Copied, if tmux lets it through (set -g set-clipboard on). Ctrl+Y again shows it to select."
    return "Copied. Nothing in the clipboard? Ctrl+Y again shows it to select."


def is_deaf() -> bool:
    """True for a terminal that is known to take no clipboard text from programs."""
    return os.environ.get("TERM_PROGRAM") == "Apple_Terminal" or os.environ.get("TERM") == "linux"
