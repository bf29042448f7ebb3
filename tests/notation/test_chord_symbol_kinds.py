"""Chord symbols: every kind that is built on a root, in every written form."""

from __future__ import annotations

import pytest
from strategies import MAJOR_TONICS, names, note, notes

from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.theory.quality import QUALITIES

# Kind, tones on C, written forms; what we write stands first. Kinds and intervals: MusicXML 4.0 schema,
# kind-value; spelling computed. Forms with a star are attested in R. Hutchinson, *Music Theory for the
# 21st-Century Classroom*, "Jazz Chord Basics" and "Chord Symbol Specifics"; the others are common practice,
# no source.
KINDS = [
    ("major", "C E G", "C* CM Cmaj CMaj Cma"),
    ("minor", "C Eb G", "Cm* C-* Cmi Cmin"),
    ("augmented", "C E G#", "Caug C+* C(#5) C(+5)"),
    ("diminished", "C Eb Gb", "Cdim C°* Cº Co Cm(b5)"),
    ("dominant", "C E G Bb", "C7*"),
    ("major-seventh", "C E G B", "Cmaj7* CM7 Cma7 CΔ7 CΔ Cj7 C△7 C△ CMaj7 C^7 C^ Cj"),
    ("minor-seventh", "C Eb G Bb", "Cm7* C-7 Cmi7 Cmin7"),
    ("diminished-seventh", "C Eb Gb Bbb", "Cdim7 C°7* Cº7 Co7"),
    ("augmented-seventh", "C E G# Bb", "C7#5* C+7* C7+5 Caug7 C7(#5)"),
    ("half-diminished", "C Eb Gb Bb", "Cm7b5* Cø7* Cø CØ7 CØ C-7(b5) C-7b5 Cmin7b5 Cm7(b5) Cm7-5"),
    ("major-minor", "C Eb G B", "Cm(maj7)* CmM7 C-Δ7 Cmin(maj7) C-M7 Cmi(ma7) Cm(M7) Cmmaj7"),
    ("major-sixth", "C E G A", "C6* Cmaj6 CM6"),
    ("minor-sixth", "C Eb G A", "Cm6* C-6* Cmin6 Cmi6"),
    ("dominant-ninth", "C E G Bb D", "C9*"),
    ("major-ninth", "C E G B D", "Cmaj9* CM9 CΔ9 Cma9"),
    ("minor-ninth", "C Eb G Bb D", "Cm9* C-9 Cmin9"),
    ("dominant-11th", "C E G Bb D F", "C11*"),
    ("major-11th", "C E G B D F", "Cmaj11* CM11"),
    ("minor-11th", "C Eb G Bb D F", "Cm11 C-11"),
    ("dominant-13th", "C E G Bb D F A", "C13*"),
    ("major-13th", "C E G B D F A", "Cmaj13 CM13"),
    ("minor-13th", "C Eb G Bb D F A", "Cm13 C-13"),
    ("suspended-second", "C D G", "Csus2*"),
    ("suspended-fourth", "C F G", "Csus4* Csus*"),
    ("power", "C G", "C5*"),
]


def forms(written):
    return written.replace("*", "").split()


ROWS = [(kind, tones, form) for kind, tones, written in KINDS for form in forms(written)]


def test_the_table_holds_every_kind_once():
    assert sorted(kind for kind, _, _ in KINDS) == sorted(QUALITIES)
    assert len({form for _, _, form in ROWS}) == len(ROWS)


@pytest.mark.parametrize(("kind", "tones", "form"), ROWS, ids=[form for *_, form in ROWS])
def test_a_written_form_is_read_as_its_kind(kind, tones, form):
    chord = parse_chord(form)

    assert chord.quality == QUALITIES[kind]
    assert names(chord.tones) == tones
    assert chord.root == chord.bass == note("C")


@pytest.mark.parametrize(("kind", "tones", "written"), KINDS, ids=[kind for kind, _, _ in KINDS])
def test_a_kind_is_written_in_the_first_form_of_its_row(kind, tones, written):
    assert write_chord(parse_chord(forms(written)[-1]), PLAIN) == forms(written)[0]


@pytest.mark.parametrize("root", [*MAJOR_TONICS, "G#", "D#", "A#", "E#", "B#", "Fb", "F##", "Bbb"])
@pytest.mark.parametrize(("kind", "tones", "written"), KINDS, ids=[kind for kind, _, _ in KINDS])
def test_a_kind_keeps_its_intervals_on_every_root(root, kind, tones, written):
    for form in forms(written):
        chord = parse_chord(root + form[1:])

        assert chord.tones == tuple(note(root).up(tone.fifths) for tone in notes(tones))


@pytest.mark.parametrize("form", ["C7♯5", "C7(♯5)", "Cm7♭5", "C7♭9", "B♭7♯11", "F♯m7♭5"])
def test_signs_are_read_like_keyboard_characters(form):
    plain = form.replace("♭", "b").replace("♯", "#")

    assert parse_chord(form) == parse_chord(plain)
    assert write_chord(parse_chord(plain), PLAIN).isascii()


@pytest.mark.parametrize(("large", "small"), [("CM7", "Cm7"), ("CM", "Cm"), ("CM9", "Cm9"), ("CM6", "Cm6")])
def test_after_the_root_a_capital_m_is_major_and_a_small_one_minor(large, small):
    assert not parse_chord(large).quality.has_minor_third  # common practice, no source
    assert parse_chord(small).quality.has_minor_third
