"""Facts that figures give, one file a kind of figure, and answers to the question asked."""
