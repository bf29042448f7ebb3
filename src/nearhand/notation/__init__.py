"""Text to values and back, one module a notation. A reader raises ``InputError`` and nothing else."""
