"""The letters of a message: cut in portions, folded, tables found, tokens, lines and sentences, what they are about."""
