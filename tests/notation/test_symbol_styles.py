"""Styles of chord symbols: how each writes, and that all of them read back to the same chord."""

from __future__ import annotations

import pytest
from strategies import note

from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.chord_words import BASES, CHANGES, COMPLETE, apply_change
from nearhand.notation.conventions import SYMBOLS, Conventions
from nearhand.theory.chord import Chord
from nearhand.theory.quality import QUALITIES

ROOTS = [note(name) for name in "C D# Eb F# G Ab Bb".split()]  # noqa: SIM905
"""Each letter, and each sign on two letters at least: what follows a root is the same behind any letter."""
CHANGE_ROWS = sorted(set(CHANGES.values()))
BASE_OF = {quality: word for word, quality in reversed(BASES.items())}
CLOSED = {BASES[word] for word in COMPLETE}
CHOICES = [Conventions(symbols=symbols, plain=plain) for symbols in SYMBOLS for plain in (False, True)]

# Kind, and how it is written on B flat in each style: plain, jazz, long, compact. The forms are attested as
# written forms in R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Jazz Chord Basics" and "Chord
# Symbol Specifics" (m7b5, ø7, +7, °7, -7, maj7), or common practice, no source (Δ, min, M); which of them make a
# style together is ours.
STYLES = [
    ("major", "B♭", "B♭", "B♭", "B♭"),
    ("minor", "B♭m", "B♭-", "B♭min", "B♭m"),
    ("augmented", "B♭aug", "B♭+", "B♭aug", "B♭+"),
    ("diminished", "B♭dim", "B♭°", "B♭dim", "B♭°"),
    ("dominant", "B♭7", "B♭7", "B♭7", "B♭7"),
    ("major-seventh", "B♭maj7", "B♭Δ7", "B♭maj7", "B♭M7"),
    ("minor-seventh", "B♭m7", "B♭-7", "B♭min7", "B♭m7"),
    ("diminished-seventh", "B♭dim7", "B♭°7", "B♭dim7", "B♭°7"),
    ("augmented-seventh", "B♭7♯5", "B♭+7", "B♭aug7", "B♭+7"),
    ("half-diminished", "B♭m7♭5", "B♭ø7", "B♭min7♭5", "B♭ø7"),
    ("major-minor", "B♭m(maj7)", "B♭-Δ7", "B♭min(maj7)", "B♭m(M7)"),
    ("major-sixth", "B♭6", "B♭6", "B♭6", "B♭6"),
    ("minor-sixth", "B♭m6", "B♭-6", "B♭min6", "B♭m6"),
    ("dominant-ninth", "B♭9", "B♭9", "B♭9", "B♭9"),
    ("major-ninth", "B♭maj9", "B♭Δ9", "B♭maj9", "B♭M9"),
    ("minor-ninth", "B♭m9", "B♭-9", "B♭min9", "B♭m9"),
    ("dominant-11th", "B♭11", "B♭11", "B♭11", "B♭11"),
    ("major-11th", "B♭maj11", "B♭Δ11", "B♭maj11", "B♭M11"),
    ("minor-11th", "B♭m11", "B♭-11", "B♭min11", "B♭m11"),
    ("dominant-13th", "B♭13", "B♭13", "B♭13", "B♭13"),
    ("major-13th", "B♭maj13", "B♭Δ13", "B♭maj13", "B♭M13"),
    ("minor-13th", "B♭m13", "B♭-13", "B♭min13", "B♭m13"),
    ("suspended-second", "B♭sus2", "B♭sus2", "B♭sus2", "B♭sus2"),
    ("suspended-fourth", "B♭sus4", "B♭sus4", "B♭sus4", "B♭sus4"),
    ("power", "B♭5", "B♭5", "B♭5", "B♭5"),
    ("Italian", "B♭7(It6)", "B♭7(It6)", "B♭7(It6)", "B♭7(It6)"),
    ("French", "B♭7(Fr43)", "B♭7(Fr43)", "B♭7(Fr43)", "B♭7(Fr43)"),
    ("German", "B♭7(Ger65)", "B♭7(Ger65)", "B♭7(Ger65)", "B♭7(Ger65)"),
    ("pedal", "B♭ped", "B♭ped", "B♭ped", "B♭ped"),
    ("Tristan", "B♭Tristan", "B♭Tristan", "B♭Tristan", "B♭Tristan"),
]

# Symbol, and the same in each style: what is more than a kind. Ours, as above.
LARGER = [
    ("C7(b9,#11)", "C7(♭9,♯11)", "C7(♭9,♯11)", "C7(♭9,♯11)", "C7(♭9,♯11)"),
    ("C7sus", "C7sus4", "C7sus4", "C7sus4", "C7sus4"),
    ("C69", "C6/9", "C6/9", "C6/9", "C6/9"),
    ("Cm69", "Cm6/9", "C-6/9", "Cmin6/9", "Cm6/9"),
    ("Calt", "C7alt", "C7alt", "C7alt", "C7alt"),
    ("Cmaj7#11", "Cmaj7♯11", "CΔ7♯11", "Cmaj7♯11", "CM7♯11"),
    ("Cm9b5", "Cm9♭5", "C-9♭5", "Cmin9♭5", "Cm9♭5"),
    ("Cmadd9", "Cm(add9)", "C-(add9)", "Cmin(add9)", "Cm(add9)"),
    ("Bm7b5/F", "Bm7♭5/F", "Bø7/F", "Bmin7♭5/F", "Bø7/F"),
    ("Ebmaj7/Bb", "E♭maj7/B♭", "E♭Δ7/B♭", "E♭maj7/B♭", "E♭M7/B♭"),
    ("F#m//Bmaj7", "F♯m//Bmaj7", "F♯-//BΔ7", "F♯min//Bmaj7", "F♯m//BM7"),
]

# Symbol, and how the jazz and the compact style write it with keyboard characters only: ours.
TYPED = [
    ("Cm", "C-", "Cm"), ("Cmaj7", "Cmaj7", "CM7"), ("Cdim", "Co", "Co"), ("Cdim7", "Co7", "Co7"),
    ("Bbm7b5", "Bb-7b5", "Bb-7b5"), ("Caug", "C+", "C+"), ("C7#5", "C+7", "C+7"),
    ("Ebm7/Db", "Eb-7/Db", "Ebm7/Db"), ("C7b9", "C7b9", "C7b9"), ("Cmaj7#11", "Cmaj7#11", "CM7#11"),
]  # fmt: skip


def written(text, symbols, plain=False):
    return write_chord(parse_chord(text), Conventions(symbols=symbols, plain=plain))


@pytest.mark.parametrize(("kind", "plain", "jazz", "long", "compact"), STYLES, ids=[kind for kind, *_ in STYLES])
def test_each_style_writes_each_kind_in_its_own_way(kind, plain, jazz, long, compact):
    chord = Chord(note("Bb"), QUALITIES[kind], note("Bb"))
    found = [write_chord(chord, Conventions(symbols=symbols)) for symbols in ("plain", "jazz", "long", "compact")]

    assert found == [plain, jazz, long, compact]
    assert write_chord(chord, Conventions(symbols="ascii")) == plain.replace("♭", "b").replace("♯", "#")


def test_the_table_of_styles_holds_every_kind_and_every_style():
    assert sorted(kind for kind, *_ in STYLES) == sorted(QUALITIES)
    assert SYMBOLS == ("plain", "jazz", "long", "compact", "ascii")


@pytest.mark.parametrize(("text", "plain", "jazz", "long", "compact"), LARGER, ids=[text for text, *_ in LARGER])
def test_a_style_reaches_into_larger_symbols(text, plain, jazz, long, compact):
    assert [written(text, symbols) for symbols in ("plain", "jazz", "long", "compact")] == [plain, jazz, long, compact]


@pytest.mark.parametrize(("text", "jazz", "compact"), TYPED)
def test_a_style_has_its_keyboard_characters(text, jazz, compact):
    assert written(text, "jazz", plain=True) == jazz
    assert written(text, "compact", plain=True) == compact
    assert written(text, "plain", plain=True) == written(text, "ascii") == written(text, "ascii", plain=True)


@pytest.mark.parametrize("base", BASE_OF, ids=BASE_OF.values())
def test_every_base_with_a_change_reads_back_in_every_style_on_every_root(base):
    qualities = {base} if base in CLOSED else {base, *(apply_change(base, change) for change in CHANGE_ROWS)}
    for quality in qualities:
        for root in ROOTS:
            chord = Chord(root, quality, root)
            for text in {write_chord(chord, choice) for choice in CHOICES}:
                assert parse_chord(text) == chord, text


@pytest.mark.parametrize("base", BASE_OF, ids=BASE_OF.values())
def test_ascii_and_plain_characters_are_those_of_a_keyboard(base):
    for choice in CHOICES:
        text = write_chord(Chord(note("Db"), base, note("Gb")), choice)

        assert text.isascii() == (choice.plain or choice.symbols == "ascii")
        assert text.isprintable()
        assert " " not in text
