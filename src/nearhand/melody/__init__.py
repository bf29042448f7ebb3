"""Tunes and the voices that sing them: ranges, and the keys in which a tune lies well."""
