"""Practice with scripted visitors: the place kept for it in the layers. Nothing is here yet."""
