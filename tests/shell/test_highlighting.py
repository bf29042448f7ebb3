"""What each part of a line is while it is typed: tables, laws, every prefix, and any text at all."""

from __future__ import annotations

import time

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from nearhand.notation.errors import InputError
from nearhand.render.screen import STYLES
from nearhand.shell.highlighting import KINDS, MOST_CHARACTERS, fragments_of, spans_of
from nearhand.shell.preview import preview
from nearhand.shell.preview_rows import MOST_ROWS
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import VERBS

NOTHING = Session()
E_MINOR = respond(NOTHING, "E minor: | Em | Bm/D | Am/C | B7 |").session


def parts(line, session=NOTHING):
    """The kinds of a line with the text of each."""
    return [(line[start:end], kind) for start, end, kind in spans_of(line, session)]


def kinds(line, session=NOTHING):
    return [f"{kind} {text}" for text, kind in parts(line, session)]


# Line, its parts. What is no chord, no bar line and no key: H is B natural in German speaking lands, and no root here.
LINES = [
    ("Em", ["chord Em"]), ("Em Bm/D", ["chord Em", "chord Bm", "bass /D"]),
    ("| Em |", ["bar |", "chord Em", "bar |"]), ("|: C | % :|", ["bar |:", "chord C", "bar |", "bar %", "bar :|"]),
    ("C6/9 C6/9/E", ["chord C6/9", "chord C6/9", "bass /E"]), ("D//C7", ["chord D//C7"]),
    ("E minor: i v6", ["key E minor:", "numeral i", "numeral v6"]), ("C: V7/V I/3",
     ["key C:", "numeral V7/V", "numeral I", "bass /3"]),
    ("G: 1 5/7 6-", ["key G:", "number 1", "number 5", "bass /7", "number 6-"]),
    ("| [3/4] C / | N.C. |", ["bar |", "bar [3/4]", "chord C", "bar /", "bar |", "chord N.C.", "bar |"]),
    ("1 4 [5 1] 6-", ["number 1", "number 4", "bar [", "number 5", "number 1", "bar ]", "number 6-"]),
    ("(Am) C", ["chord (Am)", "chord C"]), ("C - F", ["chord C", "chord F"]),
    ("to C minor", ["verb to", "key C", "key minor"]), ("next", ["verb next"]), ("  next", ["verb next"]),
    ("voice drop2", ["verb voice", "word drop2"]),
    ('show "| Em |" --to "C minor"', ["verb show", "bar |", "chord Em", "bar |", "option --to", "word C minor"]),
    ('show "E minor: i V7"', ["verb show", "key E minor:", "numeral i", "numeral V7"]),
    ("show waltz.toml", ["verb show", "word waltz.toml"]), ("explain 3", ["verb explain", "word 3"]),
    ("", []), ("   ", []),
]  # fmt: skip
WRONG = [
    ("| Em | Hm |", ["bar |", "chord Em", "bar |", "error Hm", "bar |"]), ("Hm", ["error Hm"]),
    ("| C | | F |", ["bar |", "chord C", "bar |", "error |", "chord F", "bar |"]),
    ("| % |", ["bar |", "error %", "bar |"]),
    ("| [3/5] C |", ["bar |", "bar [", "error 3/5", "bar ]", "chord C", "bar |"]),
    ("E dorain: C", ["error dorain", "chord C"]), ("Cxyz D", ["error Cxyz", "chord D"]),
    ("Em B : F", ["error m B", "chord F"]),
    ("shwo ", ["error shwo"]),
    ("to H minor", ["verb to", "error H", "key minor"]), ("next x", ["verb next", "error x"]),
    ("show --vocing close", ["verb show", "error --vocing", "word close"]),
    ("loop maybe", ["verb loop", "error maybe"]),
    ("show --voicing wide ", ["verb show", "option --voicing", "error wide"]),
    ("register C4 X5 ", ["verb register", "word C4", "error X", "word 5"]),
]  # fmt: skip
STILL_TYPED = [
    "Cma", "Em | Bm7b", "C(ad", "e", "e min", "sho", "|: C | F", "|: C | F |", "| [3/", "(A", "b", "N.", 'show "| E',
    "loop o", "to C mi", "show --vo", "show --voicing dr", "E minor:", "E minor: |: i", "1 4 [5 1", "Caro.toml",
    "to C, Bb mi", "to al", 'show "| C |" --to "C mi', "show | C | --key E", "show | C | --key ",
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), [*LINES, *WRONG])
def test_a_line_has_these_parts(line, expected):
    assert kinds(line) == expected


@pytest.mark.parametrize("line", STILL_TYPED)
def test_nothing_is_found_fault_with_while_it_may_become_something(line):
    assert "error" not in [kind for _, kind in parts(line)]


@pytest.mark.parametrize("line", [line for line, expected in LINES])
def test_a_line_that_is_read_has_no_error_and_every_sign_of_it_a_kind(line):
    covered = "".join(text for text, _ in parts(line))
    assert [letter for letter in line if not letter.isspace() and letter not in "\"'-"] == [
        letter for letter in covered if not letter.isspace() and letter not in "\"'-"
    ]


def check(line, session):
    spans = spans_of(line, session)
    at = 0
    for start, end, kind in spans:
        assert at <= start < end <= len(line)
        assert kind in KINDS
        at = end
    assert "\n".join("".join(piece for _, piece in row) for row in fragments_of(line, session)) == line
    for width in (1, 7, 40, 80):
        rows = preview(line, session, width).split("\n")
        assert len(rows) <= MOST_ROWS
        assert max(map(len, rows)) <= width
        assert all(row.isprintable() for row in rows)
    for cursor in {0, len(line) // 2, len(line)}:
        preview(line, session, 80, cursor)


LONG_LINES = [
    'show "E minor: |: Em | Bm/D :| [3/4] Am/C / B7 | N.C. | % ||" --to "C minor, G minor" --voicing=close --loop',
    "C# minor: |: i i(maj7) | i7 i6 | iv7 | V7b9 :| [6/8] V65/V / / V7 / / | bII6 N.C. :|",
    "explain 1 4 57 | 6-/5 2-7 | --key Bb 3", "to C minor, Bb, all", "pin 2 D4 G4 Bb4; 1 C4", "weigh leap 3, hidden 2",
    "| Cmaj7#11/G | F#m7b5 | Bb13(b9,#11) | Ebsus4 | Adim7/C | (D//C7) [5 1]", "set degrees major", "tour 3",
    'show "| C | F |" --melody "{7_}1\' - [5 [6 b7]]:2 | r do" --to C', "octave up", "way nearest",
]  # fmt: skip


@pytest.mark.parametrize("line", LONG_LINES)
@pytest.mark.parametrize("session", [NOTHING, E_MINOR], ids=["nothing", "E minor"])
def test_every_prefix_has_its_parts_in_order(line, session):
    for end in range(len(line) + 1):
        check(line[:end], session)


SIGNS = "ABCDEFGHbm#7/|:[]%-.1234567iIvV o°ø+(),susdimajN\"'\n"


@given(st.text(max_size=40), st.sampled_from([NOTHING, E_MINOR]))
@settings(max_examples=200)
@example("[[[[", NOTHING)
@example("\x1b[31m C", NOTHING)
@example("a\0.toml", NOTHING)
def test_any_text_has_its_parts_in_order(line, session):
    check(line, session)


@given(st.text(SIGNS, max_size=30), st.sampled_from([NOTHING, E_MINOR]))
@settings(max_examples=400)
@example("show [", E_MINOR)
def test_any_row_of_the_signs_of_music_has_its_parts_in_order(line, session):
    check(line, session)


@given(st.sampled_from([verb.name for verb in VERBS]), st.text(SIGNS + "-", max_size=25))
@settings(max_examples=300)
def test_any_words_behind_a_verb_have_their_parts_in_order(verb, words):
    check(f"{verb} {words}", E_MINOR)


@given(st.text("ABCDEFGbm#7/|: ", max_size=20))
@example("b A")
@settings(max_examples=200)
def test_a_line_of_chords_that_is_answered_has_no_error_and_one_that_is_refused_a_sentence(line):
    try:
        respond(NOTHING, line)
    except InputError:
        assert (
            not line.strip() or preview(line + " ", NOTHING) or parts(line + " ") == [] or line.rstrip()[-1:] in ":|bm#"
        )
        return
    assert "error" not in [kind for _, kind in parts(line)]


def test_every_kind_has_a_style_and_what_is_wrong_is_underlined():
    assert set(KINDS) - set(STYLES) == {"word"}
    assert "underline" in STYLES["error"].split()


def test_a_line_without_end_is_plain_behind_some_thousand_characters_and_does_not_wait():
    for line in (
        "| C " * 300_000,
        "[" * 1_000_000,
        '"' * 999_999,
        "E minor: " + "i " * 500_000,
        "show " + "(" * 900_000,
    ):
        start = time.perf_counter()
        spans = spans_of(line, NOTHING)
        assert preview(line, NOTHING) == ""
        assert time.perf_counter() - start < 2  # a hang would take minutes
        assert all(span.end <= MOST_CHARACTERS for span in spans)


def test_what_is_quoted_is_told_apart_as_behind_show():
    assert kinds('"| Em | B7 |"') == kinds('show "| Em | B7 |"')[1:]
