"""Text to values and back: one module a notation. Whatever the input, a reader raises ``InputError`` and nothing else."""
