"""German and solfege names of notes, held beside music21's; what stays English; and which names are shown."""

from __future__ import annotations

import json
import re

import pytest
from hypothesis import given
from music21 import pitch as music21_pitch
from strategies import pitch_classes

from nearhand.notation.accidentals import write_accidental
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import DEFAULT, NAMES, Conventions
from nearhand.notation.keys import key_name, parse_key, write_key
from nearhand.notation.note_names import NAMERS, WHICH
from nearhand.notation.notes import note_name, parse_pitch_class, pitch_name, write_pitch, write_pitch_class
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of
from nearhand.theory.pitch import Pitch
from nearhand.theory.pitch_class import PitchClass
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

GERMAN, SOLFEGE = Conventions(names="german"), Conventions(names="solfege")

# German names: common practice, no source. B natural is H, B flat is B, its double flat Heses (music21 has it so too).
GERMAN_NAMES = [
    ("C", "C"), ("C#", "Cis"), ("Cb", "Ces"), ("C##", "Cisis"), ("Db", "Des"), ("D#", "Dis"), ("Dbb", "Deses"),
    ("Eb", "Es"), ("Ebb", "Eses"), ("E#", "Eis"), ("Fb", "Fes"), ("F#", "Fis"), ("F##", "Fisis"), ("Gb", "Ges"),
    ("G#", "Gis"), ("Ab", "As"), ("Abb", "Ases"), ("A#", "Ais"), ("B", "H"), ("Bb", "B"), ("Bbb", "Heses"),
    ("B#", "His"),
]  # fmt: skip
# Fixed do: common practice, no source.
SOLFEGE_NAMES = [
    ("C", "Do"), ("D", "Re"), ("E", "Mi"), ("F", "Fa"), ("G", "Sol"), ("A", "La"), ("B", "Si"), ("Bb", "Si♭"),
    ("F#", "Fa♯"), ("Ebb", "Mi𝄫"), ("F##", "Fa𝄪"),
]  # fmt: skip
ITALIAN_SIGNS = {"": 0, " diesis": 1, " doppio diesis": 2, " triplo diesis": 3, " bemolle": -1, " doppio bemolle": -2,
                 " triplo bemolle": -3}  # fmt: skip


@pytest.mark.parametrize(("english", "german"), GERMAN_NAMES)
def test_german_names(english, german):
    assert note_name(parse_pitch_class(english), GERMAN) == german


@pytest.mark.parametrize(("english", "syllable"), SOLFEGE_NAMES)
def test_fixed_do_names(english, syllable):
    assert note_name(parse_pitch_class(english), SOLFEGE) == syllable


@pytest.mark.parametrize("fifths", range(-22, 27))
def test_names_agree_with_music21_in_german_and_italian(fifths):
    # music21 9, Pitch.german and Pitch.italian; Italian puts the sign in a word behind the syllable
    note = PitchClass(fifths)
    theirs = music21_pitch.Pitch(str(note).replace("b", "-"))
    syllable, blank, sign = theirs.italian.partition(" ")

    assert note_name(note, GERMAN) == theirs.german
    assert note_name(note, SOLFEGE) == syllable.capitalize() + write_accidental(ITALIAN_SIGNS[blank + sign], False)


@pytest.mark.parametrize("names", NAMES)
@given(pitch_classes)
def test_no_two_notes_have_one_name(names, note):
    conventions = Conventions(names=names)
    others = [PitchClass(fifths) for fifths in range(-22, 27) if fifths != note.fifths]

    assert note_name(note, conventions) not in {note_name(other, conventions) for other in others}


@given(pitch_classes)
def test_english_names_are_those_of_the_writer_and_plain_ones_are_ascii(note):
    assert note_name(note, DEFAULT) == write_pitch_class(note)
    assert pitch_name(Pitch(note, 4), DEFAULT) == write_pitch(Pitch(note, 4))
    assert all(namer(note, plain=True).isascii() for namer in NAMERS.values())


def test_octaves_are_counted_as_with_english_names():
    middle_c, below = Pitch(PitchClass(0), 4), Pitch(PitchClass(5), 3)

    assert [pitch_name(middle_c, each) for each in (DEFAULT, GERMAN, SOLFEGE)] == ["C4", "C4", "Do4"]
    assert [pitch_name(below, each) for each in (DEFAULT, GERMAN, SOLFEGE)] == ["B3", "H3", "Si3"]


def test_keys_are_in_english_words_with_the_tonic_named_anew():
    keys = [parse_key(text) for text in ("Bm", "Bb", "Eb", "F# dorian")]

    assert [key_name(key, GERMAN) for key in keys] == ["H minor", "B major", "Es major", "Fis dorian"]
    assert [key_name(key, SOLFEGE) for key in keys] == ["Si minor", "Si♭ major", "Mi♭ major", "Fa♯ dorian"]
    assert [key_name(key, DEFAULT) for key in keys] == [write_key(key) for key in keys]


@pytest.mark.parametrize("text", ["Bm7", "B♭m7/A♭", "F♯7", "D//C7"])
def test_chord_symbols_stay_international(text):
    assert write_chord(parse_chord(text), GERMAN) == write_chord(parse_chord(text), SOLFEGE) == text


LINES = [
    "show", "show --voicing none", "show --to all", "lines", "explain", "explain 2", "why 2", "others", "keys",
    "cadences", "borrow", "instead 2", "show --voicing four-part",
    "show --voicing upper-structure --register 'Bb3 Bb5'",
]  # fmt: skip
CHART = "| Bm | F#7 | Em/B | Gdim | B |"


def page(line, **conventions):
    session = Session(conventions=Conventions(**conventions))
    session = respond(session, CHART).session
    return text_of(draw(respond(session, line).answer, Page(80)))


@pytest.mark.parametrize("names", ["german", "solfege"])
@pytest.mark.parametrize("line", LINES)
def test_every_page_says_which_names_it_shows(line, names):
    shown = " ".join(page(line, names=names).split())

    assert shown.endswith(WHICH[names])
    assert WHICH[names] not in " ".join(page(line).split())


@pytest.mark.parametrize("line", LINES)
def test_no_english_name_with_an_octave_is_left_on_a_page(line):
    """Octaves are 1 to 6 on these pages, and no chord symbol of the chart has a figure below 7."""
    for names, english in (("german", r"\b[A-G][♯♭𝄪𝄫]+[1-6]\b"), ("solfege", r"\b[A-G][♯♭𝄪𝄫]?[1-6]\b")):
        assert not re.search(english, page(line, names=names).replace("Do4.", ""))


def test_every_kind_of_note_on_pages_is_named_in_german():
    # B minor has F sharp and C sharp: Fis and Cis; its leading tone is A sharp: Ais (common practice, no source)
    assert "H minor: 2 sharps (Fis Cis)" in page("show", names="german")
    assert "Fis Ais Cis E" in page("show --voicing none", names="german")
    assert "the 7th degree is raised to Ais, the leading tone" in " ".join(page("explain", names="german").split())
    assert "H lies in the bass: second inversion" in " ".join(page("explain", names="german").split())
    assert "Chords that H minor may borrow from the other modes on H" in " ".join(
        page("borrow", names="german").split()
    )
    assert "H minor" in page("keys", names="german")
    assert "upper notes from B3 to B5" in page("show --register 'Bb3 Bb5'", names="german")
    assert "in H minor" in page("why 2", names="german")


@pytest.mark.parametrize("line", LINES)
def test_documents_stay_english(line):
    session = respond(Session(), CHART).session
    english = json_answer(respond(session, line).answer)
    german = json_answer(respond(session._replace(conventions=GERMAN), line).answer)

    assert json.loads(german) == json.loads(english)


def test_the_option_is_for_one_answer_and_the_verb_for_all():
    session = respond(Session(), "C: | C | G7 |").session

    option = respond(session, "show --names german")
    assert "H3" in text_of(draw(option.answer, Page(80)))
    assert option.session.conventions.names == "english"

    kept = respond(session, "names german").session
    assert kept.conventions.names == "german"
    assert "H3" in text_of(draw(respond(kept, "show").answer, Page(80)))


def test_what_is_typed_stays_english_and_so_do_refusals():
    session = respond(respond(Session(), "names german").session, "| B | E |").session

    assert str(session.tune.key) == "B major"
    assert "H is no chord root" in _refusal(session, "| H | E |")
    assert "B natural" in _refusal(session, "| H | E |")


def _refusal(session, line):
    with pytest.raises(ValueError, match=r".") as caught:
        respond(session, line)
    return str(caught.value)
