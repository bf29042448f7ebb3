"""How chords are voiced and read: ``voice``, ``loop``, ``degrees``."""

from __future__ import annotations

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, numbers, numerals, symbols

from nearhand.notation.conventions import Conventions
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.respond import respond

REPEATED = "|: Am | Dm | E7 | Am/C :|"


def view(line, session):
    (only,) = answer_to(line, session).views
    return only


def moves(seen):
    return [chord.voicing.motion and chord.voicing.motion.moves for chord in seen.chords]


def test_voice_none_shows_the_chord_tones_alone():
    session = after(FALLING_BASS, "voice none")

    seen = view("show", session)

    assert seen.voiced is None
    assert [chord.voicing for chord in seen.chords] == [None] * 4
    # tones from the root up, common practice, no source
    assert [" ".join(map(str, chord.chord.tones)) for chord in seen.chords] == ["E G B", "B D F#", "A C E", "B D# F# A"]


def test_voice_close_brings_the_hands_back():
    session = after(FALLING_BASS)

    assert view("voice close", after("voice none", start=session)) == view("show", session)


def test_the_first_voicing_is_the_tonic_over_its_root():
    # close position: the upper voices lie within an octave (common practice, no source)
    voicing = view("show", after("E minor: i v6 iv6 V7", "to C minor")).chords[0].voicing

    assert ([str(pitch) for pitch in voicing.left], [str(pitch) for pitch in voicing.right]) == (
        ["C3"],
        ["Eb4", "G4", "C5"],
    )


@pytest.mark.parametrize(
    ("line", "loops"),
    [
        (REPEATED, True),
        ("| Am | Dm | E7 | Am/C :|", True),  # from the beginning: common practice, no source
        (FALLING_BASS, False),
        ("| Am |: Dm | E7 | Am/C :|", False),
        ("|: Am :| Dm | E7 |", False),
        ("|: Am | Dm :|: E7 | Am/C :|", False),
    ],
)
def test_one_pair_of_repeat_signs_around_everything_is_a_loop(line, loops):
    session = after(line)

    assert session.loops == loops
    assert view("show", session).voiced.loops == loops
    assert (moves(view("show", session))[0] is not None) == loops


def test_loop_on_and_off_overrule_the_repeat_signs():
    assert after(REPEATED, "loop off").loops is False
    assert after(FALLING_BASS, "loop on").loops is True
    assert moves(view("loop off", after(REPEATED)))[0] is None


def test_the_way_back_counts_in_a_loop():
    session = after("| C | F |")

    there, round_trip = view("loop off", session), view("loop on", session)

    # C E G to C F A: 0 + 1 + 2 semitones, and 3 back (taxicab norm; Tymoczko, Science 313, 2006)
    assert (there.voiced.movement, round_trip.voiced.movement) == (3, 6)
    assert moves(round_trip)[0] == tuple(-move for move in moves(round_trip)[1])


def test_new_chords_loop_as_their_own_signs_say():
    assert after(FALLING_BASS, "loop on", REPEATED).loops is True
    assert after(FALLING_BASS, "loop on", FALLING_BASS).loops is False


def test_show_may_loop_by_an_option():
    assert view(f'show "{FALLING_BASS}" --loop', None).voiced.loops is True


# Chords, degrees in the mode's own scale, degrees against the major scale. The two ways to count are those
# of textbooks and of number charts (common practice, no source).
DEGREES = [
    ("E minor: | Em | G | Am | Bm | C | D |", "1- 3 4- 5- 6 7", "1- b3 4- 5- b6 b7"),
    ("E major: | E | G#m | C#m | D |", "1 3- 6- b7", "1 3- 6- b7"),
    ("D dorian: | Dm | F | G | C |", "1- 3 4 7", "1- b3 4 b7"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "own", "major"), DEGREES)
def test_degrees_are_counted_in_the_mode_or_against_the_major_scale(line, own, major):
    session = after(line)

    assert numbers(session) == own
    assert numbers(after("degrees major", start=session)) == major
    assert numbers(after("degrees major", "degrees mode", start=session)) == own


def test_numerals_follow_the_way_of_counting_too():
    session = after("E minor: | Em | G | C | D | B7 |")

    assert numerals(session) == "i III VI VII V7"
    assert numerals(after("degrees major", start=session)) == "i bIII bVI bVII V7"


def test_chords_are_read_as_they_are_counted():
    # against the major scale a bare 3 in C minor is E, and b3 is E flat (common practice, no source)
    assert symbols(after("degrees major", "C minor: 1- b3 4- 5")) == "Cm Eb Fm G"
    assert symbols(after("C minor: 1- 3 4- 5")) == "Cm Eb Fm G"
    assert symbols(after("degrees major", "C minor: 1- 3 4- 5")) == "Cm E Fm G"


def test_counting_otherwise_changes_no_chord():
    session = after("E minor: i III VI V7")

    assert symbols(after("degrees major", start=session)) == symbols(session)
    assert after("degrees major", start=session).tune == session.tune


@pytest.mark.parametrize("line", ["voice none", "loop on", "degrees major"])
def test_a_setting_without_a_tune_is_kept_for_the_next_progression(line):
    outcome = respond(after(), line)

    assert outcome.answer == NoteAnswer(("Kept for the next progression.",))
    assert outcome.session != after()


def test_options_hold_for_one_answer_and_leave_the_session_as_it_was():
    session = after(f'show "{FALLING_BASS}" --voicing none --degrees major --plain --loop')

    assert session.tune is not None
    assert (session.voicing, session.conventions, session.loop) == ("close", Conventions(), None)


def test_plain_characters_can_be_set_for_good():
    session = after("plain on")

    assert session.conventions.plain
    assert not after("plain off", start=session).conventions.plain
