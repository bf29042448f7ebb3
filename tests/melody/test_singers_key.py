"""In which keys a tune lies well for a singer."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nearhand.melody.instruments import INSTRUMENTS
from nearhand.melody.places import MARGIN, TOP, place_of
from nearhand.melody.ranges import VOICES, Voice, voice_of
from nearhand.melody.singers_key import fitting, ranked_keys, wider_by
from nearhand.melody.spans import Span, span_of
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.keys import parse_key
from nearhand.notation.melody_reading import parse_melody
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Progression

SEMITONES = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}


def fitting_keys(*facts):
    return fitting(ranked_keys(*facts))


def midi(name):
    """A plain note such as ``Bb3`` as its MIDI number (MIDI 1.0; C4 is middle C, 60)."""
    return 12 * (int(name[-1]) + 1) + SEMITONES[name[0]] + name.count("#") - name.count("b")


def span(names):
    return Span(*map(midi, names.split()))


def voice(names):
    low, high, *comfort = map(midi, names.split())
    return Voice("", low, high, *comfort) if comfort else voice_of(low, high)


def alone(key):
    """A tune of no chords in a key."""
    return Progression(parse_key(key), ())


def tune_of(notes, key="C"):
    """The span of a melody with its times."""
    return span_of(parse_melody(notes, parse_key(key)))


# Tune, its key, the singer's range, the shifts that are possible, the key that is best. Computed by hand by two rules:
# both ends must lie in the range; then middle to middle, fewer accidentals, the smaller shift (common practice, no
# source).
CHOSEN = [
    ("C4 D5", "C", "G3 A4", {-5}, "G major"),
    ("C4 D5", "C", "A3 C5", {-3, -2}, "Bb major"),
    ("G3 C5", "G", "C3 G4", {-7, -6, -5}, "Db major"),
    ("E4 E5", "A", "E3 G4", {-12, -11, -10, -9}, "Bb major"),
]


@pytest.mark.parametrize(("tune", "key", "singer", "shifts", "best"), CHOSEN)
def test_the_keys_that_fit_and_the_best_of_them(tune, key, singer, shifts, best):
    fits = fitting_keys(span(tune), [voice(singer)], alone(key))

    assert {fit.places[0].low - span(tune).low for fit in fits} == shifts
    assert str(fits[0].key) == best


def test_a_tune_wider_than_the_range_fits_nowhere_and_is_told_by_how_much():
    tune, singer = span("C4 F5"), voice("A3 B4")
    nearest = ranked_keys(tune, [singer], alone("F"))[0]

    assert fitting_keys(tune, [singer], alone("F")) == ()
    assert wider_by(tune, [singer, voice("C3 C6")]) == (3, 0)  # 17 semitones in 14
    assert str(nearest.key) == "C major"  # a whole tone too low below, a semitone too high above
    assert nearest.room == ((-2, -1),)
    assert nearest.too_far == 2


RANGES = [  # the usual ranges of handbook tables, second-hand; they differ by a third and more
    ("soprano", "C4 C6"), ("mezzo-soprano", "A3 A5"), ("alto", "F3 F5"), ("tenor", "C3 C5"), ("baritone", "G2 F4"),
    ("bass", "E2 E4"),
]  # fmt: skip
COMFORT = [  # common practice, no source
    ("soprano", "D4 F5"), ("mezzo-soprano", "B3 D5"), ("alto", "G3 B4"), ("tenor", "D3 F4"), ("baritone", "A2 D4"),
    ("bass", "G2 B3"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "names"), RANGES)
def test_the_kinds_of_voices_have_the_usual_ranges_and_their_comfort_within(name, names):
    found = VOICES[name]

    assert (found.low, found.high) == tuple(map(midi, names.split()))
    assert (found.comfort_low, found.comfort_high) == tuple(map(midi, dict(COMFORT)[name].split()))
    assert found.low < found.comfort_low < found.comfort_high < found.high
    assert found.name == name
    assert len(VOICES) == len(RANGES)


keys = st.builds(Key, st.integers(-6, 6).map(PitchClass), st.sampled_from([MAJOR, MINOR]))
bare_voices = st.tuples(st.integers(36, 60), st.integers(0, 30)).map(lambda pair: voice_of(pair[0], pair[0] + pair[1]))


@st.composite
def told_voices(draw):
    """Singers who tell the comfortable part, too."""
    notes = sorted(draw(st.lists(st.integers(36, 84), min_size=4, max_size=4)))
    return Voice("", notes[0], notes[3], notes[1], notes[2])


@st.composite
def timed_spans(draw):
    """Spans with the time at each note; the ends may be grace notes, which have none."""
    low, width = draw(st.integers(40, 72)), draw(st.integers(0, 22))
    times = draw(st.dictionaries(st.integers(0, width), st.integers(1, 40), min_size=1, max_size=8))
    return Span(low, low + width, draw(st.booleans()), tuple(sorted(times.items())))


bare_spans = st.tuples(st.integers(40, 72), st.integers(0, 22), st.booleans()).map(
    lambda row: Span(row[0], row[0] + row[1], row[2])
)
voices = bare_voices | told_voices()
spans = bare_spans | timed_spans()
duets = st.lists(voices, min_size=1, max_size=3)


def lows_in_class(tune, semitones):
    """Every place in the MIDI numbers at which a tune may begin in a key so many semitones above its own."""
    return [low for low in range(128 - tune.width) if (low - tune.low - semitones) % 12 == 0]


def fits_at(tune, singer, low):
    return singer.low <= low and low + tune.width <= singer.high


@given(spans, duets, keys)
def test_each_key_that_fits_does_and_none_that_fits_is_left_out(tune, singers, key):
    fits = fitting_keys(tune, singers, Progression(key, ()))
    possible = {
        semitones
        for semitones in range(12)
        if all(any(fits_at(tune, one, low) for low in lows_in_class(tune, semitones)) for one in singers)
    }

    assert {(fit.key.tonic.semitones - key.tonic.semitones) % 12 for fit in fits} == possible
    assert len(fits) == len(possible)
    for fit in fits:
        assert abs(fit.shift) <= 7
        assert fit.key.mode == key.mode
        assert abs(fit.key.signature) <= max(6, abs(key.signature))
        assert len(fit.places) == len(singers)
        for place, singer in zip(fit.places, singers, strict=True):
            assert fits_at(tune, singer, place.low)
            assert place.high - place.low == tune.width
            assert (place.below, place.above) == (place.low - singer.low, singer.high - place.high)
            assert (place.low - tune.low - fit.shift) % 12 == 0


@given(spans, duets, keys, st.integers(0, 12), st.integers(0, 12))
def test_a_wider_range_never_loses_a_key(tune, singers, key, below, above):
    wider = [one._replace(low=one.low - below, high=one.high + above) for one in singers]
    before, after = (fitting_keys(tune, them, Progression(key, ())) for them in (singers, wider))

    assert {fit.key for fit in before} <= {fit.key for fit in after}


@given(spans, duets, keys, st.lists(st.sampled_from(list(INSTRUMENTS.values())), max_size=2))
def test_the_order_is_a_total_one_by_rank(tune, singers, key, instruments):
    ranked = ranked_keys(tune, singers, Progression(key, ()), instruments)

    assert len({fit.key.tonic.semitones for fit in ranked}) == len(ranked) == 12
    assert all(one.rank < other.rank for one, other in pairwise(ranked))
    assert fitting_keys(tune, singers, Progression(key, ()), instruments) == tuple(
        fit for fit in ranked if not fit.too_far
    )


@given(bare_spans, voices, keys)
def test_told_by_its_ends_a_tune_lies_best_with_its_middle_in_the_middle_of_comfort(tune, singer, key):
    fits = fitting_keys(tune, [singer], Progression(key, ()))
    found = [abs(fit.places[0].low + fit.places[0].high - singer.comfort_low - singer.comfort_high) for fit in fits]

    assert found == sorted(found) == [fit.places[0].off_middle for fit in fits]


def percent_of(tune, is_counted):
    total = sum(beats for _, beats in tune.times)
    return 100 * sum(beats for above, beats in tune.times if is_counted(above)) / total


@given(timed_spans(), voices, st.integers(20, 80))
def test_time_is_counted_where_it_is_comfortable_and_at_the_top(tune, singer, low):
    place = place_of(tune, singer, low)
    easy = percent_of(tune, lambda above: singer.comfort_low <= low + above <= singer.comfort_high)
    top = percent_of(tune, lambda above: low + above >= singer.high - TOP)
    total = sum(beats for _, beats in tune.times)
    mean = sum((low + above) * beats for above, beats in tune.times) / total
    off = abs(2 * mean - singer.comfort_low - singer.comfort_high)

    for found, exact in ((place.comfortable, easy), (place.at_top, top)):
        assert abs(found - exact) <= 1
        assert (found == 0) == (exact == 0)
        assert (found == 100) == (abs(exact - 100) < 1e-9)
    assert place.off_middle in (int(off - 1e-9), int(off + 1e-9))


def plain_strain(tune, singer, low):
    """How hard a melody is in a place, counted anew: too far, uncomfortable, cramped, at the top."""
    below, above = low - singer.low, singer.high - low - tune.width
    place = place_of(tune, singer, low)
    tenths = [int(percent / 10 + 0.5) for percent in (100 - place.comfortable, place.at_top)]
    return max(-below, -above, 0), tenths[0], max(0, MARGIN - min(below, above)), tenths[1]


def mean_off_middle(tune, singer, low):
    """Semitones from the mean of the notes by their time to the middle of the comfortable part."""
    total = sum(beats for _, beats in tune.times)
    mean = Fraction(sum((low + above) * beats for above, beats in tune.times), total)
    return abs(mean - Fraction(singer.comfort_low + singer.comfort_high, 2))


@given(timed_spans(), duets, keys)
def test_of_several_singers_the_one_who_is_worst_off_decides_and_each_has_the_best_octave(tune, singers, key):
    for fit in ranked_keys(tune, singers, Progression(key, ())):
        lows = lows_in_class(tune, fit.shift)
        strains = [plain_strain(tune, one, place.low) for one, place in zip(singers, fit.places, strict=True)]
        assert strains == [min(plain_strain(tune, one, low) for low in lows) for one in singers]
        assert fit.rank[:4] == tuple(map(max, zip(*strains, strict=True)))
        off_middle = [mean_off_middle(tune, one, place.low) for one, place in zip(singers, fit.places, strict=True)]
        assert fit.rank[4] == max(int(semitones / 2) for semitones in off_middle)  # in whole tones
        together = [low for low in lows if [plain_strain(tune, one, low) for one in singers] == strains]
        if together:  # one octave for all costs no comfort
            assert len({place.low for place in fit.places}) == 1


@given(bare_spans, st.lists(voices, min_size=2, max_size=3), keys)
def test_of_ends_alone_too_the_one_who_is_worst_off_decides(tune, singers, key):
    for fit in fitting_keys(tune, singers, Progression(key, ())):
        middles = [
            abs(place.low + place.high - one.comfort_low - one.comfort_high)
            for place, one in zip(fit.places, singers, strict=True)
        ]
        assert fit.rank[:2] == (0, max(middles))


@given(st.integers(30, 80), st.integers(0, 40), duets, keys)
def test_where_nothing_fits_no_choice_of_places_passes_the_ranges_by_less_than_the_nearest(low, width, singers, key):
    tune = Span(low, low + width)
    nearest = ranked_keys(tune, singers, Progression(key, ()))[0]

    def passes(one, bottom):
        return max(one.low - bottom, bottom + width - one.high, 0)

    least = min(
        max(min(passes(one, bottom) for bottom in lows_in_class(tune, semitones)) for one in singers)
        for semitones in range(12)
    )
    assert (
        nearest.too_far
        == least
        == max(passes(one, place.low) for one, place in zip(singers, nearest.places, strict=True))
    )


@given(timed_spans(), duets, keys, st.integers(2, 9))
def test_a_slower_tune_has_the_same_keys(tune, singers, key, times):
    slower = tune._replace(times=tuple((above, beats * times) for above, beats in tune.times))
    progression = Progression(key, ())

    assert ranked_keys(slower, singers, progression) == ranked_keys(tune, singers, progression)


@given(spans.filter(lambda tune: not tune.is_free), voices, keys)
def test_a_voice_an_octave_lower_takes_the_same_keys_an_octave_lower(tune, singer, key):
    # men who read the treble clef sing an octave below it (common practice, no source)
    lower = Voice("", *(note - 12 for note in singer[1:]))
    high, low = (fitting_keys(tune, [one], Progression(key, ())) for one in (singer, lower))

    assert {fit.key: fit.rank[:-1] for fit in high} == {fit.key: fit.rank[:-1] for fit in low}


# Tune in C, a range that it fits exactly, the way to the key, and the octaves that are left: a fifth at most, and the
# fewest octaves (ours).
WAYS = [
    ("C4 C5", "G3 G4", -5, 0), ("C4 C5", "F3 F4", -7, 0), ("C4 C5", "E3 E4", 4, -1), ("C4 C5", "F#3 F#4", -6, 0),
    ("C4 C5", "C3 C4", 0, -1), ("C4 C5", "F#4 F#5", 6, 0), ("C4 C5", "G4 G5", 7, 0), ("C4 C5", "Ab4 Ab5", -4, 1),
    ("C4 C5", "F2 F3", -7, -1), ("C4 C5", "F#2 F#3", -6, -1), ("C4 C5", "E2 E3", 4, -2),
]  # fmt: skip


@pytest.mark.parametrize(("tune", "singer", "shift", "octaves"), WAYS)
def test_the_way_to_a_key_is_a_fifth_at_most_and_the_voice_takes_the_octaves(tune, singer, shift, octaves):
    (fit,) = fitting_keys(span(tune), [voice(singer)], alone("C"))

    assert (fit.shift, octaves_of(fit)) == (shift, [octaves])
    assert fit.distance == min(shift % 12, -shift % 12)


def octaves_of(fit):
    return [place.octaves for place in fit.places]


def test_a_man_and_a_woman_read_one_part_an_octave_apart():
    tune = tune_of("C4 D4 E4 F4 | G4 - A4 - | G4 F4 E4 D4 | C4 - - -")
    (best, *_) = fitting_keys(tune, [VOICES["alto"], VOICES["baritone"]], alone("C"))

    assert octaves_of(best) == [0, -1]


def test_two_voices_of_one_height_sing_at_the_same_pitch():
    tune = tune_of("C4 D4 E4 F4 | G4 - A4 - | G4 F4 E4 D4 | C4 - - -")
    best = fitting_keys(tune, [VOICES["alto"], VOICES["mezzo-soprano"]], alone("C"))[0]

    assert len({place.low for place in best.places}) == 1


def test_of_degrees_octaves_are_counted_from_what_most_sing():
    tune = tune_of("1 2 3 4 | 5 - 6 - | 5 4 3 2 | 1 - - -")
    singers = [VOICES[name] for name in ("soprano", "bass", "mezzo-soprano")]
    best = fitting_keys(tune, singers, alone("C"))[0]

    assert tune.is_free
    assert octaves_of(best) == [0, -1, 0]


def test_comfort_goes_before_the_middle_of_the_ends():
    # Most of this tune lies low, with one high note: between its ends the middle is far above the mean.
    tune = tune_of("C4 D4 C4 D4 | C4 D4 E4 D4 | C4 D4 C4 G5 | C4 - - -")
    singer = voice("G3 C6 C4 F4")
    by_time = fitting_keys(tune, [singer], alone("C"))[0]
    by_ends = fitting_keys(tune._replace(times=()), [singer], alone("C"))[0]

    assert by_time.places[0].comfortable == 94  # 15 of 16 beats
    assert by_time.places[0].low == midi("C4")
    assert by_ends.places[0].low < midi("C4")


def test_a_percent_of_comfort_does_not_decide_against_the_room_at_the_ends():
    # 99 of 100 beats comfortable where the top note has no room, 98 where there is some: the same step of ten.
    tune = Span(60, 72, times=((0, 1), (5, 98), (12, 1)))
    singer = Voice("", 58, 72, 60, 70)
    places = {low: place_of(tune, singer, low) for low in (59, 60)}

    assert [places[low].comfortable for low in (60, 59)] == [99, 98]
    assert places[59].rank < places[60].rank


def test_equal_places_are_parted_by_the_accidentals_that_the_instruments_read():
    # A4-C5 for C4-D5: A and B flat lie equally well. What instruments read: a third up for clarinets in A, a sixth for
    # alto saxophones (transpositions of music21's module instrument; of the clarinet in A, common practice, no source)
    tune, singer = span("C4 D5"), voice("A3 C5")
    found = {
        names: [str(fit.key.tonic) for fit in fitting_keys(tune, [singer], alone("C"), [INSTRUMENTS[n] for n in names])]
        for names in ((), ("alto sax",), ("clarinet in A",), ("clarinet in A", "violin"))
    }

    assert found == {
        (): ["Bb", "A"],  # 2 flats, 3 sharps
        ("alto sax",): ["Bb", "A"],  # 1 sharp, 6 sharps
        ("clarinet in A",): ["A", "Bb"],  # none, 5 flats
        ("clarinet in A", "violin"): ["A", "Bb"],  # 0 + 3, 5 + 2
    }


READ = [  # key, instrument, key that is read, fret: handbook vectors (common practice; arithmetic recomputed)
    ("Eb", "trumpet", "F", None), ("Eb", "alto sax", "C", None), ("Eb", "horn", "Bb", None),
    ("E", "trumpet", "F#", None), ("E", "alto sax", "Db", None), ("E", "horn", "B", None),
    ("C", "alto flute", "F", None), ("Eb", "guitar", "D", 1), ("C", "guitar", "C", 0), ("Ab", "guitar", "G", 1),
]  # fmt: skip


@pytest.mark.parametrize(("key", "name", "read", "fret"), READ)
def test_each_instrument_reads_its_own_key_and_the_guitar_its_open_shapes(key, name, read, fret):
    tune = Span(60, 60)
    fits = ranked_keys(tune, [voice("C2 C6")], alone("C"), [INSTRUMENTS[name]])
    (found,) = [fit for fit in fits if str(fit.key) == f"{key} major"]

    assert [(str(one.key), one.fret) for one in found.readings] == [(f"{read} major", fret)]
    assert found.accidentals == abs(parse_key(read).signature)


def test_the_name_of_a_key_is_the_one_that_its_chords_are_written_in():
    # six sharps or six flats: that which needs fewer double accidentals (ours)
    tune = resolve(read_chart("| I | bVI | bVII | I |"), parse_key("C"))
    (fit,) = fitting_keys(span("C4 C5"), [voice("F#3 F#4")], tune)

    assert str(fit.key) == "F# major"


@pytest.mark.parametrize(
    ("own", "names", "key", "read"),
    [
        ("C", ("clarinet in A",), "F# major", "A major"),  # a minor third up; above G flat it is B double flat
        ("Ab", ("clarinet in A",), "F# major", "A major"),
        ("C", ("alto sax",), "Gb major", "Eb major"),  # a major sixth up; above F sharp it is D sharp
        ("B", ("alto sax",), "Gb major", "Eb major"),
        ("C", (), "Gb major", ""),
        ("B", (), "F# major", ""),
        ("F#", ("alto sax",), "F# major", "Eb major"),  # the tune's own key keeps the name that it came with
        ("A minor", ("clarinet in A",), "D# minor", "F# minor"),
        ("B minor", ("alto sax",), "Eb minor", "C minor"),
    ],
)
def test_six_sharps_or_six_flats_are_named_as_the_instruments_read_them(own, names, key, read):
    # intervals of the instruments counted by hand; which of two equal names a singer gets alone is ours
    fits = ranked_keys(span("C4 C5"), [voice("C2 C6")], alone(own), [INSTRUMENTS[name] for name in names])
    (found,) = [fit for fit in fits if fit.key.tonic.semitones == parse_key(key).tonic.semitones]

    assert str(found.key) == key
    assert [str(one.key) for one in found.readings] == [read] * len(names)


def test_comfort_is_the_middle_of_a_range():
    assert voice("C3 C5") == Voice("", 48, 72, 52, 68)  # four of six parts (common practice, no source)


@given(st.integers(30, 60), st.integers(0, 40))
def test_comfort_lies_within_the_range_however_narrow_that_is(low, width):
    found = voice_of(low, low + width)

    assert found.low <= found.comfort_low <= found.comfort_high <= found.high


# Melody, lowest and highest note, beats at each (of a quarter note, in 32nd notes: eight), counted by hand.
SPANS = [
    ("C4 - E4 r", (60, 64), {0: 16, 4: 8}),
    ("{G4}C4 E4", (60, 67), {0: 8, 4: 8}),
    ("[3/8] C4 D4 C4 | D4 - -", (60, 62), {0: 8, 2: 16}),
    ("G4 | C4 - - - | - [E4 E4] r - ", (60, 67), {0: 40, 4: 8, 7: 8}),
]


@pytest.mark.parametrize(("notes", "ends", "times"), SPANS)
def test_the_span_of_a_melody_is_its_ends_and_the_time_at_each_note(notes, ends, times):
    found = tune_of(notes)

    assert (found.low, found.high) == ends
    assert dict(found.times) == times
    assert not found.is_free


def test_rests_alone_have_no_span():
    assert tune_of("r r | r") is None


@given(timed_spans())
def test_half_of_the_time_lies_in_the_middle_half_and_a_quarter_at_most_on_each_side(tune):
    low, high = tune.middle_half
    total = sum(beats for _, beats in tune.times)
    below, within, above = (
        sum(beats for at, beats in tune.times if at in part)
        for part in (range(low), range(low, high + 1), range(high + 1, 128))
    )

    assert 4 * below <= total
    assert 4 * above <= total
    assert 2 * within >= total
    assert {low, high} <= {at for at, _ in tune.times}
