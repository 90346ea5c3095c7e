"""The desk in a browser: who may come in, one desk process for each who did, and the page that shows it.

Only this folder knows the web library, and it knows neither the talk nor the screen: it starts `intake desk` and
passes bytes on.
"""
