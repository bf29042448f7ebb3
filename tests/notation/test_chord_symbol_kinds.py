"""Chord symbols: every kind that is built on a root, in every written form."""

from __future__ import annotations

import pytest
from strategies import MAJOR_TONICS, names, note, notes

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.chord_words import CHANGES, COMPLETE
from nearhand.notation.conventions import PLAIN
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import Chord
from nearhand.theory.quality import QUALITIES

# Kind, tones on C, written forms; what we write stands first. Kinds and intervals: MusicXML 4.0 schema,
# kind-value; spelling computed. Forms with a star are attested in R. Hutchinson, *Music Theory for the
# 21st-Century Classroom*, "Jazz Chord Basics" and "Chord Symbol Specifics"; the others are common practice,
# no source.
KINDS = [
    ("major", "C E G", "C* CM Cmaj CMaj Cma CMa"),
    ("minor", "C Eb G", "Cm* C-* Cmi Cmin CMin C−"),
    ("augmented", "C E G#", "Caug C+* C(#5) C(+5) C(♯5)"),
    ("diminished", "C Eb Gb", "Cdim C°* Cº Co Cm(b5) Cmb5 C-b5 Cm-5"),
    ("dominant", "C E G Bb", "C7* Cdom7 Cd7 C⁷"),
    (
        "major-seventh",
        "C E G B",
        "Cmaj7* CM7 CMa7 CMaj7 Cma7 CΔ7 CΔ C△7 C△ C∆7 C∆ C^7 C^ Cj7 Cj C7M C(maj7) Cmaj⁷ CΔ⁷",
    ),
    ("minor-seventh", "C Eb G Bb", "Cm7* C-7 Cmi7 Cmin7 CMin7 C−7 Cm⁷"),
    ("diminished-seventh", "C Eb Gb Bbb", "Cdim7 C°7* Cº7 Co7 C°⁷"),
    ("augmented-seventh", "C E G# Bb", "C7#5* C+7* C7+5 Caug7 C7(#5) C7(+5) C7+ C⁺⁷ C⁷♯⁵"),
    (
        "half-diminished",
        "C Eb Gb Bb",
        "Cm7b5* Cø7* Cø CØ7 CØ C-7(b5) C-7b5 C-7-5 Cmin7b5 Cmi7b5 Cm7(b5) Cm7-5 Chdim7 Chdim Cø⁷ Cm⁷⁽♭⁵⁾",
    ),
    (
        "major-minor",
        "C Eb G B",
        "Cm(maj7)* CmM7 CmMaj7 C-Δ7 C-Δ CmΔ Cmin(maj7) C-M7 Cmi(ma7) Cm(M7) Cmmaj7 Cm#7 Cm(#7) Cm+7",
    ),
    ("major-sixth", "C E G A", "C6* Cmaj6 CM6 C⁶"),
    ("minor-sixth", "C Eb G A", "Cm6* C-6* Cmin6 Cmi6 C-⁶"),
    ("dominant-ninth", "C E G Bb D", "C9* Cdom9 C⁹"),
    ("major-ninth", "C E G B D", "Cmaj9* CM9 CΔ9 Cma9 C△9 C^9 Cj9"),
    ("minor-ninth", "C Eb G Bb D", "Cm9* C-9 Cmin9 Cmi9"),
    ("dominant-11th", "C E G Bb D F", "C11* Cdom11 C¹¹"),
    ("major-11th", "C E G B D F", "Cmaj11* CM11 CΔ11 Cma11"),
    ("minor-11th", "C Eb G Bb D F", "Cm11 C-11 Cmin11"),
    ("dominant-13th", "C E G Bb D F A", "C13* Cdom13 C¹³"),
    ("major-13th", "C E G B D F A", "Cmaj13 CM13 CΔ13 Cma13"),
    ("minor-13th", "C Eb G Bb D F A", "Cm13 C-13 Cmin13"),
    ("suspended-second", "C D G", "Csus2* Csus9* C(sus2)"),
    ("suspended-fourth", "C F G", "Csus4* Csus* C4 C(sus4) C(sus)"),
    ("power", "C G", "C5* C(no3) Cno3 Comit3 C(omit3) C(no3rd)"),
    # The schema names these and gives no intervals; the written forms are ours, on the chord's lowest note.
    ("Italian", "C E A#", "C7(It6) CIt6 CIt"),
    ("French", "C E F# A#", "C7(Fr43) CFr43 CFr6 CFr"),
    ("German", "C E G A#", "C7(Ger65) CGer65 CGer6 CGer"),
    ("pedal", "C", "Cped"),
    ("Tristan", "C F# A# D#", "CTristan"),
]


def forms(written):
    return written.replace("*", "").split()


ROWS = [(kind, tones, form) for kind, tones, written in KINDS for form in forms(written)]


def test_the_table_holds_every_kind_once():
    assert sorted(kind for kind, _, _ in KINDS) == sorted(QUALITIES)  # all that are chords by themselves
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


def test_the_three_kinds_without_tones_of_their_own_are_written_otherwise():
    # kind-value: Neapolitan is a major chord by its degree, other is its degrees, none is no chord
    c_major = parse_key("C")
    neapolitan = parse_numeral("N6", c_major.mode).in_key(c_major)

    assert neapolitan == parse_chord("Db/F")
    assert write_chord(parse_chord("C7(b9,#11)"), PLAIN) == "C7(b9,#11)"
    assert resolve(read_chart("N.C."), c_major).relative_chords == ()


# Symbol, kind, what is added, altered or left out as tones on C. MusicXML 4.0 schema, degree-type and
# degree-alter: with "add" the alteration is relative to a dominant chord, with "alter" and "subtract" to the
# kind.
DEGREES = [
    ("C7b9", "dominant", "+Db"), ("C7#9", "dominant", "+D#"), ("C(add9)", "major", "+D"),
    ("Cmaj7#11", "major-seventh", "+F#"), ("C(add7)", "major", "+Bb"), ("C(add#7)", "major", "+B"),
    ("C7(add13)", "dominant", "+A"), ("C7b13", "dominant", "+Ab"), ("C7b5", "dominant", "-G +Gb"),
    ("Cmaj7#5", "major-seventh", "-G +G#"), ("C9#11", "dominant-ninth", "+F#"),
    ("C13#11", "dominant-13th", "-F +F#"), ("C7(no5)", "dominant", "-G"), ("C(no5)", "major", "-G"),
    ("C9(no3)", "dominant-ninth", "-E"), ("C7sus4", "suspended-fourth", "+Bb"),
    ("C13sus4", "suspended-fourth", "+Bb +D +A"), ("Cm(add9)", "minor", "+D"), ("C(b5)", "major", "-G +Gb"),
    ("C7alt", "dominant", "-G +Gb +G# +Db +D#"), ("Cmaj13(no11)", "major-13th", "-F"),
]  # fmt: skip


@pytest.mark.parametrize(("symbol", "kind", "degrees"), DEGREES)
def test_degrees_are_added_altered_and_taken_away_as_the_schema_says(symbol, kind, degrees):
    tones = set(Chord(note("C"), QUALITIES[kind], note("C")).tones)
    for degree in degrees.split():
        assert (note(degree[1:]) in tones) == (degree[0] == "-")
        tones ^= {note(degree[1:])}

    assert set(parse_chord(symbol).tones) == tones


WHOLE = "ped pedal Tristan alt 7alt It It6 7(It6) Fr Fr6 Fr43 7(Fr43) Ger Ger6 Ger65 7(Ger65) Sw Sw6 Sw43 7(Sw43)"


def test_the_words_that_say_everything_are_known():
    assert set(WHOLE.split()) == COMPLETE  # ours: to these chords nothing is added


@pytest.mark.parametrize("word", WHOLE.split())
def test_nothing_may_be_added_to_a_word_that_says_everything(word):
    for change in CHANGES:
        with pytest.raises(InputError):
            parse_chord(f"C{word}({change})")


@pytest.mark.parametrize("form", ["C7♯5", "C7(♯5)", "Cm7♭5", "C7♭9", "B♭7♯11", "F♯m7♭5"])
def test_signs_are_read_like_keyboard_characters(form):
    plain = form.replace("♭", "b").replace("♯", "#")

    assert parse_chord(form) == parse_chord(plain)
    assert write_chord(parse_chord(plain), PLAIN).isascii()


@pytest.mark.parametrize(("large", "small"), [("CM7", "Cm7"), ("CM", "Cm"), ("CM9", "Cm9"), ("CM6", "Cm6")])
def test_after_the_root_a_capital_m_is_major_and_a_small_one_minor(large, small):
    assert not parse_chord(large).quality.has_minor_third  # common practice, no source
    assert parse_chord(small).quality.has_minor_third
