"""``singer``: a tune's span and singers' ranges, read from words; the keys that fit."""

from __future__ import annotations

import json

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

from nearhand.notation.keys import parse_key
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of
from nearhand.verbs.singer import read_singers, read_span

C_MAJOR, A_MINOR = parse_key("C"), parse_key("A minor")
TUNE_HINT = "write its lowest and highest note, as it is sung in its own key: C4 E5, or as degrees: 5 3"
RANGE_HINT = "write the singer's lowest and highest note, such as A3 D5, or a kind of voice, such as alto"
KEY_HINT = 'put --key C, or chords: singer "| C | F |" --tune ...'


# Text, key, semitones from the lowest to the highest note, semitones of the lowest above the tonic: counted by hand.
DEGREES = [
    ("1 5", C_MAJOR, 7, 0), ("5 3", C_MAJOR, 9, 7), ("5 3'", C_MAJOR, 21, 7), ("1 1", C_MAJOR, 0, 0),
    ("1 1'", C_MAJOR, 12, 0), ("7 b7", C_MAJOR, 11, 11), ("#4 4", C_MAJOR, 11, 6), ("b3 ♯4", C_MAJOR, 3, 3),
    ("1 3", A_MINOR, 3, 0), ("7 1", A_MINOR, 2, 10), ("#7 1", A_MINOR, 1, 11), ("5 6''", A_MINOR, 25, 7),
]  # fmt: skip


@pytest.mark.parametrize(("text", "key", "width", "above_tonic"), DEGREES)
def test_degrees_are_those_of_the_mode_and_rise_from_the_first(text, key, width, above_tonic):
    found = read_span(text, key)

    assert found.is_free
    assert found.high - found.low == width
    assert (found.low - key.tonic.semitones) % 12 == above_tonic


def test_notes_and_voices_are_read_and_parted_by_semicolons():
    assert read_span("G3 E5", C_MAJOR) == (55, 76, False)
    assert [(voice.name, voice.low, voice.high) for voice in read_singers(" alto ;C3 G4; bass")] == [
        ("alto", 53, 77), ("", 48, 67), ("bass", 40, 64),
    ]  # fmt: skip


def test_the_key_is_the_tunes_own_whatever_key_is_shown():
    session = after(FALLING_BASS, "to C minor")
    answer = answer_to('singer --tune "E4 B4" --range "A3 D5"', session)

    assert str(answer.key) == "E minor"
    again = answer_to('singer --key "E minor" --tune "E4 B4" --range "A3 D5"')
    assert [fit.shift for fit in answer.fits] == [fit.shift for fit in again.fits]
    assert all(str(fit.key).endswith("minor") for fit in answer.fits)


def test_nothing_of_the_session_changes():
    session = after(FALLING_BASS)

    assert after('singer --tune "E4 B4" --range alto', start=session) is session


REFUSED = [
    ("singer --key C --tune 5 3 --range alto", "two notes are needed here", "singer --key C --tune 5^ 3 --range alto",
     'put quotes round them: --tune "C4 E5"'),
    ('singer --key C --tune "5 3" --range A3 D5', "two notes are needed here",
     'singer --key C --tune "5 3" --range A3^ D5', 'put quotes round them: --range "A3 D5"'),
    ('singer --tune "C4 D5" --range alto', "singer needs the tune's key", "singer --tune C4 D5 --range alto^",
     KEY_HINT),
    ("singer --key C --range alto", "singer needs --tune", "singer --key C --range alto^", TUNE_HINT),
    ('singer --key C --tune "C4 D5"', "singer needs --range", "singer --key C --tune C4 D5^", RANGE_HINT),
    ("singer --key C --tune C4 --range alto", "two notes are needed here", "singer --key C --tune C4^ --range alto",
     TUNE_HINT),
    ("singer --key C --tune 5 --range alto", "two degrees are needed here", "singer --key C --tune 5^ --range alto",
     TUNE_HINT),
    ('singer --key C --tune "5 8" --range alto', "'8' is no degree", 'singer --key C --tune "5 ^8" --range alto',
     TUNE_HINT),
    ('singer --key C --tune "5 b" --range alto', "'b' is no degree", 'singer --key C --tune "5 ^b" --range alto',
     TUNE_HINT),
    ('singer --key C --tune "D5 C4" --range alto', "D5 lies above C4", 'singer --key C --tune "^D5 C4" --range alto',
     TUNE_HINT),
    ('singer --key C --tune "C4 D5" --range "D5 A3"', "D5 lies above A3",
     'singer --key C --tune "C4 D5" --range "^D5 A3"', RANGE_HINT),
    ('singer --key C --tune "C4 D5" --range "alto; altto"', "'altto' is no kind of voice",
     'singer --key C --tune "C4 D5" --range "alto;^ altto"', "did you mean alto?"),
    ('singer --key C --tune "C4 D5" --range "alto;"', "there are no notes here",
     'singer --key C --tune "C4 D5" --range "alto;^"',
     "write notes with their octaves, for example E4 G4 B4; middle C is C4"),
    ("singer --key H --tune C4 --range alto", "'H' is no key", "singer --key ^H --tune C4 --range alto",
     "write a key such as E minor, Bb major, F#m, or D dorian"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "sentence", "marked", "hint"), REFUSED)
def test_what_is_missing_or_upside_down_is_refused_at_its_place(line, sentence, marked, hint):
    found = picture(refusal(line))

    assert (found[0], found[2]) == (sentence, hint)
    assert found[1].replace('"', "") == marked.replace('"', "")


@pytest.mark.parametrize("width", [40, 80, 120])
@pytest.mark.parametrize("range_", ["A3 C5", "alto; tenor", "A3 B4", "C4 C4"])
def test_every_page_has_its_caution_and_keeps_to_its_width(range_, width):
    answer = answer_to(f'singer --key F --plain --tune "C4 D5" --range "{range_}"')
    page = text_of(draw(answer, Page(width, plain=True)))

    assert max(map(len, page.split("\n"))) <= width
    assert "asks a teacher or a doctor" in " ".join(page.split())
    assert page.isascii()


def test_the_ruler_shows_where_the_tune_lies():
    page = text_of(draw(answer_to('singer --key C --plain --tune "C4 D5" --range "A3 C5"'), Page(80, plain=True)))
    rows = page.split("\n")

    assert rows[1] == "singer    ...----------..."
    assert rows[3] == "Bb major   ==============="  # from Bb3 to C5: one half step right of A3
    assert rows[5] == "A major   ==============="


def test_the_document_names_keys_notes_and_room():
    found = json.loads(json_answer(answer_to('singer --key C --tune "C4 D5" --range "A3 C5"')))

    assert found == {
        "schema": 1,
        "key": "C major",
        "semitones": 14,
        "singers": [{"name": None, "low": "A3", "high": "C5", "comfort_low": "C4", "comfort_high": "A4"}],
        "fits": [
            {"key": "Bb major", "shift": -2, "low": "Bb3", "high": "C5", "room": [{"below": 1, "above": 0}]},
            {"key": "A major", "shift": -3, "low": "A3", "high": "B4", "room": [{"below": 0, "above": 1}]},
        ],
        "nearest": None,
        "lacking": 0,
    }


def test_for_ears_there_is_no_ruler_and_one_fact_a_line():
    answer = answer_to('singer --key C --tune "C4 D5" --range "A3 C5" --layout spoken')
    rows = text_of(draw(answer, Page(120, plain=False))).split("\n")

    assert rows[:3] == [
        "The tune spans 14 semitones in C major.",
        "singer: A3 to C5, comfortable from C4 to A4.",
        "B flat major: B flat 3 to C5, 2 semitones down; room: 1 below, none above.",
    ]
    assert not any("===" in row or "---" in row for row in rows)
