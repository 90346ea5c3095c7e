"""One message laid open, with the words the questions know: what all facts are found in."""
