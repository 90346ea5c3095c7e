"""What the desk says before anybody has said anything, and its help page."""

WELCOME = (
    "Paste what the visitor wrote, or type while listening, and press Enter.",
    "The desk shows what it understood, which machines stand, and the next question to send.",
    "First time here? Ctrl+T puts a sample message on the line; Enter sends it. F1 is help.",
)

SAMPLE = (
    "Hi, we make oat drink and need to get shrink-wrapped trays, 400 x 300 x 200 mm, 9 kg, up to a mezzanine. "
    "About 25 a minute, 32 at peak. They come in at 0.8 m and leave at 4.2 m."
)

HELP = """\
THE LOOP
  Paste or type the visitor's words, Enter sends them. Ctrl+J starts a new line.
  The desk says what it understood and from which words, and shows the next question.
  Ctrl+Y copies that question, to be sent as it is.

KEYS
  F1      this page
  F2      facts; Enter on one, then type what it is now
  F3      machines; Enter on one shows every check with formula, inputs and source
  F4      what is still to ask, and what is not asked and why; Enter asks it now
  F5      advice: recommendation, how settled, how high and fast, room, delivery, tests, what to find out
  F6      the visitor does not know
  F7      the visitor will check and tell later
  F8      back to the last question
  F9      undo; F12 redo
  F10     what if: the typed words as a change (60 a minute, a freezer); nothing of it is kept
  PgUp    back through the conversation; PgDn forward
  Ctrl+Y  copy the question, and show it ready to select
  Ctrl+N  keep the typed words as a note
  Ctrl+T  put a sample message on the line
  Ctrl+P  all commands by name
  Ctrl+Q  leave, after asking

THE VISITOR ASKS
  A question in the visitor's words ("can it go in a freezer?") is found, and a draft of the answer stands below it,
  with this case's figures. Without a good match it says so and goes to engineering as an open point.

SIGNS
  + fits: every check holds for all that is plausible
  ? depends: on what is named behind it
  - out: it fails whatever the rest may be
  ~ assumed: nobody said it; something usual stands in

CORRECTING
  "sorry, 45" or "it is 45 kg, not 40" replaces what stood. Two different figures are asked about.
  Nothing is lost: undo and redo go all the way back.

KEEPING
  intake desk NAME keeps the talk under that name, each step before the screen shows it.
  NOT SAVED above the answer line says that the book could not be written, and why; the work goes on.

LIMITS OF USE
  First sizing for discussion. Final selection, guarding, emergency stops, load holding, structure, electrical work,
  classified areas and food contact belong to licensed practice, the manufacturer's engineers and local codes.
"""
