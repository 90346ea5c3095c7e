"""The full-screen desk. It shows and passes on; all judgement is in the talk below it."""
