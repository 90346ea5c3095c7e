"""One module a family of machines."""
