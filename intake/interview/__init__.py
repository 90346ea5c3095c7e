"""Which question comes next, which are left out and why; the question tree and its checks."""
