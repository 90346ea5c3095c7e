"""The help page of the desk: the loop, every key, every command."""

from intake.desk.commands.table import help_lines
from intake.desk.keys import KEYS

_LOOP = """\
THE LOOP
  1. Paste or type the visitor's words. What is understood lights up:
     underlined = understood, reversed = to be asked back, slanted = not used, bold slanted = a question of theirs.
     The line below says it in words.
  2. Enter takes it. Tab puts it right first: pick the words, say what they are (or put the cursor on the word).
     Tab on an empty line puts the last message right.
  3. The next question stands above the line, worded for the visitor. Ctrl+Y copies it.
     Their own questions are answered in the conversation; Ctrl+R has every draft, Enter there copies one.
  Ctrl+J starts a new line. Arrow up brings back what was sent.

KEYS
"""

_REST = """\
  Tab     put words right; completes a command behind a slash; a sample on a new case
  PgUp    back through the conversation; PgDn forward
  ^P      all commands by name, colours
  ^Q      leave, after asking
  ^ is the Ctrl key. In a browser some Ctrl keys are the browser's own: the commands below do the same.

THE VISITOR ASKS
  A question in the visitor's words ("can it go in a freezer?") is found, and a draft of the answer stands below it,
  with this case's figures. Without a good match it says so and goes to engineering as an open point.

ON THE PHONE
  Ctrl+G: what you type counts as heard (h before the fact), and shorthand is understood. Ctrl+G again: written.

SIGNS
  + fits: every check holds for all that is plausible
  ? depends: on what is named behind it
  - out: it fails whatever the rest may be
  v visitor  h heard from the visitor  s staff  w the works  n note
  ~ assumed: nobody said it; something usual stands in

CORRECTING
  "sorry, 45" or "it is 45 kg, not 40" replaces what stood. Two different figures are asked about.
  F2, Enter on a fact: type it anew; Delete drops it. Nothing is lost: undo and redo go all the way back.

SEVERAL VISITORS
  Ctrl+O: kept cases; typing finds one by its words; Enter goes on with it. Ctrl+L: the next of those that are open.
  Each keeps what is half typed on its line.

KEEPING
  Each step is in the book before the screen shows it. Two desks may work on one case: each takes in what the other
  kept. NOT SAVED above the answer line says that the book could not be written, and why; the work goes on.

COMMANDS (typed behind a slash; Tab completes them)
"""

_LIMITS = """
LIMITS OF USE
  First sizing for discussion. Final selection, guarding, emergency stops, load holding, structure, electrical work,
  classified areas and food contact belong to licensed practice, the manufacturer's engineers and local codes.
"""


def help_text() -> str:
    """The help page: the loop, every key, every command."""
    keys = "".join(f"  {key.cap:<7} {key.does}\n" for key in KEYS)
    commands = "".join(f"  {line}\n" for line in help_lines())
    return f"{_LOOP}{keys}{_REST}{commands}{_LIMITS}"
