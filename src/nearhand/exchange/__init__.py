"""Files of other programs: reading them as melodies and chords."""
