"""``borrow``: the palette of a key by its name, or of the shown key; the session stays as it is."""

from __future__ import annotations

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

from nearhand.notation.conventions import PLAIN
from nearhand.verbs.borrow import BorrowAnswer
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

NO_KEY = ("borrow needs a key", "borrow^", "write for example  borrow C major")
KEY_HINT = "write a key such as E minor, Bb major, F#m, or D dorian"


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ("borrow C major", "C major"),
        ("borrow Eb", "Eb major"),
        ("borrow e", "E minor"),
        ('borrow "D dorian"', "D dorian"),
    ],
)
def test_a_key_is_named(line, key):
    answer = answer_to(line)

    assert isinstance(answer, BorrowAnswer)
    assert str(answer.key) == key


def test_without_a_name_the_shown_key_is_meant():
    session = after(FALLING_BASS, "to C minor")

    assert str(answer_to("borrow", session).key) == "C minor"
    assert str(answer_to("borrow", after("key F lydian")).key) == "F lydian"


def test_major_borrows_from_natural_minor_first_and_minor_borrows_the_major_tonic():
    # R. Hutchinson, Music Theory for the 21st-Century Classroom, "Mode mixture", "The Picardy third"
    first_of_major, first_of_minor = (answer_to(f"borrow {key}").modes[0] for key in ("C", "a"))

    assert (first_of_major.name, first_of_minor.name) == ("natural minor", "major")
    assert first_of_minor.triads[0].chord.in_key(answer_to("borrow a").key).tones == tuple(
        answer_to("borrow A").key.tonic.up(place) for place in (0, 4, 1)
    )


@pytest.mark.parametrize("line", ["borrow", "borrow C", "borrow Db major --degrees major", "borrow --plain"])
def test_asking_for_a_palette_changes_nothing(line):
    session = after(FALLING_BASS, "to G minor")

    assert respond(session, line).session == session


def test_options_hold_for_one_answer():
    assert answer_to("borrow c --degrees major --plain").conventions == PLAIN._replace(degrees="major")


def test_without_a_tune_and_a_name_a_key_is_asked_for():
    assert picture(refusal("borrow")) == NO_KEY
    assert picture(refusal("borrow --plain")) == (NO_KEY[0], "borrow --plain^", NO_KEY[2])
    assert refusal("borrow").wanted == "a key"


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("borrow H", ("'H' is no key", "^H", KEY_HINT)),
        ("borrow C miner", ("'miner' is no mode", "C ^miner", "did you mean minor?")),
        ("borrow C --key G", ("borrow has no option --key", "borrow C ^--key G",
         "borrow knows --degrees, --sevenths, --symbols, --figures, --names, --layout, --plain, --json")),
    ],
)  # fmt: skip
def test_what_is_no_key_is_refused(line, expected):
    for session in (Session(), after(FALLING_BASS)):
        assert picture(refusal(line, session)) == expected
