"""The topics of help: one entry each, with lines that can be run. Verbs have their help in the table of verbs."""

from __future__ import annotations

from nearhand.theory.record import NamedTuple
from nearhand.verbs.key_actions import SIGNS_SAY, keys_help


class Topic(NamedTuple):
    """A topic: its name and other names, what it is in a few words, its paragraphs, and examples that can be run.

    ``rows`` are a word and what it means each, drawn below the paragraphs. All is written with keyboard characters.
    """

    name: str
    aliases: tuple[str, ...]
    summary: str
    text: tuple[str, ...]
    examples: tuple[str, ...] = ()
    rows: tuple[tuple[str, str], ...] = ()


TOPICS = (
    Topic(
        "chord symbols",
        ("chords", "chord", "chord symbol", "slash chords"),
        "how chords may be written",
        (
            "A chord begins with a capital letter. All usual spellings are read: Cmaj7 CM7 C^7, Cm7 C-7 Cmin7, "
            "Cdim Co, Cm7b5 C-7b5, C+ Caug, C7b9#11 C7(b9,#11), C6/9, Csus4.",
            "A slash puts a note in the bass: C/E. Two slashes put a chord over a chord: D//C7. (Am) may be left out; "
            "N.C. is no chord.",
            "Where the trade has two readings the commoner is taken, and a line says so: C2 is C(add9), with its "
            "third.",
            "symbols chooses how they are written.",
        ),
        (
            "| Cmaj7 | Am7 | Dm7b5 | G7b9 |",
            "C: | C/E | D//C7 | N.C. | C2 |",
            'show "| Cm7b5 | F7b9 | Bbm(maj7) |" --symbols jazz',
        ),
    ),
    Topic(
        "numerals",
        ("roman numerals", "roman", "numeral", "figures of inversion"),
        "Roman numerals and their figures",
        (
            "Numerals need a key, in front or on the stand: E minor: i v6 iv6 V7. Capitals are major, small ones "
            "minor; o is diminished, /o half-diminished, + augmented.",
            "Figures are inversions: 6 and 64 of triads; 65, 43 and 42 of sevenths. V7 and I7 have the minor seventh "
            "of a chord symbol; sevenths scale reads that of the scale, as RomanText does.",
            "Behind a slash, a numeral is what the chord is applied to (V7/ii), a digit the degree in the bass (v/7). "
            "N6, It6, Fr43, Ger65 and Cad64 are read too.",
        ),
        (
            "C: I V65/V V7 I",
            "A minor: i N6 Cad64 V7 i",
            'show "C: I7 IV7 V7" --sevenths scale',
        ),
    ),
    Topic(
        "numbers",
        ("number charts", "number chart", "number"),
        "number charts",
        (
            "Numbers need a key, in front or on the stand: G: 1 5/7 6- 4. A dash is minor, o diminished, + augmented; "
            "extensions follow, so that 57 is the fifth degree with a seventh. Behind a slash stands the bass.",
            "Without bar lines each number fills a bar; those that share one stand in square brackets.",
            "In minor they count from the key's own tonic, which is 1-. Many charts count from the relative major, "
            "where it is 6-: degrees relative.",
        ),
        (
            "G: 1 5/7 6- [4 57] 1",
            "A minor: 1- 4- 57 1-",
            'show "6- 4 1 5" --key "A minor" --degrees relative',
        ),
    ),
    Topic(
        "minor",
        ("minor keys", "minor key", "forms of minor", "natural minor", "harmonic minor", "melodic minor"),
        "its three forms, and how degrees are counted",
        (
            "Natural minor has the low 6th and 7th degree, harmonic minor raises the 7th, melodic minor both on the "
            "way up. Chords are spelled by it: in C minor v is Gm with Bb, V7 is G7 with B.",
            "explain names the form each chord comes from; cadences tells where the 6th or 7th degree turns.",
            "VI and VII are on the low degrees already: F and G in A minor. degrees major counts against the major "
            "scale, and calls them bVI and bVII.",
        ),
        (
            "C minor: i v6 iv6 V7",
            'explain "A minor: i iv V7 VI"',
            'show "A minor: i bVI bVII i" --degrees major',
        ),
    ),
    Topic(
        "bars and repeats",
        ("bars", "bar", "repeats", "repeat", "bar lines", "meter", "beats"),
        "how a chart is written",
        (
            "Bars stand between |. Chords of a bar share it evenly; a lone / is one more beat of the chord before it. "
            "N.C. is a rest, % the bar before once more, and || ends a section.",
            "|: and :| repeat. Where they hold the whole, the last chord leads back to the first; loop on asks for it, "
            "loop off against it.",
            "[3/4] in front of a bar changes the meter. Lines pasted together are one chart.",
        ),
        (
            "| C / / G7 | % | Am F | C |",
            "|: Am | Dm/F | E7 :|",
            "| [3/4] C | F / G7 | [4/4] C |",
        ),
    ),
    Topic(
        "melodies",
        ("melody", "melody notation", "notes", "tune notation", "tunes", "solfege", "syllables", "rhythm"),
        "tunes in names, degrees or syllables, and how they are written",
        (
            "melody NOTES puts a tune over the chords on the stand, or alone; to, next and all that moves take it "
            "along. melody shows it, melody off takes it away; octave, way and sing choose where and how it is shown.",
        ),
        (
            "melody --alone G: 5_ | 1 2 [3 4] 5 | 6 b7 6 - |",
            'show "E minor: i v6 iv6 V7" --melody "5:2 3 1 | 2 - 7_ - | 1 - 4 3 | 2 - #7_ -" --voicing none',
            "melody --alone D minor: do [re me] fa sol | le:3/2 [sol fa]:1/2 me - --sing syllables",
            "melody --alone [3/4] E4 {F#4}E4 D4(tr) | C4 - r",
        ),
        (
            ("E4 F# Bb", "names; without an octave the nearest to the note before (middle C is C4)"),
            ("5 b3 #4", "degrees of the key; in minor 7 is the low seventh, #7 the leading tone"),
            ("1' 5_", "an octave above, an octave below"),
            ("do fi te", "movable syllables, do is the tonic; Do Re Mi with capitals are C D E"),
            ("G: 5 3", "the key in front; names need none"),
            ("5 -", "a note lasts a beat, and - holds it for another, over a bar line too"),
            ("5:2 5:3/2", "a length in beats"),
            ("[5 6]", "notes that share a beat; [5:3 6] by shares, [5 6 7]:2 over two beats"),
            ("r", "a rest; 0 is one too"),
            (
                "{6}5 5(tr)",
                "a grace note; an ornament: (tr), (mordent), (inverted-mordent), (turn), (inverted-turn)",
            ),
            ("5_ | 1", "bar lines; a short first bar is a pickup; without them the meter makes the bars"),
            ("[3/4]", "another meter, at the head of a bar"),
        ),
    ),
    Topic(
        "keys",
        ("key bindings", "bindings", "keyboard", "typing"),
        "what the keys of the keyboard do",
        (SIGNS_SAY,),
        rows=keys_help(),
    ),
    Topic(
        "moving",
        ("other keys", "transposing", "transpose", "circle of fifths", "circle"),
        "to other keys, and round the circle of fifths",
        (
            "to KEY shows the chords in another key; to all shows the twelve by falling fifths. A bare note keeps the "
            "mode: to C goes to C minor from a tune in minor.",
            "next goes a fifth down, back a fifth up, up and down a semitone, home to the tune's own key.",
            "key, relative and parallel move nothing: they name the key that the same chords are read in.",
        ),
        (
            'show "| Em | Bm/D | Am/C | B7 |" --to "C minor,G minor"',
            'show "| Dm7 | G7 | Cmaj7 |" --to all --voicing none',
        ),
    ),
    Topic(
        "borrowed chords",
        ("borrowed", "borrowing", "mixture", "modal mixture", "parallel modes"),
        "chords from the other modes on the same tonic",
        (
            "A chord is borrowed when it belongs to another mode on the same tonic: Fm (iv), Bb (bVII) and Ab (bVI) "
            "come into C major from C minor.",
            "borrow KEY lists all such chords; explain names where each chord of yours comes from; instead N offers "
            "some in place of a chord.",
        ),
        (
            "borrow C major",
            'explain "C: | C | Ab | Fm | C |"',
            'instead "C: | C | F | C |" 2',
        ),
    ),
    Topic(
        "voicings",
        ("voicing", "hands", "families", "left hand", "fingers"),
        "how chords lie under two hands",
        (
            "voice chooses a family: close, open, drop2, spread, shell, rootless, four-part and more. Of all ways "
            "through the chords the smoothest in it is shown.",
            "left, span, register and top ask for more; pin 2 keeps chord 2 as it is. others lists the next best ways, "
            "why 2 tells what another voicing would cost.",
            "Stretches and repetition tire the hands: rest often, stop when it hurts, and ask a teacher or a clinician "
            "about pain that stays.",
        ),
        (
            'show "| Dm7 | G7 | Cmaj7 |" --voicing drop2',
            'lines "| C | F | G7 | C |" --voicing four-part',
            'why "| Dm7 | G7 | Cmaj7 |" 2',
        ),
    ),
    Topic(
        "notes over chords",
        ("non-chord tones", "passing tones", "neighbours", "suspensions", "tensions", "clashes", "appoggiatura"),
        "what tones calls the notes of a melody",
        (
            "tones holds every note of the melody against its chord. A short note is asked first what it does between "
            "the notes around it, a long one (more than a beat) first whether it stands over the chord as a tension.",
            "A clash is heard on the beat, or for a beat, and no step explains it. top melody puts the melody on "
            "top of the voicings.",
        ),
        (
            'tones "| C | G7 | C |" --melody "E4 F E C | B3 A3 B3 D | C - - -"',
            'show "| C | Am7 | F G7 |" --melody "E5 - G5 E5 | C5 - B4 - | A4 - B4 -" --top melody',
        ),
        (
            ("passing tone", "a step to it, and a step on in the same direction"),
            ("neighbour", "a step away from a chord tone and back, upper or lower"),
            ("double neighbour", "two short notes, a step above and a step below the same chord tone"),
            ("suspension", "a tone of the chord before, kept, then a step down; 4-3 are its intervals from the bass"),
            ("retardation", "the same, with a step up"),
            ("anticipation", "a tone of the next chord that comes early"),
            ("appoggiatura", "a leap to it, and a step from it to a chord tone"),
            ("escape tone", "a step to it on a weak place, and a leap back the other way"),
            ("incomplete neighbour", "a short note with a step on one side and a leap on the other, else unexplained"),
            ("pedal", "a tone that sounds through a chord it does not belong to"),
            ("tension", "9, 11, 13 or an altered one that the chord lets stand"),
            ("added tone", "a sixth or seventh that the chord leaves open"),
            ("clash", "a semitone beside a chord tone, or against its other form"),
        ),
    ),
    Topic(
        "files",
        ("chart files", "saving", "opening"),
        "charts on disk",
        (
            "open FILE reads a chart, save FILE writes one in the key you see, list FOLDER lists the charts in a "
            "folder.",
            "A chart file is TOML: title, key, meter, tempo and notes, then [[sections]] with name, meter and chords.",
            "undo takes any change back, redo makes it again.",
        ),
        ("list",),
    ),
    Topic(
        "settings",
        ("setting", "options", "conventions"),
        "how chords are read, written and played",
        (
            "degrees, sevenths, symbols, figures and names say how chords are read and written; voice, loop, left, "
            "span, register and top how they are played; plain, layout, colours and paging how answers look.",
            "Typed as verbs they hold for this session; set keeps one for every start, as in set symbols jazz. As "
            "options of show and its like they hold for one answer. help symbols, or any other, tells the words that "
            "may follow.",
        ),
        (
            'show "| Cm7b5 | F7 | Bbmaj7 |" --symbols jazz',
            'show "C: I V65/V V7 I" --figures raised',
            'show "| Am | F | G | Am |" --degrees major',
        ),
    ),
    Topic(
        "plain",
        ("screen reader", "screen readers", "reading aloud", "ears", "without colours", "spoken"),
        "for screen readers, and screens without signs or colours",
        (
            "layout spoken writes for ears: no grids and no keyboards, one fact a line, flats and sharps as words. "
            "plain on draws with the characters of any keyboard.",
            "Nothing is said by colour alone. With NO_COLOR=1 or TERM=dumb in the environment there are no colours; "
            "paging off lets long answers run through.",
        ),
        (
            'show "| Em | Bm/D | Am/C | B7 |" --layout spoken',
            'explain "| C | Fm | G7 | C |" --layout spoken',
            'show "| Em | Bm/D | Am/C | B7 |" --plain',
        ),
    ),
)

BY_TOPIC = {name: topic for topic in TOPICS for name in (topic.name, *topic.aliases)}


def find_topic(text: str) -> Topic | None:
    """The topic of a name, however it is capitalised; None where there is none.

    >>> find_topic("Chord  Symbols").name, find_topic("roman numerals").name, find_topic("weather")
    ('chord symbols', 'numerals', None)
    """
    return BY_TOPIC.get(" ".join(text.lower().split()))
