"""One module a verb: words in, an answer (a value) out. Shared by the shell, the command line and the library."""
