"""``top melody``: the chords under the melody, in every key and family; what cannot be carried is told, never invented.

That a pianist who plays a tune in chords puts it on top, and lays the chord close under it: common practice, no source.
"""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from verbs.session_words import after, answer_to, picture, refusal

import nearhand
from nearhand.melody.against import against
from nearhand.melody.harmonies import chord_spans
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of
from nearhand.verbs.melodies import melody_in
from nearhand.voicing.hands import RIGHT_HAND
from nearhand.voicing.wishes import NO_VOICING, STYLES

CHORDS = "C: | C | Am7 | Dm7 G7 | Cmaj7 |"
HIGH = "melody E5 - G5 E5 | C5 - B4 - | A4 F5 D5 B4 | C5 - - -"
LOW = "melody E4 - G4 E4 | C4 - B3 - | A3 F4 D4 B3 | C4 - - -"
SUNG = (CHORDS, HIGH)
TONICS = ("Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B")
VOICED = tuple(style for style in STYLES if style != NO_VOICING)


def voiced(session, line="show"):
    (view,) = answer_to(line, session).views
    return view.voiced


def tops(session, line="show"):
    """The top note of each chord, by name."""
    return " ".join(str(voicing.upper[-1]) for voicing in voiced(session, line).voicings)


def remarks(session, line="show", width=1000):
    return text_of(draw(answer_to(line, session), Page(width)))


def sounding_with(session):
    """For each chord the MIDI numbers of the melody that sound while it lasts, found from the notes by themselves."""
    tune, key = session.stand
    notes = melody_in(session, key).sounding()
    return [
        [note.pitch.midi for note in notes if note.onset < end and note.onset + note.beats > onset]
        for onset, end in chord_spans(tune.progression)
    ]


def test_every_chord_has_the_note_that_is_struck_with_it_on_top():
    assert tops(after(*SUNG, "top melody")) == "E5 C5 A4 D5 C5"
    assert "Asked for: the melody on top." in remarks(after(*SUNG, "top melody"))
    assert tops(after(*SUNG)) != "E5 C5 A4 D5 C5"  # else nothing is shown


@pytest.mark.parametrize(
    ("melody", "top"),
    [
        ("F5 E5 - G5", "E5"),  # the fourth is no tone of the chord: the longest that is one
        ("F5 E5 G5 -", "G5"),
        ("F5 E5 G5 r", "E5"),  # of two as long the earlier one
        ("r E5 G5 -", "G5"),
        ("E5 G5 - -", "E5"),  # struck with the chord, though the other is longer
    ],
)
def test_the_note_struck_with_the_chord_goes_first_then_the_longest_then_the_earliest(melody, top):
    assert tops(after("C: | C |", f"melody {melody}", "top melody")) == top


def test_a_note_held_over_from_the_chord_before_counts_by_its_length():
    session = after("C: | C | Am |", "melody E5 - - - | - C5 - -", "top melody")

    assert tops(session) == "E5 C5"  # E is a tone of Am, too, but not struck with it


def test_a_chord_without_a_fitting_note_is_free_and_named():
    session = after("C: | C | F | N.C. | G7 |", "melody E5 - - - | r - - - | C5 - - - | C5 - - -", "top melody")
    on_top = voiced(session).search.on_top

    assert on_top.notes == (76, None, None)
    assert "Chords 2 (F), 3 (G7): no note of the melody belongs here; the top is free." in remarks(session)


def test_what_a_family_cannot_carry_is_told():
    # a shell has third and seventh on top, never the root
    session = after("C: | Cmaj7 | Dm7 |", "melody C5 - - - | F4 - - -", "voice shell", "top melody")

    assert voiced(session).search.on_top.notes == (None, 65)
    told = "Chord 1 (Cmaj7): no shell voicing has a note of the melody on top; the top is free."
    assert told in remarks(session)


def test_a_tension_lies_on_top_where_the_family_has_it():
    session = after("C: | Dm7 | G7 | Cmaj7 |", "melody E4 - - - | E4 - - - | D4 - - -")

    assert tops(after("voice rootless", "top melody", start=session)) == "E4 E4 D4"  # 9, 13, 9
    assert voiced(after("voice close", "top melody", start=session)).search.on_top.notes == (None, None, None)


def test_a_low_melody_keeps_its_octave_in_a_wider_register():
    session = after(CHORDS, LOW, "top melody")

    assert tops(session) == "E4 C4 F4 D4 C4"  # A3 with a chord of four notes under it would be muddy
    assert voiced(session).search.on_top.octaves == 0
    assert "The register is widened for the melody: upper notes from E2 to E5." in remarks(session)
    for voicing in voiced(session).voicings:
        assert voicing.upper[-1].midi == max(pitch.midi for pitch in voicing.pitches)


def test_a_melody_that_no_chord_carries_where_it_lies_goes_to_another_octave_and_that_is_told():
    session = after("C: | C | F | C |", "melody E3 - - - | F3 - - - | G3 - - -", "top melody")

    assert voiced(session).search.on_top.octaves == 1
    assert tops(session) == "E4 F4 G4"
    told = "On top the melody lies an octave higher than written: more chords carry it there."
    assert told in remarks(session)


def test_a_melody_whose_octave_is_not_known_goes_where_the_register_carries_it():
    session = after("C: | C | F | C |", "melody 1 - - - | 1 - - - | 1 - - -", "top melody")

    assert tops(session) == "C5 C5 C5"
    assert voiced(session).search.on_top.register is None


def test_a_register_that_is_asked_for_is_not_widened():
    session = after(CHORDS, LOW, "register G3 E5", "top melody")

    assert voiced(session).search.on_top.register is None
    assert min(pitch.midi for voicing in voiced(session).voicings for pitch in voicing.upper) >= 55


def test_a_widened_register_keeps_the_middle_of_the_family():
    session = after(CHORDS, LOW, "top melody")

    assert voiced(session).search.strands[0].centre == RIGHT_HAND.centre


@pytest.mark.parametrize("tonic", ["Db", "F", "Bb"])
def test_with_a_register_that_moves_every_key_has_the_same_positions(tonic):
    higher = "melody E6 - G6 E6 | C6 - B5 - | A5 F6 D6 B5 | C6 - - -"  # so high that no low interval is in the way
    home = after(CHORDS, higher, "register moves", "top melody")
    moved = after(f"to {tonic}", start=home)

    (shift,) = {
        there.midi - here.midi
        for chord, other in zip(voiced(home).pitches, voiced(moved).pitches, strict=True)
        for here, there in zip(chord, other, strict=True)
    }
    assert shift == {"Db": 1, "F": 5, "Bb": -2}[tonic]


@pytest.mark.parametrize("style", VOICED)
@pytest.mark.parametrize("melody", [HIGH, LOW])
def test_no_family_puts_a_note_on_top_that_the_melody_has_not(style, melody):
    session = after(CHORDS, melody, f"voice {style}", "top melody")
    found = voiced(session)
    on_top = found.search.on_top

    assert any(note is not None for note in on_top.notes)
    for voicing, note, row in zip(found.voicings, on_top.notes, sounding_with(session), strict=True):
        if note is not None:
            assert voicing.upper[-1].midi == note == max(pitch.midi for pitch in voicing.pitches)
            assert note - 12 * on_top.octaves in row
    free = [place + 1 for place, note in enumerate(on_top.notes) if note is None]
    text = remarks(session)
    assert ("; the top is free." in text) == bool(free)
    assert all(f"{place} (" in text.split("Asked for")[1] for place in free)


@pytest.mark.parametrize("tonic", TONICS)
@pytest.mark.parametrize("style", ["close", "drop2", "four-part"])
def test_the_top_line_moves_with_the_melody(style, tonic):
    session = after(*SUNG, f"voice {style}", "top melody", f"to {tonic}")
    found = voiced(session)

    octaves = found.search.on_top.octaves
    for note, row in zip(found.search.on_top.notes, sounding_with(session), strict=True):
        assert note is None or note - 12 * octaves in row
    assert sum(note is not None for note in found.search.on_top.notes) >= 4


def test_the_octave_and_the_way_of_the_melody_are_those_of_the_top_line():
    assert tops(after(*SUNG, "top melody", "to F")) == "A5 F5 D5 G5 F5"
    assert tops(after(*SUNG, "top melody", "way down", "to F")) == "A4 F4 D4 G4 F4"
    assert tops(after(CHORDS, LOW, "octave up", "top melody")) == "E5 C5 A4 D5 C5"


def test_another_melody_is_another_top_line():
    session = after(*SUNG, "top melody")
    new = after("melody G5 - - - | E5 - - - | F5 - D5 - | B4 - - -", start=session)

    assert tops(new) == "G5 E5 F5 D5 B4"
    assert tops(after("undo", start=new)) == "E5 C5 A4 D5 C5"
    without = after("melody off", start=session)
    assert voiced(without).search.on_top is None
    assert "There is no melody, so that the top line is free." in remarks(without)


def test_undo_and_redo_take_the_wish_back_and_make_it_again():
    session = after(*SUNG, "top melody")

    assert after("undo", start=session).wishes.top == "free"
    assert after("undo", "redo", start=session).wishes.top == "melody"
    assert after("top free", start=session).wishes.top == "free"
    assert after("top off", start=session).wishes.top == "free"
    assert after("top E5 - - - -", start=session).wishes.melody == (76, None, None, None, None)
    assert after("top E5 - - - -", "top melody", start=session).wishes.melody == ()


def test_all_verbs_that_voice_have_the_melody_on_top():
    session = after(*SUNG, "top melody")
    best = voiced(session)

    others = answer_to("others", session)
    for path in others.paths:
        assert " ".join(str(voicing.upper[-1]) for voicing in path.voiced.voicings) == "E5 C5 A4 D5 C5"
    assert others.paths[0].voiced.pitches == best.pitches
    assert answer_to("why 2", session).taken.voicing.pitches == best.pitches[1]
    for other in answer_to("why 2", session).others:
        assert str(other.voicing.upper[-1]) == "C5"
    assert " ".join(map(str, answer_to("lines", session).lines.voices[0].pitches)) == "E5 C5 A4 D5 C5"
    (cadence,) = answer_to("cadences", session).along.cadences
    assert cadence.kind == "perfect authentic"
    (other,) = answer_to("cadences", after(*SUNG)).along.cadences
    assert other.kind == "imperfect authentic"  # with another note than the tonic on top
    explained = answer_to("explain", session).along.cadences
    assert explained == answer_to("cadences", session).along.cadences


def test_other_paths_pins_and_loops_keep_the_melody():
    session = after(*SUNG, "top melody")
    wide = after("voice any", start=session)
    second = after("others 2", start=wide)

    assert second.wishes.path == 2
    assert tops(second) == tops(wide)
    assert voiced(second).pitches != voiced(wide).pitches
    pinned = after("pin 2 E4 G4 A4 C5", start=session)
    assert tops(pinned) == tops(session)
    assert tops(after("loop on", start=session)) == tops(session)
    assert tops(after("pin 2", "to D", start=session)) == "F#5 D5 B4 E5 D5"


def test_a_pin_goes_before_the_melody_and_that_is_told():
    session = after(*SUNG, "top melody", "pin 2 C4 E4 G4 A4")

    assert tops(session) == "E5 A4 A4 D5 C5"
    assert "Chord 2 (Am7): pinned without a note of the melody on top; the top is free." in remarks(session)


def test_the_document_tells_what_lies_on_top():
    session = after("C: | C | F | C |", "melody E3 - - - | r - - - | G3 - - -", "top melody")
    (view,) = json.loads(json_answer(answer_to("show", session)))["views"]

    assert view["voicing"]["melody_on_top"] == {"octaves": 1, "notes": ["E4", None, "G4"]}
    (plain,) = json.loads(json_answer(answer_to("show", after(*SUNG))))["views"]
    assert "melody_on_top" not in plain["voicing"]


def test_one_line_is_enough():
    line = 'show "| C | F | C |" --key C --melody "E5 - - - | F5 - - - | G5 - - -" --top melody'

    assert " ".join(str(each.upper[-1]) for each in answer_to(line).views[0].voiced.voicings) == "E5 F5 G5"


def test_another_melody_or_octave_is_on_the_best_path_again():
    # the paths under one melody are not those under another
    session = after(*SUNG, "voice any", "top melody", "others 2")

    for line in (LOW, "melody off", "octave down", "way down"):
        assert after(line, start=session).wishes.path == 1
    assert after(*SUNG, "voice any", "others 2", LOW).wishes.path == 2  # with another top line all paths stay


HINT = "put one over the chords first: melody E4 F#4 G4"


@pytest.mark.parametrize(
    ("lines", "line", "shown"),
    [
        ((CHORDS,), "top melody", "top ^melody"),
        ((CHORDS, HIGH, "melody off"), "top melody", "top ^melody"),
        ((), "show | C | --top melody", "show | C | --top ^melody"),
    ],
)
def test_without_a_melody_there_is_nothing_to_put_on_top(lines, line, shown):
    # a verb's words are read after it: the caret stands in the line
    assert picture(refusal(line, after(*lines))) == ("there is no melody to put on top", shown, HINT)


def test_without_chords_the_wish_is_refused_as_any_is():
    assert refusal("top melody").what == "there is no progression yet"


def test_the_library_puts_the_melody_on_top():
    tune = nearhand.with_melody(nearhand.parse_progression(CHORDS), HIGH.removeprefix("melody "))
    asked = nearhand.Wishes("close", top="melody")
    found = nearhand.voice(tune, asked)

    assert [str(voicing.upper[-1]) for voicing in found.voicings] == ["E5", "C5", "A4", "D5", "C5"]
    assert found.pitches == voiced(after(*SUNG, "top melody")).pitches
    assert nearhand.best_paths(tune, 2, asked)[0].pitches == found.pitches
    assert nearhand.voice(tune._replace(melody=None), asked).search.on_top is None


degrees = st.sampled_from(["1", "2", "3", "4", "5", "6", "7", "1'", "2'", "3'", "5_", "6_", "7_", "b7", "#4", "r"])
beats = st.lists(degrees, min_size=4, max_size=4).map(" ".join)


@settings(max_examples=40)
@given(
    st.lists(st.sampled_from(["C", "Am7", "Dm7", "G7", "Fmaj7", "Bm7b5", "E7"]), min_size=1, max_size=4),
    st.data(),
    st.sampled_from(VOICED),
    st.sampled_from(["C", "Eb", "F#", "A"]),
)
def test_whatever_is_sung_the_top_is_a_note_of_the_melody_or_told_to_be_free(chords, data, style, tonic):
    melody = " | ".join(data.draw(st.lists(beats, min_size=len(chords), max_size=len(chords))))
    if not set(melody) - set("r| "):
        return
    start = after(f"C: | {' | '.join(chords)} |", f"melody {melody}", f"voice {style}", f"to {tonic}")
    session = after("top melody", start=start)
    found = voiced(session)
    on_top = found.search.on_top

    for voicing, note, row in zip(found.voicings, on_top.notes, sounding_with(session), strict=True):
        if note is not None:
            assert voicing.upper[-1].midi == note
            assert note - 12 * on_top.octaves in row
    text = remarks(session)
    assert ("; the top is free." in text) == (None in on_top.notes)
    assert ("On top the melody lies" in text) == (on_top.octaves != 0)


def test_what_lies_on_top_is_a_chord_tone_or_a_tension():
    # E is the ninth of Dm7 and the thirteenth of G7, F sharp is no tone of either
    session = after("C: | Dm7 | G7 |", "melody F#4 - E4 - | F#4 - E4 -", "voice rootless", "top melody")
    tune, key = session.stand

    assert [tone.tone for tone in against(melody_in(session, key), tune.progression)][1::2] == ["9", "13"]
    assert tops(session) == "E4 E4"
