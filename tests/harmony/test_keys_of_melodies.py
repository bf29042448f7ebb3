"""Keys of melodies: published profiles, their correlations, music21, spelling, and the laws of both."""

from __future__ import annotations

from fractions import Fraction

import pytest
from harmony_examples import chords, decorates, falling_fifths, key, note
from hypothesis import assume, given
from hypothesis import strategies as st
from music21 import analysis, stream
from music21 import note as music21_note

from nearhand.harmony.church_modes import modes_heard
from nearhand.harmony.key_finding import rank_keys, ranked
from nearhand.harmony.key_profiles import DEFAULT_PROFILE, PROFILES
from nearhand.harmony.melody_evidence import correlation, weighed
from nearhand.harmony.melody_keys import melody_scores, rank_keys_of_both, rank_keys_of_melody
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass

ALL_KEYS = [Key(PitchClass(tonic), mode) for tonic in range(-5, 7) for mode in (MAJOR, MINOR)]
COLUMNS = (
    "krumhansl-kessler", "temperley-2001", "temperley", "albrecht-shanahan", "aarden",
    "bellman-budge",
)  # fmt: skip

# The three best keys of some weights for each profile in the order above, Pearson's r to four digits: computed apart
# from the code under test. The profiles of Krumhansl and Kessler, Temperley 2007, Aarden and Bellman as music21 and the
# When in Rome corpus print them; those of Temperley 2001 and of Albrecht and Shanahan second-hand, from public copies
# of the tables. Capital letters are major keys.
CORRELATIONS = """
C D E F G A B | C .7564, a .7121, G .6775 | C .9365, F .6502, G .5786 | C .9001, a .7542, G .6747 | C .8084, a .7346, G .6496 | a .8424, C .8401, d .7805 | C .9032, a .6521, G .6516
A B C D E F G# | a .6872, F .3924, C .3817 | a .9365, C .5786, F .4354 | a .8883, C .4987, F .3942 | a .7129, d .4189, F .4104 | a .7103, d .4576, C .3876 | a .8783, A .4400, C .4360
C E G | C .8338, e .7602, G .5565 | C .7131, e .5501, G .4686 | C .8014, e .5335, F .4050 | C .8395, c .5583, e .4266 | C .8141, a .4778, F .3982 | C .7360, F .5411, f .5341
C E G F A C G B D F C E G | C .9650, G .6508, e .6149 | C .9364, F .6515, c .5249 | C .9595, F .7079, c .5221 | C .9682, F .7336, c .6850 | C .9268, F .6968, d .6001 | C .9536, F .7699, c .6301
A C E D F A E G# B D A C E | a .8744, A .6472, C .4655 | a .9364, C .5882, F .5565 | a .9661, C .5647, A .5418 | a .9492, A .6479, d .6306 | a .8864, d .6282, C .5239 | a .9584, A .6138, d .5195
A C E F A C C E G G B D | C .9348, a .8298, e .6263 | C .9175, F .6705, G .5646 | C .9223, a .7360, F .7206 | C .9244, a .7485, F .6799 | C .8609, a .8361, F .7305 | C .8658, F .7596, a .6235
"""  # noqa: E501
TABLE = [
    (names.strip(), profile, best.strip())
    for names, *cells in (row.split("|") for row in CORRELATIONS.strip().splitlines())
    for profile, best in zip(COLUMNS, cells, strict=True)
]

notes = st.integers(-4, 8).map(PitchClass)
melodies = st.lists(notes, min_size=1, max_size=20)


def tune(names):
    return [note(name) for name in names.split()]


def best(names, **options):
    return str(rank_keys_of_melody(tune(names), **options)[0].key)


@pytest.mark.parametrize(("names", "profile", "three"), TABLE)
def test_the_correlations_are_those_of_the_profile(names, profile, three):
    weights = weighed(tune(names))
    expected = [(key(name), float(r)) for name, r in (pair.split() for pair in three.split(", "))]
    best_three = sorted((correlation(weights, home, profile) for home in ALL_KEYS), reverse=True)[:3]

    for (home, r), one_of_best in zip(expected, best_three, strict=True):  # two keys may correlate alike
        assert correlation(weights, home, profile) == pytest.approx(r, abs=5.1e-5)
        assert correlation(weights, home, profile) == pytest.approx(one_of_best)


@pytest.mark.parametrize(
    ("profile", "reference"),
    [
        ("krumhansl-kessler", analysis.discrete.KrumhanslKessler),
        ("temperley", analysis.discrete.TemperleyKostkaPayne),
        ("aarden", analysis.discrete.AardenEssen),
        ("bellman-budge", analysis.discrete.BellmanBudge),
    ],
)
@pytest.mark.parametrize("names", ["E F# G A B D# E C", "C C C D E G A", "B- A- G F E- D C B-".replace("-", "b")])
def test_music21_finds_the_same_correlation_for_every_key(names, profile, reference):
    processor = reference()
    written = stream.Stream([music21_note.Note(name.replace("b", "-")) for name in names.split()])
    solution = processor.getSolution(written)
    found = [solution, *solution.alternateInterpretations]

    assert len(found) == 24
    assert tuple(processor.getWeights("major")) == PROFILES[profile].major
    assert tuple(processor.getWeights("minor")) == PROFILES[profile].minor
    for other in found:
        home = Key(note(other.tonic.name.replace("-", "b")), MINOR if other.mode == "minor" else MAJOR)
        assert correlation(weighed(tune(names)), home, profile) == pytest.approx(other.correlationCoefficient)


def test_lengths_count_as_music21_counts_them():
    names, lengths = ["C", "D", "E", "F", "G"], [4, 1, 2, 1, 3]
    written = stream.Stream([music21_note.Note(n, quarterLength=q) for n, q in zip(names, lengths, strict=True)])
    solution = analysis.discrete.KrumhanslKessler().getSolution(written)
    weights = weighed(tune(" ".join(names)), lengths)

    assert str(solution) == "C major"
    assert correlation(weights, key("C"), "krumhansl-kessler") == pytest.approx(solution.correlationCoefficient)


# Scales and scale turns as any theory book prints them (common practice, no source).
PLAIN = [
    ("C D E F G A B C", "C major"),
    ("A B C D E F G# A", "A minor"),
    ("A B C D E F# G# A G F E D C B A", "A minor"),
    ("E F# G A B D# E", "E minor"),
    ("Bb C D Eb F G A Bb", "Bb major"),
    ("G G A B D B A G", "G major"),
    ("C Eb G F Eb D C B C", "C minor"),
]


@pytest.mark.parametrize(("names", "home"), PLAIN)
def test_a_plain_melody_is_found_in_its_key(names, home):
    assert best(names) == home


# The same keys of the keyboard, spelled in two ways (common practice, no source).
SPELLED = [
    ("F# G# A# B C# D# E# F#", "F# major"),
    ("Gb Ab Bb Cb Db Eb F Gb", "Gb major"),
    ("D# E# F# G# A# B C## D#", "D# minor"),
    ("Eb F Gb Ab Bb Cb D Eb", "Eb minor"),
    ("C# D# E# F# G# A# B# C#", "C# major"),
    ("Db Eb F Gb Ab Bb C Db", "Db major"),
    ("G# A# B C# D# E F## G#", "G# minor"),
    ("Ab Bb Cb Db Eb Fb G Ab", "Ab minor"),
]


@pytest.mark.parametrize(("names", "home"), SPELLED)
def test_the_spelling_chooses_between_enharmonic_keys(names, home):
    assert best(names) == home


def test_a_sharp_is_no_flat():
    # A# is the leading tone of B minor, Bb the fourth degree of F: no scale holds both at once
    homes = [key(name) for name in ("d", "F", "b")]
    with_sharp, with_flat = (melody_scores(tune(f"D F {name} A D"), None, homes) for name in ("A#", "Bb"))

    assert [with_flat[home] > with_sharp[home] for home in homes] == [True, True, False]


def test_long_notes_count_for_more():
    names = "C D E F# G A B"

    assert best(names, lengths=[1, 1, 1, 1, 8, 1, 1]) == "G major"
    assert best(names, lengths=[1, 1, 8, 1, 1, 1, 8]) == "E minor"


@pytest.mark.parametrize("profile", PROFILES)
def test_another_profile_may_be_chosen(profile):
    # what two profiles say of a key differs as their correlations do; both halves are alike, so neither weighs more
    twice = tune("D E F G A B C D " * 2)
    shift = {home: correlation(weighed(twice), home, profile) - correlation(weighed(twice), home) for home in ALL_KEYS}
    chosen, default = (melody_scores(twice, None, ALL_KEYS, name) for name in (profile, DEFAULT_PROFILE))
    per_correlation = [(chosen[home] - default[home]) / shift[home] for home in ALL_KEYS if abs(shift[home]) > 1e-6]

    assert bool(per_correlation) == (profile != DEFAULT_PROFILE)
    assert all(each == pytest.approx(per_correlation[0]) and each > 0 for each in per_correlation)


def test_an_unknown_profile_is_no_profile():
    with pytest.raises(KeyError):
        rank_keys_of_melody(tune("C D E"), profile="none")


def test_profiles_are_named_by_author_and_their_sources_by_year():
    assert [profile.source.rpartition(" ")[0].lower() for profile in PROFILES.values()] == [
        name.removesuffix("-2001") for name in PROFILES
    ]
    assert all(len(profile.major) == len(profile.minor) == 12 for profile in PROFILES.values())


# Short melodies and what a musician says of them (common practice, no source): a close on the tonic, the notes of its
# chord at the beginning, a raised leading tone, the five notes without half steps by their first and last one.
SHORT = [
    ("C E G C", "C major"),
    ("C Eb G C", "C minor"),
    ("A C E A", "A minor"),
    ("C D E F G", "C major"),
    ("G A B D E D B A G", "G major"),
    ("E G A B D E", "E minor"),
    ("A C D E G A", "A minor"),
    ("D F A D C# D", "D minor"),
    ("D F# A D C# D", "D major"),
    ("A C E G# B A", "A minor"),
    ("G G D D E E D", "G major"),
    ("D G G A B G", "G major"),
    ("A A D D F D", "D minor"),
]


@pytest.mark.parametrize(("names", "home"), SHORT)
def test_a_short_melody_is_found_in_its_key(names, home):
    assert best(names) == home


# One kind of evidence after the other, all else equal: the same notes in another order, or one note more.
EVIDENCE = [
    ("C E G B A F D C", "C E G B A F C D", "C", "the last note is the tonic"),
    ("C E G C D F A B D F A B G F E D", "D F A B C E G C D F A B G F E D", "C", "the tonic chord comes first"),
    ("C E G D F A B D", "C E G D F A B D F A B D", "C", "its notes take most of the time"),
    ("A C E D C B G# A", "A C E D C B G A", "a", "the leading tone of minor sounds"),
    ("C D E F G A B C", "C D E F# G A B C", "C", "all notes belong to the scale"),
]


@pytest.mark.parametrize(("more", "less", "home", "why"), EVIDENCE, ids=[row[3] for row in EVIDENCE])
def test_each_kind_of_evidence_speaks_for_its_key(more, less, home, why):
    home = key(home)
    with_it, without_it = (melody_scores(tune(names), None, [home])[home] for names in (more, less))

    assert with_it > without_it, why


def plain_score(melody, lengths, home):
    """The score, one sentence of the module's head after the other; weights as docs/why.md names their order."""
    half = len(melody) // 2
    weights = weighed(melody, [2 * length for length in lengths[:half]] + lengths[half:])
    opening = weighed(melody[:4], lengths[:4])
    chord = [home.degree(1), home.degree(3), home.degree(5)]
    scale = {each for form in FORMS[home.mode] for each in home.scale(form)}
    total = sum(weights.values())
    score = 1.5 * correlation(weights, home)
    score += sum(weights.get(each, 0) for each in chord) / total
    score += 0.4 * sum(opening.get(each, 0) for each in chord) / sum(opening.values())
    score += 0.3 * (melody[-1] == home.tonic)
    score -= 2.0 * sum(weight for each, weight in weights.items() if each not in scale) / total
    score -= 1.0 * (len(weights) >= 5 and chord[1] not in weights)
    score -= 0.3 * (home.mode == MINOR and home.tonic.up(5) not in weights)
    return score * len(melody) / (len(melody) + 4) - lost(melody, home)


def lost(melody, home):
    """What a key loses that a short melody leaves: the less the melody tells, the more."""
    forms = ("natural", "harmonic") if home.mode == MINOR else ("natural",)
    earnest = {note for at, note in enumerate(melody) if not decorates(melody, at)}
    return 0 if any(earnest <= set(home.scale(form)) for form in forms) else 2.0 * 4 / (len(melody) + 4)


FORMS = {MAJOR: ("natural",), MINOR: ("natural", "harmonic", "melodic")}
timed_notes = st.tuples(st.integers(-18, 18).map(PitchClass), st.sampled_from([1, 2, 3, Fraction(1, 2)]))
far_keys = st.lists(
    st.builds(Key, st.integers(-18, 18).map(PitchClass), st.sampled_from([MAJOR, MINOR])), min_size=1, max_size=6
)


@given(st.lists(timed_notes, min_size=1, max_size=24), far_keys)
def test_the_score_is_the_sum_of_what_the_evidence_is_worth(melody, homes):
    notes, lengths = [each for each, _ in melody], [length for _, length in melody]
    scores = melody_scores(notes, lengths, homes)

    for home in homes:
        assert scores[home] == pytest.approx(plain_score(notes, lengths, home), abs=1e-9)


def test_a_third_is_missed_however_short_it_would_be():
    home = key("C")
    with_it = melody_scores(tune("C D F G A E C"), [1, 1, 1, 1, 1, 0.001, 1], [home])[home]
    without_it = melody_scores(tune("C D F G A C"), None, [home])[home]
    of_few = melody_scores(tune("C D G C"), None, [home])[home]

    assert with_it > without_it + 0.4
    assert of_few > without_it + 0.4  # among so few notes no third is missed


def test_of_keys_that_fit_alike_the_plainest_comes_first():
    homes = [key(name) for name in ("D", "F", "e", "G", "a", "C")]

    assert [fit.key for fit in ranked(dict.fromkeys(homes, 1.0))] == [
        key(name) for name in ("C", "a", "F", "G", "e", "D")
    ]


def test_a_tune_tells_its_key_as_it_begins():
    # the same two phrases, one in C and one in G, in both orders; both end on the note that is in neither's chord
    first, second = "C E G E D F D B C E C D", "G B D B A C A F# G B G D"
    homes = [key("C"), key("G")]
    here, there = (melody_scores(tune(names), None, homes) for names in (f"{first} {second} A", f"{second} {first} A"))

    assert here[homes[0]] > there[homes[0]]
    assert there[homes[1]] > here[homes[1]]


def test_a_lone_note_says_little():
    fits = rank_keys_of_melody(tune("E"))

    assert {str(fit.key) for fit in fits[:2]} == {"E major", "E minor"}
    assert fits[0].share < 0.3


def test_more_notes_say_more():
    few, many = (rank_keys_of_melody(tune("E G B A G E " * times))[0] for times in (1, 10))

    assert str(few.key) == str(many.key) == "E minor"
    assert few.share < many.share


# A few notes, and the keys that hold them all, of which one must come first: the tritone of a major scale lies between
# its 4th and its 7th degree, and in minor between the 2nd and the 6th, and the 4th and the raised 7th (Open Music
# Theory, "Major scales, scale degrees, and key signatures"; counted by hand).
HELD_BY_FEW_KEYS = [
    ("B F E E", "C a"), ("F# C B B", "G e"), ("B F B F", "C a"), ("C F# C F#", "G e"), ("C E G Bb A F", "F d"),
    ("B C C E E F# G", "G e"), ("D F A C#", "d"), ("F C# D", "d"), ("Ab D G", "c Eb"), ("G# D C", "a"),
]  # fmt: skip


@pytest.mark.parametrize(("names", "homes"), HELD_BY_FEW_KEYS)
def test_a_few_notes_are_in_a_key_that_holds_them_all(names, homes):
    assert rank_keys_of_melody(tune(names))[0].key in [key(home) for home in homes.split()]


# The first key that a musician names: notes that pass by half steps, or lie a half step below the note on both sides,
# decorate (Open Music Theory, "Embellishing tones"), and take nothing from the key of the others.
DECORATED = [
    ("C E G G# A G E C", "C"), ("F A C C# D C A F", "F"), ("C E G G# A G F E D C", "C"), ("C D C# D E C", "C"),
    ("C E G A G# A G F D B C C", "C"), ("C D E D# E C", "C"), ("G F# G E C", "C"), ("C G F# G Eb C", "c"),
    ("A E D# E C A", "a"), ("F E F A C B C A G F# G E F F F", "F"), ("C E G F# G A G E C D C# D B C C C", "C"),
    ("A B C A G# A B E A", "a"), ("D F A C# D", "d"), ("C D E F G A C G# A G E C", "C"),
]  # fmt: skip


@pytest.mark.parametrize("up", [-3, 0, 2, 5])
@pytest.mark.parametrize(("names", "home"), DECORATED)
def test_decorations_take_nothing_from_a_key(names, home, up):
    melody = [each.up(up) for each in tune(names)]

    assert rank_keys_of_melody(melody)[0].key == key(home).moved(up)


def test_all_twelve_notes_say_nothing():
    chromatic = weighed([PitchClass(place) for place in range(-5, 7)])

    assert {correlation(chromatic, home) for home in ALL_KEYS} == {0.0}


def test_notes_beyond_all_plain_signatures_are_answered_all_the_same():
    assert best("G### A### B### D###") == "G### major"


def test_without_notes_there_is_no_key():
    for wrong in (lambda: rank_keys_of_melody([]), lambda: rank_keys_of_both(chords("C"), [])):
        with pytest.raises(ValueError, match="a key cannot be found without notes"):
            wrong()
    with pytest.raises(ValueError, match="a key cannot be found without chords"):
        rank_keys_of_both([], tune("C"))


@pytest.mark.parametrize("length", [0, -1])
def test_a_note_without_length_is_refused(length):
    with pytest.raises(ValueError, match=f"a note lasts longer than {length} beats"):
        rank_keys_of_melody(tune("C"), [length])


def test_a_length_for_every_note():
    with pytest.raises(ValueError, match="a length for each of 2 notes"):
        rank_keys_of_melody(tune("C D"), [1])


@given(melodies)
def test_the_shares_of_a_melody_sum_to_one(melody):
    fits = rank_keys_of_melody(melody)

    assert sum(fit.share for fit in fits) == pytest.approx(1)
    assert [fit.score for fit in fits] == sorted((fit.score for fit in fits), reverse=True)
    assert {fit.key.mode for fit in fits if fit.key not in modes_heard(melody)} <= {MAJOR, MINOR}


@given(melodies, st.integers(-6, 6))
def test_a_melody_moves_with_its_keys(melody, fifths):
    homes = [Key(PitchClass(tonic), mode) for tonic in range(-8, 12) for mode in (MAJOR, MINOR)]
    old = melody_scores(melody, None, homes)
    new = melody_scores([one.up(fifths) for one in melody], None, [home.moved(fifths) for home in homes])

    assert list(new.values()) == pytest.approx(list(old.values()))


@given(melodies, st.integers(-3, 3), st.data())
def test_the_ranking_moves_with_the_melody(melody, fifths, data):
    old = {fit.key: fit.score for fit in rank_keys_of_melody(melody)}
    new = [fit.key.moved(-fifths) for fit in rank_keys_of_melody([one.up(fifths) for one in melody])]
    shared = [home for home in new if home in old]

    assert shared
    assert [old[home] for home in shared] == pytest.approx(sorted((old[home] for home in shared), reverse=True))


@given(melodies, st.randoms())
def test_the_order_of_notes_does_not_change_the_profile(melody, random):
    shuffled = random.sample(melody, len(melody))

    for home in ALL_KEYS:
        assert correlation(weighed(shuffled), home) == pytest.approx(correlation(weighed(melody), home))


@given(melodies)
def test_a_correlation_lies_between_minus_one_and_one(melody):
    for home in ALL_KEYS:
        assert -1 - 1e-9 <= correlation(weighed(melody), home) <= 1 + 1e-9


@given(falling_fifths(), melodies)
def test_chords_and_melody_together_multiply_their_odds(line, melody):
    progression = [chord.in_key(key("C")) for chord in line]
    by_chords = {fit.key: fit.score for fit in rank_keys(progression)}
    assume(not modes_heard(melody))
    by_melody = {fit.key: fit.score for fit in rank_keys_of_melody(melody)}
    both = {fit.key: fit for fit in rank_keys_of_both(progression, melody)}
    shared = by_chords.keys() & by_melody.keys()
    assume(shared)

    assert by_chords.keys() | by_melody.keys() == both.keys()
    assert sum(fit.share for fit in both.values()) == pytest.approx(1)
    for home in shared:  # what a short melody leaves, chords may explain
        assert both[home].score == pytest.approx(by_chords[home] + by_melody[home] + lost(melody, home))


def test_a_melody_decides_between_two_keys_of_the_same_chords():
    # Am F C G is published in C major and in A minor (Open Music Theory, popRockHarmony-sscp)
    axis = chords("Am F C G")

    assert str(rank_keys_of_both(axis, tune("A B C E D C B A G# A"))[0].key) == "A minor"
    assert str(rank_keys_of_both(axis, tune("E G C D E F E D B C G C"))[0].key) == "C major"
