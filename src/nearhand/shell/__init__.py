"""The interactive shell: the only place that reads a terminal."""
