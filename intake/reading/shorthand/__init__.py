"""Staff shorthand spelt out in words that the reader knows; every place still leads back to the text as typed."""
