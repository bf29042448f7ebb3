"""Words, quotes and options of a line."""

from __future__ import annotations

import shlex

import pytest
from hypothesis import given
from hypothesis import strategies as st
from verbs.session_words import FALLING_BASS, after, keys_of, picture, refusal, symbols

from nearhand.notation.errors import InputError
from nearhand.verbs import options
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import BY_NAME, VERBS
from nearhand.verbs.words import Word, line_of, sort_words, split_line

SHOW = BY_NAME["show"]

CUT = [
    ("", []),
    ("   ", []),
    ("show", [Word("show", 0)]),
    ("  show  it ", [Word("show", 2), Word("it", 8)]),
    ('show "| C |"', [Word("show", 0), Word("| C |", 6, True)]),
    ("show '| C |' x", [Word("show", 0), Word("| C |", 6, True), Word("x", 13)]),
    ('a "it\'s" b', [Word("a", 0), Word("it's", 3, True), Word("b", 9)]),
    ('"" a', [Word("", 1, True), Word("a", 3)]),
    ('--to="C minor"', [Word('--to="C', 0), Word('minor"', 8)]),
    ("a\tb\nc", [Word("a", 0), Word("b", 2), Word("c", 4)]),
]  # fmt: skip


@pytest.mark.parametrize(("line", "words"), [row for row in CUT if "=" not in row[0]])
def test_a_line_is_cut_at_blanks_and_quotes_keep_a_text_together(line, words):
    assert list(split_line(line)) == words


@given(
    st.lists(st.text(st.characters(exclude_characters="\"'", exclude_categories=["Cs"]), min_size=1).filter(str.split))
)
def test_every_word_stands_at_its_place_in_the_line(texts):
    for word in split_line(" ".join(texts)):
        assert " ".join(texts)[word.start : word.start + len(word.text)] == word.text


@given(st.lists(st.text(st.characters(codec="utf-8", exclude_characters="\"'"))))
def test_words_cut_by_another_shell_keep_their_texts_and_places(texts):
    line, words = line_of(texts)

    assert [word.text for word in words] == texts
    assert all(line[word.start : word.start + len(word.text)] == word.text for word in words)
    assert [word.text for word in split_line(line)] == texts


def test_a_line_made_of_words_reads_like_one_typed():
    line, _ = line_of(["show", FALLING_BASS, "--to", "C minor"])

    assert line == f'show "{FALLING_BASS}" --to "C minor"'
    assert shlex.split(line) == ["show", FALLING_BASS, "--to", "C minor"]  # the way of the usual shells


@pytest.mark.parametrize("line", ['show "| C |', "show '| C |", 'show "', "show | C | --to 'G"])
def test_an_open_quote_is_refused_at_its_place(line):
    at = max(line.find('"'), line.find("'"))

    assert picture(refusal(line)) == (
        "a quote is not closed",
        f"{line[:at]}^{line[at:]}",
        "close it with the same sign",
    )


@pytest.mark.parametrize(
    "line",
    [
        f'show "{FALLING_BASS}" --to "C minor"',
        f'show --to "C minor" "{FALLING_BASS}"',
        f'show "{FALLING_BASS}" --to=C',
        f"show --to=Cm {FALLING_BASS}",
        f'show "{FALLING_BASS}" --key "E minor" --to=c --voicing=none --degrees mode --loop',
    ],
)
def test_options_stand_before_or_behind_the_chords_with_and_without_an_equals_sign(line):
    outcome = respond(Session(), line)

    assert keys_of(outcome.answer) == ["C minor"]
    assert symbols(outcome.session) == "Em Bm/D Am/C B7"


def test_the_last_of_two_equal_options_counts():
    assert keys_of(respond(after(FALLING_BASS), "show --to C --to G").answer) == ["G minor"]


def test_a_quoted_word_is_never_an_option():
    arguments = sort_words(SHOW, (Word("--to", 6, True), Word("--loop", 13)), 'show "--to" --loop')

    assert arguments.words == ("--to",)
    assert arguments.has("loop") and not arguments.has("to")


def test_a_value_may_look_like_an_option_only_when_it_is_one():
    assert picture(refusal("show --to --loop", after(FALLING_BASS)))[0] == "'--loop' is no key"


VOICINGS_HINT = (
    "write one of close, open, drop2, drop3, drop2and4, any, spread, shell, rootless, guide-tones, two-hand, quartal, "
    "upper-structure, four-part, none"
)
# Line, sentence, the line with ^ before the first bad character, hint.
REFUSED = [
    ("show --t C", "show has no option --t", "show ^--t C", "did you mean --to?"),
    ("show --tp=C", "show has no option --tp=C", "show ^--tp=C", "did you mean --top?"),
    ("show --voice none", "show has no option --voice", "show ^--voice none", "did you mean --voicing?"),
    ("list --fast", "list has no option --fast", "list ^--fast", "list knows --plain, --json"),
    ("next --fast", "next has no option --fast", "next ^--fast", ""),
    ("save it --ovr", "save has no option --ovr", "save it ^--ovr", "did you mean --over?"),
    ("show --to", "--to needs a value", "show --to^",
     options.TO_HELP),
    ("show --key", "--key needs a value", "show --key^",
     "the key the chords are in, for example E minor; inferred when it is not given"),
    ("show --voicing opne", "'opne' cannot follow --voicing", "show --voicing ^opne", "did you mean open?"),
    ("show --voicing=wide", "'wide' cannot follow --voicing", "show --voicing=^wide", VOICINGS_HINT),
    ("show --degrees minor", "'minor' cannot follow --degrees", "show --degrees ^minor",
     "write mode, or major, or relative"),
    ("show --key=H", "'H' is no key", "show --key=^H", "write a key such as E minor, Bb major, F#m, or D dorian"),
    ('show --to "C, X"', "'X' is no key", 'show --to "C, ^X"',
     "write a key such as E minor, Bb major, F#m, or D dorian"),
    ("show --to C,,G", "a key is missing", "show --to C,^,G",
     "write a key such as E minor, Bb major, F#m, or D dorian"),
    ('show --key "E dorien"', "'dorien' is no mode", 'show --key "E ^dorien"', "did you mean dorian?"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "sentence", "marked", "hint"), REFUSED)
def test_an_option_is_refused_at_its_place_in_the_line(line, sentence, marked, hint):
    assert picture(refusal(line, after(FALLING_BASS))) == (sentence, marked, hint)


@pytest.mark.parametrize("option", [(verb, option) for verb in VERBS for option in verb.options if option.value])
def test_every_option_that_takes_a_value_asks_for_it(option):
    verb, wanted = option

    with pytest.raises(InputError) as caught:
        respond(Session(), f"{verb.name} --{wanted.name}")
    assert caught.value.what == f"--{wanted.name} needs a value"
    assert caught.value.wanted == wanted.value
