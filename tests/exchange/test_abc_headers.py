"""What the fields of an ABC tune say, and which tune and voice of a file is read. ABC standard 2.1, from memory."""

from __future__ import annotations

import pytest
from exchange.abc_words import NAME, abc, notes_of, refusal, tune_of

from nearhand.exchange.abc_files import read_abc
from nearhand.theory.progression import Meter

# A key field; the key; how F, C and B without accidentals sound in it. ABC 2.1, 3.1.14.
KEYS = [
    ("C", "C major", "F C B"), ("G", "G major", "F# C B"), ("D", "D major", "F# C# B"), ("F", "F major", "F C Bb"),
    ("Bb", "Bb major", "F C Bb"), ("C#", "C# major", "F# C# B#"), ("Cb", "Cb major", "Fb Cb Bb"),
    ("Gmaj", "G major", "F# C B"), ("G major", "G major", "F# C B"), ("GM", "G major", "F# C B"),
    ("Am", "A minor", "F C B"), ("Emin", "E minor", "F# C B"), ("E Minor", "E minor", "F# C B"),
    ("F#m", "F# minor", "F# C# B"), ("Bbm", "Bb minor", "F C Bb"), ("am", "A minor", "F C B"),
    ("D dor", "D dorian", "F C B"), ("ADor", "A dorian", "F# C B"), ("E phrygian", "E phrygian", "F C B"),
    ("F lyd", "F lydian", "F C B"), ("Amix", "A mixolydian", "F# C# B"), ("A Mixolydian", "A mixolydian", "F# C# B"),
    ("Gaeo", "G aeolian", "F C Bb"), ("Cion", "C ionian", "F C B"), ("B loc", "B locrian", "F C B"),
    ("D ^c=f", "D major", "F C# B"), ("D dor ^c", "D dorian", "F C# B"), ("Dmix=c ^f", "D mixolydian", "F# C B"),
    ("D exp ^f", "D mixolydian", "F# C B"), ("D exp _b ^f", "D major", "F# C Bb"), ("D exp _b", "D minor", "F C Bb"),
    ("G clef=bass", "G major", "F# C B"), ("Gm treble", "G minor", "F C Bb"), ("D alto middle=C", "D major", "F# C# B"),
    ("HP", "A mixolydian", "F# C# B"), ("Hp", "A mixolydian", "F# C# B"),
    ("none", "C major", "F C B"), ("", "C major", "F C B"), ("none ^f", "C major", "F# C B"),
    ("^f^c", "C major", "F# C# B"),
    ("G % one sharp", "G major", "F# C B"),
]  # fmt: skip


@pytest.mark.parametrize(("field", "key", "sounds"), KEYS)
def test_a_key_field_names_a_key_and_alters_letters(field, key, sounds):
    tune = tune_of("F C B z|]", key=field)

    assert str(tune.key) == key
    assert [str(note.pitch.pitch_class) for note in tune.melody.sounding()] == sounds.split()


@pytest.mark.parametrize(("field", "octave"), [("C treble-8", 3), ("C clef=treble+8", 5), ("C octave=-2", 2), ("C", 4)])
def test_a_clef_may_set_the_octave(field, octave):
    """ABC 2.1, 4.6."""
    assert tune_of("C4|]", key=field).melody.sounding()[0].pitch.octave == octave


def test_a_change_of_key_alters_letters_from_there_on_and_the_tonic_stays():
    tune = tune_of("F C F C|[K:D]F C F2|\nK:Gmin\nB4|E2 [K:C] E2|]")

    assert notes_of(tune) == "[4/4] F4 C4 F4 C4 | F#4 C#4 F#4:2 | Bb4:4 | Eb4:2 E4:2"
    assert str(tune.key) == "C major"
    assert str(tune.melody.tonic) == "C4"
    assert [remark for remark in tune.remarks if "key" in remark] == [
        "From bar 2 the key is D major; the degrees stay in C major.",
        "From bar 3 the key is G minor; the degrees stay in C major.",
        "From bar 4 the key is C major; the degrees stay in C major.",
    ]


# A meter field; the meter. ABC 2.1, 3.1.6.
@pytest.mark.parametrize(
    ("field", "meter"),
    [
        ("4/4", Meter(4, 4)),
        ("C", Meter(4, 4)),
        ("C|", Meter(2, 2)),
        ("12/8", Meter(12, 8)),
        ("(2+3+2)/8", Meter(7, 8)),
        ("2 + 3/16", Meter(5, 16)),
        ("none", None),
        ("", None),
    ],
)
def test_a_meter_field_names_a_meter(field, meter):
    assert tune_of("C|]", field).meter == meter


def test_without_a_meter_field_there_is_no_meter():
    """ABC 2.1, 3.1.6: free meter is assumed."""
    tune = read_abc("X:1\nK:C\nC2D2|E2|]", NAME)

    assert (tune.meter, notes_of(tune)) == (None, "[2/4] C4 D4 | [1/4] E4")


# A tempo field, a meter, beats a minute in the meter's units. ABC 2.1, 3.1.8.
@pytest.mark.parametrize(
    ("field", "meter", "tempo"),
    [
        ("1/4=120", "4/4", 120),
        ('"Lively" 1/2=60', "4/4", 120),
        ("1/8=180", "6/8", 180),
        ("1/4 = 60", "6/8", 120),
        ("3/8=100", "6/8", None),
        ('"Slow"', "4/4", None),
        ("120", "4/4", None),
        ("1/4=9", "4/4", None),
        ("1/0=9", "4/4", None),
    ],
)
def test_a_tempo_counts_in_beats_of_the_meter(field, meter, tempo):
    assert read_abc(f"X:1\nM:{meter}\nQ:{field}\nK:C\nC|]", NAME).tempo_bpm == tempo


@pytest.mark.parametrize(
    ("field", "title"),
    [
        ("Two Doors", "Two Doors"),
        (r"Caf\'e and M\"uller", "Café and Müller"),
        (r"\ss \ae \oe \/o \aa \cc \~n \^o \u00e9 \%", "ß æ œ ø å ç ñ ô é %"),
        ("Fish &amp; Caf&eacute;", "Fish & Café"),
        ("A title % and a comment", "A title"),
    ],
)
def test_titles_have_their_accents(field, title):
    """ABC 2.1, 8.2."""
    assert read_abc(f"X:1\nT:{field}\nT:another\nK:C\nC|]", NAME).title == title


def test_a_sign_may_be_set_to_another_decoration():
    """ABC 2.1, 4.16."""
    assert notes_of(read_abc("X:1\nM:4/4\nL:1/4\nU:n=!turn!\nU: T = +mordent+\nK:C\nnC TD PE F|]", NAME)) == (
        "[4/4] C4(turn) D4(mordent) E4(inverted-mordent) F4"
    )
    assert notes_of(tune_of("C D E F|\nU:~=!trill!\n~C4|]")) == "[4/4] C4 D4 E4 F4 | C4(tr):4"


BOOK = """%abc-2.1
M:3/4
L:1/4
% a book of three

X:7
T:One
K:C
C D E|

some words between tunes

X:2
T:Two
M:2/4
K:G
F A|
X:3
K:F
B3|
"""


def test_the_first_of_several_tunes_is_read_and_the_file_header_holds_for_all():
    """ABC 2.1, 2.2 and 2.3."""
    tune = read_abc(BOOK, NAME)

    assert (tune.title, notes_of(tune)) == ("One", "[3/4] C4 D4 E4")
    assert tune.remarks == (
        "The file holds 3 tunes; this is the first. For another write its number (X:) behind the name of the file.",
    )


@pytest.mark.parametrize(
    ("number", "title", "notes"), [(7, "One", "[3/4] C4 D4 E4"), (2, "Two", "[2/4] F#4 A4"), (3, "", "[3/4] Bb4:3")]
)
def test_a_tune_is_chosen_by_its_number(number, title, notes):
    tune = read_abc(BOOK, NAME, number)

    assert (tune.title, notes_of(tune), tune.remarks) == (title, notes, ())


def test_a_number_that_no_tune_has_is_refused_with_those_there_are():
    with pytest.raises(ValueError, match="there is no tune 4 here") as caught:
        read_abc(BOOK, NAME, 4)

    assert str(caught.value) == f"{NAME}: there is no tune 4 here\nthe tunes here are numbered 7, 2, 3"


def test_what_a_tune_does_not_need_may_be_broken_elsewhere():
    assert read_abc(BOOK + "\nX:what\nC [\n", NAME).title == "One"
    assert "is no number" in refusal("X:what\nK:C\nC").what


def test_a_tune_without_a_number_is_read():
    assert notes_of(read_abc("T:x\nL:1/4\nK:G\nF|]", NAME)) == "[1/4] F#4"
    assert notes_of(read_abc("X:\nL:1/4\nK:G\nF|]", NAME)) == "[1/4] F#4"


def test_a_block_of_text_is_no_music():
    """ABC 2.1, 11.4.3."""
    text = abc("C4|\n%%begintext\nnot music ][ at all\n%%endtext\nD4|]")

    assert notes_of(read_abc(text, NAME)) == "[4/4] C4:4 | D4:4"


def test_music_behind_an_empty_line_is_left_out_and_told():
    """ABC 2.1, 2.2.1: an empty line ends a tune."""
    tune = tune_of("C4|\n\nD4|")

    assert notes_of(tune) == "[4/4] C4:4"
    assert tune.remarks == ("There is more music behind an empty line, which ends a tune; it is left out.",)


# A tune with voices; the notes of the first; the remark. ABC 2.1, 7.
VOICES = [
    ("V:1\nC4|D4|]\nV:2\nE4|F4|]", "[4/4] C4:4 | D4:4", "The tune has 2 voices; this is the first of them (1)."),
    ("[V:T1]C4|\n[V:B1]E4|\n[V:T1]D4|]\n[V:B1]F4|]", "[4/4] C4:4 | D4:4",
     "The tune has 2 voices; this is the first of them (T1)."),
    ("V:A clef=treble name=\"high\"\nC4|\nV:B\n[K:G]F4|\nV:A\nF4|]", "[4/4] C4:4 | F4:4",
     "The tune has 2 voices; this is the first of them (A)."),
    ("V:empty\nV:B\nC4|D4|]", "[4/4] C4:4 | D4:4", None),
    ("C4|\nV:2\nD4|]", "[4/4] C4:4", "The tune has 2 voices; this is the first of them."),
    ("K:G\nV:1\nF4|]\nV:2\nE4|]", "[4/4] F#4:4", "The tune has 2 voices; this is the first of them (1)."),
    ("V:1 octave=1\nC4|]", "[4/4] C5:4", None),
    ("C2 D2 & E4|F4|]", "[4/4] C4:2 D4:2 | F4:4", "What & sets beside the melody in a bar is left out."),
]  # fmt: skip


@pytest.mark.parametrize(("body", "notes", "remark"), VOICES)
def test_of_several_voices_the_first_with_notes_is_read(body, notes, remark):
    tune = tune_of(body)

    assert notes_of(tune) == notes
    assert [each for each in tune.remarks if "voices" in each or "&" in each] == ([remark] if remark else [])


def test_voices_may_be_named_in_the_header_with_their_clefs():
    text = "X:1\nM:4/4\nL:1/4\nV:one clef=treble-8\nV:two\nK:C\n[V:two] E4|\n[V:one] C4|\n"

    assert notes_of(read_abc(text, NAME)) == "[4/4] C3:4"


def test_lines_may_end_as_on_other_systems():
    text = abc("C D E F|G4|]")

    for end in ("\r\n", "\r"):
        assert read_abc(text.replace("\n", end), NAME) == read_abc(text, NAME)
