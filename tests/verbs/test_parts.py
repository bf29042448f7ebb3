"""``parts``: what a band reads."""

from __future__ import annotations

import json
import re

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

from nearhand.melody.instruments import INSTRUMENTS
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of


def test_without_names_there_is_one_instrument_of_each_kind():
    answer = answer_to("parts", after(FALLING_BASS))

    assert [part.instrument.name for part in answer.parts] == ["trumpet", "alto sax", "horn", "guitar", "bass"]


def test_the_band_sounds_in_the_shown_key():
    # From E minor to C minor; a trumpet reads a major second, an alto saxophone a major sixth higher (MusicXML 4.0,
    # transpose: written and sounding notes).
    answer = answer_to('parts --for "Trumpet, alto sax"', after(FALLING_BASS, "to C minor"))

    assert str(answer.key) == "C minor"
    assert [str(part.written.key) for part in answer.parts] == ["D minor", "A minor"]


def test_all_instruments_are_answered_at_every_width():
    names = ", ".join(INSTRUMENTS)
    for melody in ("", " --melody '5_ | 1 2 [3 4] b6 |'"):
        answer = answer_to(f'parts --plain --for "{names}"{melody}', after(FALLING_BASS))
        for width in (40, 80, 120):
            page = text_of(draw(answer, Page(width, plain=True)))
            assert max(map(len, page.split("\n"))) <= width
            assert page.isascii()
            assert len(re.findall(r"written\s(an?|2|as)\s", page)) == len(INSTRUMENTS)


def page_of(line, width=80, session=None):
    return text_of(draw(answer_to(line, session), Page(width, plain=False))).split("\n")


def test_the_leader_has_a_line_for_each_player():
    # concert A flat is F for an E flat instrument and B flat for one in B flat (common practice, no source)
    lines = page_of('parts "Ab: | Ab | Db | Eb7 |" --for "alto sax, trumpet, guitar"')

    assert lines[:4] == [
        "sounds in A♭, alto sax reads F: one flat",
        "sounds in A♭, trumpet reads B♭: two flats",
        "sounds in A♭, guitar reads A♭: four flats, or G with capo 1",
        "",
    ]


def test_a_part_is_a_chart_with_its_friendly_keys():
    assert page_of('parts "Eb: | Eb | Ab Bb7 |" --for "tenor saxophone"') == [
        "sounds in E♭, tenor sax reads F: one flat",
        "",
        "tenor sax, written an octave and a major second above where it sounds",
        "    | F | B♭ C7 |",
        "    friendly in major: B♭, E♭, F, C, A♭, D♭, G",
        "",
        "friendly: keys to sound in that have few accidentals or open strings for the",
        "player, easiest first",
    ]


def test_the_keys_that_are_friendly_to_all_come_last_the_nearest_first():
    lines = page_of('parts "E: | E | A |" --for "trumpet, alto sax, guitar"')

    # trumpet: concert D flat to C, alto sax: G flat to C; the guitar has a capo where the key has no open shapes
    assert " ".join(lines[-4:-2]) == (
        "Friendly to all in major, nearest first: F (capo 1), E♭ (capo 1), D♭ (capo 1), C, A♭ (capo 1), B♭ (capo 1)."
    )


def test_where_no_key_is_friendly_to_all_the_page_says_to_whom_it_is_not():
    lines = page_of('parts "D: | D | G |" --for "piccolo trumpet in A, Eb tuba treble clef, piano"')

    assert "No major key is friendly to all; to most: D (not tuba in Eb treble clef), E♭" in lines


def test_a_melody_stands_below_the_chords_in_the_octave_that_is_read():
    # A tenor saxophone reads a major ninth higher than it sounds (MusicXML 4.0: -1 -2 -1): E flat 4 is F5.
    lines = page_of('parts "Eb: | Eb | Bb7 |" --melody "Eb4 G Bb r | 7_ - 1 -" --for "tenor sax"')

    assert lines[3:7] == [
        "bar        1               2",
        "chord    | F             | C7           ||",
        "degree   | 1   3   5   r | 7_  -  1   - |",
        "note     | F5  A5  C6  r | E5  -  F5  - |",
    ]


WIDE = "parts --melody 'Eb4 G Bb Eb5 | C5 - Bb4 -' --for 'baritone sax, piccolo, double bass, guitar'"


@pytest.mark.parametrize("layout", ["drawn", "spoken"])
def test_a_melody_that_an_instrument_cannot_play_is_moved_by_octaves_and_the_page_says_so(layout):
    # Written: a baritone saxophone down to its B flat 3, a piccolo from D4, a double bass from its open E string, which
    # is written E2 (music21 10.5.1); the upper ends are from memory.
    text = " ".join(page_of(f"{WIDE} --layout {layout}", 200)).replace(" flat ", "♭").replace(" sharp ", "♯")

    assert "The melody sounds an octave lower here, to lie within B♭3 to F♯6 as written." in text
    assert "The melody sounds an octave higher here, to lie within D4 to C7 as written." in text
    assert "The melody sounds 2 octaves lower here, to lie within E2 to C5 as written." in text
    assert text.count("The melody sounds") == 3


def test_the_document_tells_the_octaves_and_the_notes_left_outside():
    # An alto saxophone reads a major sixth higher: G6 and D7 would be E7 and B7 as written, an octave lower E6 and B6;
    # it goes down to B flat 3 and up to F sharp 6.
    found = json.loads(json_answer(answer_to(f"{WIDE.partition('--for')[0]} --for 'baritone sax, guitar'")))
    low, guitar = found["parts"]
    (tall,) = json.loads(json_answer(answer_to("parts --melody 'G: D4 - - - | G6 D7 D4 -' --for 'alto sax'")))["parts"]

    assert (low["octaves"], low["outside"], low["semitones"], low["melody"][0]["midi"]) == (-1, [], 21, 72)
    assert (guitar["octaves"], guitar["outside"], guitar["compass"]) == (0, [], ["E3", "B6"])
    assert (tall["octaves"], tall["outside"]) == (-1, ["B6"])


def test_the_notes_that_no_octave_brings_inside_are_named():
    # As written B3 and F sharp 6, the very ends, for four beats each; E3, B7 and C sharp 8 for one.
    lines = page_of("parts --melody 'G: D3 - - - | A5 - - - | G2 D7 E7 r' --for 'alto sax'", 120)

    assert "    1 note lies below what the alto sax usually plays, B♭3 to F♯6 as written: E3." in lines
    assert "    2 notes lie above what the alto sax usually plays, B♭3 to F♯6 as written: B7, C♯8." in lines


def test_a_singer_is_told_to_take_care_where_there_is_a_melody():
    lines = [
        f"parts 'C: | C |' {melody} --for '{name}'"
        for melody, name in (("--melody 'C4 E4'", "soprano voice"), ("--melody 'C4 E4'", "oboe"), ("", "voice"))
    ]

    assert ["Comfort beats range" in "\n".join(page_of(line, 200)) for line in lines] == [True, False, False]
    moved = " ".join(page_of("parts --melody 'C6 E6 G6' --for 'bass voice'", 200))
    assert (
        "The melody sounds 3 octaves lower here, where it lies best for a bass voice, within E2 to E4 as written."
        in moved
    )


@pytest.mark.parametrize("layout", ["drawn", "spoken"])
def test_a_man_is_given_a_tune_of_the_treble_clef_an_octave_lower_and_told_so(layout):
    # Common practice, no source: he sings an octave below it. A tenor reads an octave above where he sounds.
    tune = "'C: | C | F | C |' --melody 'C4 E G A | A C5 A F | E - C -'"
    for name, within in (("tenor", "C4 to C6"), ("baritone", "G2 to F4"), ("bass", "E2 to E4")):
        text = " ".join(page_of(f"parts {tune} --for '{name} voice' --layout {layout}", 200))
        sentence = f"The melody sounds an octave lower here, where it lies best for a {name} voice, within {within}"
        assert f"{sentence} as written." in text
    assert "note     | C4  E4  G4  A4 | A4  C5  A4  F4 | E4  -  C4  - |" in page_of(
        f"parts {tune} --for 'tenor voice'", 200
    )
    assert "octave lower" not in " ".join(page_of(f"parts {tune} --for 'alto voice, soprano voice, voice'", 200))
    free = " ".join(page_of(f"parts --melody 'C: 1 3 5' --for 'bass voice, oboe' --layout {layout}", 200))
    middle = "nearest to the middle of what each instrument usually plays"
    assert f"without octaves: it stands {middle}, and where it lies best for each voice." in free
    # what no octave brings inside is told as for an instrument
    wide = " ".join(page_of("parts --melody 'C: C3 G3 C4 G4 C5 G5:2 r' --for 'bass voice'", 200))
    assert "The melody sounds an octave lower here, so that most of it lies within E2 to E4 as written." in wide


def test_without_chords_a_capo_is_told_by_the_key_of_its_shapes_alone():
    # Common practice, no source: F is played as E with a capo at the first fret.
    answer = answer_to("parts --melody 'F: F4 A4 C5 F4' --for guitar")
    lines = text_of(draw(answer, Page(80, plain=False))).split("\n")
    capos = json.loads(json_answer(answer))["parts"][0]["capos"]

    assert "    capo 1, shapes of E major" in lines
    assert "0 of 0" not in "\n".join(lines)
    assert capos[0] == {"fret": 1, "shapes": "E major", "symbols": [], "open": None}
    spoken = page_of("parts --melody 'F: F4 A4 C5 F4' --for guitar --layout spoken")
    assert "capo 1, shapes of E major." in spoken


@pytest.mark.parametrize("layout", ["drawn", "spoken"])
def test_a_melody_in_degrees_is_said_to_stand_in_the_middle_of_the_instrument(layout):
    line = f"parts --for oboe --layout {layout}"
    texts = ["\n".join(page_of(line, 200, after(melody))) for melody in ("melody C: 1 2 3 4", "melody C: C4 D E F")]

    assert ["The melody was given without octaves" in text for text in texts] == [True, False]


def test_a_melody_alone_is_written_too():
    answer = answer_to("parts --for 'alto sax'", after("melody C# minor: C#4 B#3 C#4 E4"))
    (part,) = answer.parts

    # a major sixth higher would be A sharp minor, seven sharps; B flat minor has five flats
    assert str(part.written.key) == "Bb minor"
    assert " ".join(map(str, part.melody.pitches())) == "Bb4 A4 Bb4 Db5"


def test_the_melody_lies_where_the_session_has_it():
    session = after("melody C: C4 E4 G4 C4", "to F")
    sessions = (session, after("octave up", start=session))
    here, up = (answer_to("parts --for flute", each).parts[0].melody for each in sessions)

    assert [note.midi for note in up.pitches()] == [note.midi + 12 for note in here.pitches()]


def test_the_document_has_what_is_read():
    found = json.loads(json_answer(answer_to('parts "| Eb | Ab | Bb7 |" --key Eb --for "alto sax, guitar"')))

    sax, guitar = found["parts"]
    keys = ("Eb", "Bb", "Ab", "F", "Db", "C", "Gb")
    assert sax.pop("friendly") == [{"key": f"{name} major", "capo": 0} for name in keys]
    assert sax == {
        "instrument": "alto sax",
        "key": "C major",
        "semitones": 9,
        "symbols": ["C", "F", "G7"],
        "compass": ["Bb3", "F#6"],
        "melody": None,
        "octaves": 0,
        "outside": [],
        "capos": [],
    }
    assert guitar["capos"][0] == {"fret": 1, "shapes": "D major", "symbols": ["D", "G", "A7"], "open": 3}
    assert found["friendly_to_all"][0] == {"key": "Eb major", "capo": 1, "hard_for": []}


def test_the_document_has_the_written_melody():
    found = json.loads(json_answer(answer_to('parts "| Eb |" --key Eb --melody "Eb4 G4" --for "alto sax"')))
    (sax,) = found["parts"]

    assert [(note["degree"], note["note"], note["midi"]) for note in sax["melody"]] == [
        ("1", "C5", 72),
        ("3", "E5", 76),
    ]


@pytest.mark.parametrize(
    ("line", "sentence", "marked", "hint"),
    [
        ("parts --for altosax", "'altosax' is no instrument here", "parts --for ^altosax", "did you mean alto sax?"),
        ('parts --for "tuba, hon"', "'hon' is no instrument here", 'parts --for "tuba, ^hon"', "did you mean horn?"),
        ('parts --for "tuba,"', "an instrument is missing", 'parts --for "tuba,^"', "write names with commas between"),
        ("parts --for kazoo", "'kazoo' is no instrument here", "parts --for ^kazoo", "write names with commas between"),
        (
            "parts --for sax",
            "'sax' is no instrument here",
            "parts --for ^sax",
            "did you mean soprano sax, alto sax, tenor sax, baritone sax or bass sax?",
        ),
        (
            'parts --for "D horn"',
            "'D horn' is no instrument here",
            'parts --for "^D horn"',
            "did you mean English horn",
        ),
        (
            "parts --for alto sax",
            "only one word is read here",
            "parts --for alto^ sax",
            'put quotes round them: --for "alto sax"',
        ),
        (
            'parts "| C |" --for tenor voice, clarinet in A',
            "only one word is read here",
            'parts "| C |" --for tenor^ voice, clarinet in A',
            'put quotes round them: --for "tenor voice, clarinet in A"',
        ),
    ],
)
def test_a_wrong_name_is_refused_at_its_place(line, sentence, marked, hint):
    found = picture(refusal(line, after(FALLING_BASS)))

    assert (found[0], found[1].replace('"', "")) == (sentence, marked.replace('"', ""))
    assert found[2].startswith(hint)


def test_a_melody_that_cannot_be_written_is_refused():
    # From C-1 to G9 are all the MIDI numbers: a saxophone's part could only be moved by octaves.
    error = refusal("parts --for 'alto sax'", after("melody C: 1_____ 5'''''"))

    assert error.what == "for alto sax, the written E10 lies outside the MIDI numbers 0 to 127"
    assert error.hint == "bring the ends of the melody nearer together"


def test_help_on_parts_names_every_instrument():
    text = text_of(draw(answer_to("help parts"), Page(80, plain=False)))

    assert all(name in " ".join(text.split()) for name in INSTRUMENTS)


def test_for_ears_every_chord_has_its_line():
    answer = answer_to('parts "| Eb | Bb7 |" --key Eb --for "alto sax, guitar" --layout spoken')
    answer = answer._replace(parts=tuple(part._replace(capos=part.capos[:1]) for part in answer.parts))

    assert text_of(draw(answer, Page(200, plain=False))).split("\n") == [
        "sounds in E flat, alto sax reads C: no sharps or flats.",
        "sounds in E flat, guitar reads E flat: three flats, or D with capo 1.",
        "",
        "alto sax, written a major sixth above where it sounds.",
        "Chord 1: C, C major.",
        "Chord 2: G7, G dominant seventh.",
        "friendly in major: E flat, B flat, A flat, F, D flat, C, G flat.",
        "",
        "guitar, written an octave above where it sounds.",
        "Chord 1: E flat, E flat major.",
        "Chord 2: B flat 7, B flat dominant seventh.",
        "capo 1, shapes of D major: 2 of 2 chords lie open, D A7.",
        "friendly in major: C, G, D, A, E; with capo 1: F, B flat, E flat, A flat, D flat; with capo 2: B, G flat.",
        "",
        "Friendly to all in major, nearest first: E flat (capo 1), F (capo 1), D flat (capo 1), C, "
        "G flat (capo 2), B flat (capo 1).",
    ]
