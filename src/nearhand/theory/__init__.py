"""The values of music theory: integers on the line of fifths, no input or output, standard library alone."""
