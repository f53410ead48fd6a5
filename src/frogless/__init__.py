"""Frogless: a body, a swatch and a design become a crochet pattern in whole stitches, proven right."""

__version__ = "0.1.0"
