"""What can be typed behind a slash, on the desk and in `ask` alike. One file a subject; `table.py` has them all."""
