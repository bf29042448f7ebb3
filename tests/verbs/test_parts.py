"""``parts``: what a band reads."""

from __future__ import annotations

import json

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
    answer = answer_to(f'parts --plain --for "{names}"', after(FALLING_BASS))
    for width in (40, 80, 120):
        page = text_of(draw(answer, Page(width, plain=True)))
        assert max(map(len, page.split("\n"))) <= width
        assert page.isascii()
        assert page.count(": reads ") == len(INSTRUMENTS)


def test_the_document_has_what_is_read():
    found = json.loads(json_answer(answer_to('parts "| Eb | Ab | Bb7 |" --key Eb --for "alto sax, guitar"')))

    sax, guitar = found["parts"]
    assert sax == {"instrument": "alto sax", "key": "C major", "semitones": 9, "symbols": ["C", "F", "G7"], "capos": []}
    assert guitar["capos"][0] == {"fret": 1, "shapes": "D major", "symbols": ["D", "G", "A7"], "open": 3}


@pytest.mark.parametrize(
    ("line", "sentence", "marked", "hint"),
    [
        ("parts --for altosax", "'altosax' is no instrument here", "parts --for ^altosax", "did you mean alto sax?"),
        ('parts --for "tuba, hon"', "'hon' is no instrument here", 'parts --for "tuba, ^hon"', "did you mean horn?"),
        ('parts --for "tuba,"', "an instrument is missing", 'parts --for "tuba,^"', ""),
    ],
)
def test_a_wrong_name_is_refused_at_its_place(line, sentence, marked, hint):
    found = picture(refusal(line, after(FALLING_BASS)))

    assert (found[0], found[1].replace('"', "")) == (sentence, marked.replace('"', ""))
    assert found[2].startswith(hint or "write one of ")


def test_for_ears_every_chord_has_its_line():
    answer = answer_to('parts "| Eb | Bb7 |" --key Eb --for "alto sax" --layout spoken')

    assert text_of(draw(answer, Page(80, plain=False))).split("\n") == [
        "It sounds in E flat major.",
        "",
        "alto sax: reads C major, no sharps or flats; sounds in E flat major.",
        "Chord 1: C, C major.",
        "Chord 2: G7, G dominant seventh.",
    ]
