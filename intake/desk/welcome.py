"""What the desk says before anybody has said anything, and a message to try it with."""

WELCOME = (
    "Paste what the visitor wrote, or type while listening. What is understood lights up in the words; Enter takes it.",
    "The next question then stands ready to be sent: Ctrl+Y copies it. Machines and facts stand beside it.",
    "First time here? Tab puts a sample message on the line, Enter sends it. F1 is help, Ctrl+P all commands.",
)

SAMPLE = (
    "Hi, we make oat drink and need to get shrink-wrapped trays, 400 x 300 x 200 mm, 9 kg, up to a mezzanine. "
    "About 25 a minute, 32 at peak. They come in at 0.8 m and leave at 4.2 m."
)
