"""Answers to text: for a screen, for a pipe, as JSON. No music is worked out here."""
