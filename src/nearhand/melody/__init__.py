"""Notes over their chords, singers and their keys, what instruments read, and how hard a key is."""
