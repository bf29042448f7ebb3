"""``singer``: a tune's span and singers' ranges, read from words; the keys that fit."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

import nearhand
from nearhand.melody.ranges import VOICES, Voice
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of
from nearhand.verbs.following import after_option
from nearhand.verbs.singer_reading import read_singers, read_span
from nearhand.verbs.table import BY_NAME

C_MAJOR, A_MINOR = parse_key("C"), parse_key("A minor")
TUNE_HINT = "write its lowest and highest note in its own key: C4 E5, as degrees: 5 3, or the whole melody"
RANGE_HINT = (
    "write the singer's lowest and highest note, such as A3 D5, and behind them those of the comfortable part, or a "
    "kind of voice, such as alto"
)
KEY_HINT = 'put --key C, or chords: singer "| C | F |" --tune ...'
WALK = "C4 D4 E4 F4 | G4 - A4 - | G4 F4 E4 D4 | C4 - - -"
"""A tune of our own: the middle half of its time lies from C4 to G4, and C5 is not reached."""


# Text, key, semitones from the lowest to the highest note, semitones of the lowest above the tonic: counted by hand.
# With octave marks degrees are those of a melody: unmarked ones lie in the octave from the tonic up.
DEGREES = [
    ("1 5", C_MAJOR, 7, 0), ("5 3", C_MAJOR, 9, 7), ("5_ 3'", C_MAJOR, 21, 7), ("1 1", C_MAJOR, 0, 0),
    ("5 3'", C_MAJOR, 9, 7), ("5_ 3", C_MAJOR, 9, 7), ("sol_ mi", C_MAJOR, 9, 7), ("sol mi", C_MAJOR, 9, 7),
    ("1 1'", C_MAJOR, 12, 0), ("7 b7", C_MAJOR, 11, 11), ("#4 4", C_MAJOR, 11, 6), ("b3 ♯4", C_MAJOR, 3, 3),
    ("1 3", A_MINOR, 3, 0), ("7 1", A_MINOR, 2, 10), ("#7 1", A_MINOR, 1, 11), ("5 6''", A_MINOR, 25, 7),
    ("1, 3", A_MINOR, 3, 0), ("le ti", C_MAJOR, 3, 8), ("b1 1", C_MAJOR, 1, 11),
]  # fmt: skip


@pytest.mark.parametrize(("text", "key", "width", "above_tonic"), DEGREES)
def test_degrees_are_those_of_the_mode_and_rise_from_the_first(text, key, width, above_tonic):
    found = read_span(text, key)

    assert found.is_free
    assert found.high - found.low == width
    assert (found.low - key.tonic.semitones) % 12 == above_tonic


def test_degrees_are_counted_as_the_conventions_say():
    # the third degree of A minor is 3, and b3 against the major scale on A (common practice, no source)
    assert read_span("1 3", A_MINOR, Conventions(degrees="major")).width == 4
    assert read_span("1 b3", A_MINOR, Conventions(degrees="major")).width == 3


def test_notes_and_voices_are_read_and_parted_by_semicolons():
    assert read_span("G3 E5", C_MAJOR)[:4] == (55, 76, False, ())
    assert [(voice.name, voice.low, voice.high) for voice in read_singers(" alto ;C3 G4; bass")] == [
        ("alto", 53, 77), ("", 48, 67), ("bass", 40, 64),
    ]  # fmt: skip


def test_four_notes_are_a_range_and_its_comfortable_part():
    assert read_singers("A3 D5 C4 A4; A3,D5, C4,A4; C3 C4 C3 C4") == (
        Voice("", 57, 74, 60, 69), Voice("", 57, 74, 60, 69), Voice("", 48, 60, 48, 60),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("text", "name"),
    [("Alto", "alto"), ("contralto", "alto"), ("MEZZO", "mezzo-soprano"), ("mezzo soprano", "mezzo-soprano")],
)
def test_a_kind_of_voice_has_other_names_and_capitals(text, name):
    assert read_singers(text) == (VOICES[name],)


@given(st.text(alphabet="ABCDEFGab#;, 0123456789'_soprnt|:", max_size=20))
def test_whatever_is_told_is_read_or_refused_with_its_place(text):
    for read in (read_singers, lambda text: read_span(text, A_MINOR)):
        try:
            read(text)
        except InputError as error:
            assert error.what
            assert 0 <= error.start <= error.end <= len(text) or error.start == len(text)


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


TUNES = st.sampled_from(["C4 E5", "5_ 3'", WALK, "Eb: {2}1 [2 3](tr) - r | 5:4", "sol_ do' mi", ""]) | st.text(
    alphabet="ABCG12345'_#b| -[]{}():r", max_size=14
)


@pytest.mark.parametrize("text", ["A3-D5", "A3 to D5", "a3 d5", "a3–d5", "A3 - d5", "A3,D5"])
def test_a_range_is_read_as_players_write_it(text):
    assert read_singers(text) == read_singers("A3 D5")


def test_a_range_in_one_word_may_stand_beside_chords_or_a_file(tmp_path):
    (tmp_path / "tune.abc").write_text("X:1\nL:1/4\nK:C\nCEGc|\n")
    told = [answer_to(f"singer {what} --range A3-D5") for what in (f"'{tmp_path}/tune.abc'", 'C --tune "C4 C5"')]

    assert [answer.singers for answer in told] == [read_singers("A3 D5")] * 2


def test_a_tune_too_wide_for_several_singers_is_told_in_one_list():
    page = text_of(draw(answer_to('singer --key C --tune "C3 E6" --range "alto; tenor; C3 G4"'), Page(200)))

    assert "range of alto, 16 semitones wider than the range of tenor and 21 semitones wider than the range of" in page


def test_flats_and_the_comfortable_part_are_read_so_too():
    assert read_singers("bb2-eb4 c3-d4; alto") == read_singers("Bb2 Eb4 C3 D4; alto")


RANGES = st.sampled_from(["alto", "A3 D5 C4 A4; bass", "C0 B8", "G3 G3", ""]) | st.text(
    alphabet="ABCG345#b; ", max_size=14
)


@given(TUNES, RANGES, st.sampled_from(["", "guitar", "horn, guitar", "kazoo"]), st.sampled_from(["", "--key F#m"]))
def test_any_tune_for_any_singer_is_answered_or_refused_in_the_line(tune, range_, band, key):
    line = f'singer --tune "{tune}" --range "{range_}" {key}' + (f' --for "{band}"' if band else "")
    try:
        answer = answer_to(line)
    except InputError as error:
        assert error.what
        assert 0 <= error.start <= len(error.text)
        return
    for layout in ("drawn", "spoken"):
        shown = answer._replace(conventions=answer.conventions._replace(layout=layout))
        assert max(len(row) for row in text_of(draw(shown, Page(40, plain=True))).split("\n")) <= 40
    json_answer(answer)


# Ends in a key, another key that fits, and the ends there: spelled as they are in the tune, whatever the scale of the
# key would make of them (intervals are kept: common practice, no source).
SPELLED = [
    ('--key "D minor" --tune "C#4 D5"', "B minor", "A#3 B4"), ('--key "D minor" --tune "#7_ 1\'"', "C minor", "B3 C5"),
    ('--key "D minor" --tune "C#4 D4 A4 D5"', "Bb minor", "A3 Bb4"), ('--key C --tune "Eb4 C5"', "A major", "C4 A4"),
    ('--key C --tune "D#4 C5"', "A major", "B#3 A4"), ('--tune "Ab: {#1}2 3 4 1\'"', "A major", "A#3 A4"),
]  # fmt: skip


@pytest.mark.parametrize(("words", "key", "ends"), SPELLED)
def test_the_ends_are_spelled_as_in_the_tune(words, key, ends):
    found = json.loads(json_answer(answer_to(f'singer {words} --range "G3 E5"')))
    places = [fit["places"][0] for fit in found["fits"] if fit["key"] == key]

    assert [f"{place['low']} {place['high']}" for place in places] == [ends]


@pytest.mark.parametrize("example", BY_NAME["singer"].examples)
def test_the_examples_of_the_help_are_answered(example):
    assert answer_to(example, after("C: | C | F | G7 | C |")).fits


def test_kinds_of_voices_may_follow_the_range():
    (option,) = [option for option in BY_NAME["singer"].options if option.name == "range"]

    assert [word for word, _ in after_option(option).words] == list(VOICES)


def test_the_melody_on_the_stand_is_the_tune():
    session = after("C: | C | F | G7 | C |", f"melody {WALK}", "to Eb")
    by_itself = answer_to("singer --range alto", session)
    told = answer_to(f'singer --tune "{WALK}" --range alto', after("C: | C | F | G7 | C |"))

    assert str(by_itself.key) == "C major"  # its own key, not the shown one
    assert by_itself == told
    assert by_itself.sung.span.times
    assert by_itself.fits[0].places[0].comfortable == 100


def test_a_melody_alone_is_ranked_too_and_its_key_found():
    alone = answer_to("singer --range alto", after(f"melody {WALK}"))
    told = answer_to(f'singer --tune "{WALK}" --range alto')

    assert [fit.key for fit in alone.fits] == [fit.key for fit in told.fits]
    assert (alone.key, alone.sung.runner_up) == (C_MAJOR, None)  # it was told when the melody was put there
    assert told.sung.runner_up is not None


def test_the_octave_that_a_melody_is_shown_in_is_the_one_it_is_written_in():
    session = after(f"melody C: {WALK}")
    low = answer_to("singer --range baritone", after("octave down", start=session))
    high = answer_to("singer --range baritone", session)

    assert [fit.key for fit in low.fits] == [fit.key for fit in high.fits]
    assert (high.fits[0].places[0].octaves, low.fits[0].places[0].octaves) == (-1, 0)


def test_two_ends_go_before_the_melody_on_the_stand():
    session = after(f"melody C: {WALK}")
    answer = answer_to('singer --tune "C4 D5" --range "A3 C5"', session)

    assert not answer.sung.span.times
    assert [str(fit.key.tonic) for fit in answer.fits] == ["Bb", "A"]


def test_a_melody_with_another_key_in_front_is_a_tune_of_its_own():
    answer = answer_to('singer --tune "Eb: 1 2 3 4 | 5 - - -" --range alto', after("C: | C | F | G7 | C |"))

    assert str(answer.key) == "Eb major"
    assert str(answer_to('singer --tune "Eb: 1 2 3 4 | 5 - - -" --range alto').key) == "Eb major"


def test_a_melody_stands_over_the_meters_of_the_chords():
    answer = answer_to('singer "C: [3/4] | C | G7 |" --tune "C4 D4 E4 | D4 - -" --range alto')

    assert dict(answer.sung.span.times) == {0: 8, 2: 32, 4: 8}


def test_a_chart_file_with_a_melody_needs_no_tune(tmp_path):
    path = tmp_path / "walk.toml"
    section = f'[[sections]]\nchords = "| C | F | G7 | C |"\nmelody = "{WALK}"\n'
    path.write_text(f'title = "Walk"\nkey = "C"\n{section}')

    assert answer_to(f'singer "{path}" --range alto').sung.span.times


def test_no_key_fits_tells_by_how_much_and_in_which_bars():
    # C4 to E5 is a tenth, 16 semitones; E3 to F4 has 13
    answer = answer_to('singer --key C --tune "C4 D4 E4 - | G4 - A4 - | G4 E4 D4 C4 | E5 - - -" --range "E3 F4"')
    page = " ".join(text_of(draw(answer, Page(80, plain=True))).split())

    assert answer.fits == ()
    assert answer.wider_by == (3,)
    assert (answer.too_low, answer.too_high) == ((1, 3), (4,))
    assert "No key fits: the tune is 3 semitones wider than the range. The nearest goes 2 semitones too far" in page
    assert "It lies too low in bars 1, 3. It lies too high in bar 4." in page
    assert "passes the range by 1 below and 2 above" in page


def test_a_note_at_the_very_end_of_a_range_is_not_too_far():
    # an octave in eleven semitones: one end passes the range by one, the other one lies at its edge
    answer = answer_to('singer --key C --tune "C4 E4 G4 - | C5 - - -" --range "C4 B4"')

    assert answer.nearest.room in (((0, -1),), ((-1, 0),))
    assert (answer.too_low, answer.too_high) in (((), (2,)), ((1,), ()))
    assert bool(answer.too_low) == (answer.nearest.places[0].below < 0)


def test_no_key_for_all_is_told_where_each_singer_has_one():
    # an octave in ranges of an octave: C to C alone, and C sharp to C sharp alone
    answer = answer_to('singer --key C --tune "C4 C5" --range "C4 C5; C#4 C#5"')
    page = " ".join(text_of(draw(answer, Page(80, plain=True))).split())

    assert answer.wider_by == (0, 0)
    assert "No key fits all singers, though each could sing the tune in a key of their own." in page
    assert "The nearest goes 1 semitone too far" in page


REFUSED = [
    ("singer --key C --tune 5 3 --range alto", "two notes are needed here", "singer --key C --tune 5^ 3 --range alto",
     'put quotes round them: --tune "C4 E5"'),
    ('singer --key C --tune "5 3" --range A3 D5', "two notes are needed here",
     'singer --key C --tune "5 3" --range A3^ D5', 'put quotes round them: --range "A3 D5"'),
    ('singer --tune "C4 D5" --range alto', "singer needs the tune's key", "singer --tune C4 D5 --range alto^",
     KEY_HINT),
    ('singer --tune "5 3" --range alto', "5 needs a key to be read in", "singer --tune ^5 3 --range alto", KEY_HINT),
    ('singer --tune "sol mi" --range alto', "sol needs a key to be read in", "singer --tune ^sol mi --range alto",
     KEY_HINT),
    ('singer --tune "E4 3 1" --range alto', "3 needs a key to be read in", "singer --tune E4 ^3 1 --range alto",
     'put the key in front, as in "G: 5 3 1", or write note names'),
    ("singer --key C --range alto", "singer needs --tune", "singer --key C --range alto^", TUNE_HINT),
    ("singer", "singer needs --tune", "singer^", TUNE_HINT),
    ('singer --key C --tune "C4 D5"', "singer needs --range", "singer --key C --tune C4 D5^", RANGE_HINT),
    ("singer --key C --tune C4 --range alto", "two notes are needed here", "singer --key C --tune C4^ --range alto",
     TUNE_HINT),
    ("singer --key C --tune 5 --range alto", "two degrees are needed here", "singer --key C --tune 5^ --range alto",
     TUNE_HINT),
    ('singer --key C --tune "5 8" --range alto', "'8' is no degree", 'singer --key C --tune "5 ^8" --range alto',
     TUNE_HINT),
    ('singer --key C --tune "5 b" --range alto', "'b' is no degree", 'singer --key C --tune "5 ^b" --range alto',
     TUNE_HINT),
    ('singer --key C --tune "5 3x" --range alto', "'3x' is no degree", 'singer --key C --tune "5 ^3x" --range alto',
     TUNE_HINT),
    ('singer --key C --tune "5 3_" --range alto', "5 lies above 3_", 'singer --key C --tune "^5 3_" --range alto',
     "marks are those of a melody: 5_ 3, or 5 3', or 1 1'"),
    ("singer --key C --tune \"1 1''''''\" --range alto", "1'''''' lies outside the MIDI numbers 0 to 127",
     "singer --key C --tune \"1 ^1''''''\" --range alto", "take octave marks away"),
    ('singer --key C --tune "1______ 1" --range alto', "1______ lies outside the MIDI numbers 0 to 127",
     'singer --key C --tune "^1______ 1" --range alto', "take octave marks away"),
    ('singer --key C --tune "C4 C9" --range alto', "C lies outside the octaves 0 to 8",
     'singer --key C --tune "C4 C^9" --range alto',
     "write notes with their octaves, for example E4 G4 B4; middle C is C4"),
    ('singer --key C --tune "C4 D4 G9\'" --range alto', "G10 lies outside the MIDI numbers 0 to 127",
     'singer --key C --tune "C4 D4 ^G9\'" --range alto', "write it in a nearer octave; middle C is C4"),
    ('singer --key C --tune "C4 E5" --range "C-1 C4"', "C lies outside the octaves 0 to 8",
     'singer --key C --tune "C4 E5" --range "C^-1 C4"',
     "write notes with their octaves, for example E4 G4 B4; middle C is C4"),
    ('singer --key C --tune "D5 C4" --range alto', "D5 lies above C4", 'singer --key C --tune "^D5 C4" --range alto',
     TUNE_HINT),
    ('singer --key C --tune "r r r" --range alto', "there are only rests in this melody",
     'singer --key C --tune "r r r^" --range alto', TUNE_HINT),
    ('singer --key C --tune "C4 D4 H4" --range alto', "H4 is no note", 'singer --key C --tune "C4 D4 ^H4" --range alto',
     "write B for B natural and Bb for B flat"),
    ('singer --key C --tune "C4 D5" --range "D5 A3"', "D5 lies above A3",
     'singer --key C --tune "C4 D5" --range "^D5 A3"', RANGE_HINT),
    ('singer --key C --tune "C4 D5" --range "A3 D5 A4 C4"', "A4 lies above C4",
     'singer --key C --tune "C4 D5" --range "A3 D5 ^A4 C4"', RANGE_HINT),
    ('singer --key C --tune "C4 D5" --range "alto; A3 D5 G3 A4"', "G3 lies outside the range from A3 to D5",
     'singer --key C --tune "C4 D5" --range "alto; A3 D5 ^G3 A4"',
     "the comfortable part lies within the range, for example A3 D5 C4 A4"),
    ('singer --key C --tune "C4 D5" --range "A3 D5 C4 E5"', "E5 lies outside the range from A3 to D5",
     'singer --key C --tune "C4 D5" --range "A3 D5 C4 ^E5"',
     "the comfortable part lies within the range, for example A3 D5 C4 A4"),
    ('singer --key C --tune "C4 D5" --range "A3 D5 C4"', "two notes or four are needed here",
     'singer --key C --tune "C4 D5" --range "A3 D5 C4^"', RANGE_HINT),
    ('singer --key C --tune "C4 D5" --range "alto; altto"', "'altto' is no kind of voice",
     'singer --key C --tune "C4 D5" --range "alto; ^altto"', "did you mean alto?"),
    ('singer --key C --tune "C4 D5" --range Countertenor', "'Countertenor' is no kind of voice",
     'singer --key C --tune "C4 D5" --range ^Countertenor',
     "write one of soprano, mezzo-soprano, alto, tenor, baritone, bass"),
    ('singer --key C --tune "C4 D5" --range "alto;"', "there are no notes here",
     'singer --key C --tune "C4 D5" --range "alto;^"',
     "write notes with their octaves, for example E4 G4 B4; middle C is C4"),
    ('singer --key C --tune "C4 D5" --range alto --for tubba', "'tubba' is no instrument here",
     'singer --key C --tune "C4 D5" --range alto --for ^tubba', "did you mean tuba?"),
    ("singer --key H --tune C4 --range alto", "'H' is no key", "singer --key ^H --tune C4 --range alto",
     "write a key such as E minor, Bb major, F#m, or D dorian"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "sentence", "marked", "hint"), REFUSED)
def test_what_is_missing_or_upside_down_is_refused_at_its_place(line, sentence, marked, hint):
    found = picture(refusal(line))

    assert (found[0], found[2]) == (sentence, hint)
    assert found[1].replace('"', "") == marked.replace('"', "")


def page_of(line, width=80):
    return text_of(draw(answer_to(line), Page(width, plain=True)))


@pytest.mark.parametrize("width", [40, 80, 120])
@pytest.mark.parametrize(
    "range_",
    ["A3 C5", "alto; tenor", "A3 B4", "C4 C4", "A3 C5 C4 G4", "soprano; bass; mezzo", "C0 B8; alto; alto"],
)
@pytest.mark.parametrize("tune", ["C4 D5", "5 3", WALK, "1 2 3 4 | [5 6] 5 - 5_ | 1"])
def test_every_page_has_its_caution_and_keeps_to_its_width(tune, range_, width):
    page = page_of(f'singer --key F --tune "{tune}" --range "{range_}" --for "alto sax, guitar" --plain', width)

    assert max(map(len, page.split("\n"))) <= width
    assert "asks a teacher or a doctor" in " ".join(page.split())
    assert page.isascii()


def test_the_ruler_shows_where_the_tune_lies():
    rows = page_of('singer --key C --plain --tune "C4 D5" --range "A3 C5"').split("\n")

    assert rows[1] == "             C4"  # a minor third above A3
    assert rows[2] == "singer    ...----------..."
    assert rows[4] == "Bb major   ==============="  # from Bb3 to C5: one half step right of A3
    assert rows[6] == "A major   ==============="


PAGE_OF_A_DUET = """\
The tune spans 9 semitones in C major. Half of its time lies from C4 to G4.
               C3          C4          C5
alto                ..-----------------......
    F3 to F5, comfortable from G3 to B4
baritone  ..------------------...
    G2 to F4, comfortable from A2 to D4
Db major                    ########==
                ########==
    1 semitone up
    alto: Db4 to Bb4, comfortable all the time, never at the top; room: 8 below,
    7 above
    baritone: Db3 to Bb3, an octave lower, comfortable all the time, never at
"""
NARROW_PAGE = """\
The tune spans 9 semitones in C major.
Half of its time lies from C4 to G4.
              C3    C4    C5
soprano             .--------....
    C4 to C6, comfortable from D4 to F5
bass      .---------...
    E2 to E4, comfortable from G2 to B3
D major              ####=
               ####=
    2 semitones up
    soprano: D4 to B4, comfortable all
    the time, never at the top; room: 2
    below, 13 above
    bass: D3 to B3, an octave lower,
    comfortable all the time, never at
"""


def test_the_page_of_a_duet_at_eighty_columns():
    line = f'singer --key C --plain --tune "{WALK}" --range "alto; baritone" --for "alto sax, guitar"'

    assert page_of(line).startswith(PAGE_OF_A_DUET)


def test_the_page_at_forty_columns_takes_fewer_signs():
    page = page_of(f'singer --key C --plain --tune "{WALK}" --range "soprano; bass"', 40)

    assert page.startswith(NARROW_PAGE)
    assert "one sign 2 half steps" in " ".join(page.split())


def test_the_document_names_keys_notes_and_room():
    found = json.loads(json_answer(answer_to('singer --key C --tune "C4 D5" --range "A3 C5"')))

    def fit(key, shift, ends, room, accidentals):
        low, high = ends.split()
        place = {"low": low, "high": high, "octaves": 0, "room": dict(zip(("below", "above"), room, strict=True))}
        places = [place | {"comfortable": None, "at_top": None}]
        return {"key": key, "shift": shift, "places": places, "accidentals": accidentals, "instruments": []}

    assert found == {
        "schema": 1,
        "key": "C major",
        "key_source": "given",
        "semitones": 14,
        "half_of_time": None,
        "singers": [{"name": None, "low": "A3", "high": "C5", "comfort_low": "C4", "comfort_high": "A4"}],
        "fits": [fit("Bb major", -2, "Bb3 C5", (1, 0), 2), fit("A major", -3, "A3 B4", (0, 1), 3)],
        "nearest": None,
        "wider_by": [0],
        "too_low_in_bars": [],
        "too_high_in_bars": [],
    }


def test_the_document_tells_times_octaves_and_instruments():
    line = f'singer --key C --tune "{WALK}" --range baritone --for guitar'
    found = json.loads(json_answer(answer_to(line)))
    place = found["fits"][0]["places"][0]

    assert found["half_of_time"] == {"low": 0, "high": 7}
    assert (place["octaves"], place["comfortable"], place["at_top"]) == (-1, 100, 0)
    assert found["fits"][0]["instruments"] == [{"name": "guitar", "key": "C major", "fret": 0}]


def test_for_ears_there_is_no_ruler_and_one_fact_a_line():
    answer = answer_to('singer --key C --tune "C4 D5" --range "A3 C5" --layout spoken')
    rows = text_of(draw(answer, Page(120, plain=False))).split("\n")

    assert rows[:3] == [
        "The tune spans 14 semitones in C major.",
        "singer: A3 to C5, comfortable from C4 to A4.",
        "B flat major: B flat 3 to C5, 2 semitones down; room: 1 below, none above.",
    ]
    assert not any("===" in row or "---" in row for row in rows)


def test_for_ears_each_singer_and_the_band_have_their_sentence():
    line = f'singer --key C --tune "{WALK}" --range "alto; baritone" --for guitar --layout spoken'
    rows = text_of(draw(answer_to(line), Page(120, plain=False))).split("\n")

    assert rows[4:8] == [
        "C major: in its own key.",
        "alto: C4 to A4, comfortable all the time, never at the top; room: 7 below, 8 above.",
        "baritone: C3 to A3, an octave lower, comfortable all the time, never at the top; room: 5 below, 8 above.",
        "guitar: no capo, shapes of C major.",
    ]


def test_a_singer_of_a_kind_that_stands_twice_has_a_number():
    page = page_of('singer --key C --tune "C4 D5" --range "alto; A3 C5; alto" --plain')

    assert [row.split("  ")[0] for row in page.split("\n")[2:7:2]] == ["alto 1", "singer 2", "alto 3"]


def test_the_library_takes_ends_or_the_melody_of_a_tune():
    tune = after("C: | C | F | G7 | C |", f"melody {WALK}").tune
    told = nearhand.singers_keys(tune, "C4 D5", "A3 C5")
    own = nearhand.singers_keys(tune, singers="alto", instruments="alto sax")

    assert [(str(fit.key), fit.shift, fit.room) for fit in told] == [
        ("Bb major", -2, ((1, 0),)), ("A major", -3, ((0, 1),)),
    ]  # fmt: skip
    assert own[0].places[0].comfortable == 100
    assert own[0].readings[0].instrument.name == "alto sax"


def test_the_library_refuses_a_tune_without_melody_and_no_singer():
    tune = nearhand.parse_progression("| C | F | G7 | C |")

    with pytest.raises(InputError, match="no melody"):
        nearhand.singers_keys(tune, singers="alto")
    with pytest.raises(InputError, match="no notes here"):
        nearhand.singers_keys(tune, "C4 D5")
