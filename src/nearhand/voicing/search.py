"""From a progression and a player's wishes to strands of candidates, and the path that costs least through them.

Where no cost and no wish ties the hands together, each hand is a strand of its own and takes its own shortest way; else
both are searched as one.
"""

from __future__ import annotations

from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Candidate, Layer, left_layer, orders_in, upper_layer, whole_layer
from nearhand.voicing.families import FAMILIES, FOUR_PART, FREE, Family
from nearhand.voicing.hands import SPAN, Register
from nearhand.voicing.left_hand import bass_register, left_patterns
from nearhand.voicing.path import NEVER, least_path
from nearhand.voicing.strands import Strand
from nearhand.voicing.weights import BETWEEN_HANDS, KEYBOARD, Weights, weights_of
from nearhand.voicing.wishes import Wishes

_SINGLE_NOTES = ("bass", "root")


class Task(NamedTuple):
    """What is to be searched: a progression in its key, the wishes, and whether the last chord leads to the first.

    ``home``: the tune's own key, in which pins and a given top line sound. ``linked``: whether both hands are searched
    as one in any case.
    """

    progression: Progression
    wishes: Wishes
    loop: bool = False
    home: Key | None = None
    linked: bool = False

    @property
    def family(self) -> Family:
        """The family wished for."""
        return FAMILIES[self.wishes.style]

    @property
    def weights(self) -> Weights:
        """The weights of its style, with the changed ones."""
        return weights_of(self.wishes.style, self.wishes.weights, self.wishes.top)

    @property
    def shifts(self) -> tuple[int, ...]:
        """Semitones by which what sounds in the home key may be moved to this one: the nearer way first."""
        own = self.progression.key.tonic.semitones
        distance = 0 if self.home is None else (own - self.home.tonic.semitones) % 12
        return tuple(sorted((distance, distance - 12), key=abs)) if distance else (0,)

    @property
    def register(self) -> Register:
        """The register of the upper notes."""
        return self.register_of(self.family)

    def register_of(self, family: Family) -> Register:
        """The register of a family's upper notes: its own, as far as the wishes do not change or move it."""
        own, wishes = family.register, self.wishes
        if wishes.low is not None or wishes.high is not None:
            low, high = own.low if wishes.low is None else wishes.low, own.high if wishes.high is None else wishes.high
            own = Register(low, high, (low + high) // 2)
        return self._moved(own)

    def bass_register_of(self, family: Family) -> Register:
        """The register of the bass in a family."""
        return self._moved(bass_register(family.bass, self.wishes.left))

    @property
    def register_shift(self) -> int:
        """Semitones by which registers have moved from where the wishes put them."""
        return self.shifts[0] if self.wishes.moves else 0

    def _moved(self, register: Register) -> Register:
        shift = self.register_shift
        return Register(*(note + shift for note in register)) if shift else register


class Search(NamedTuple):
    """The strands of a task; ``styles``: the family of each chord."""

    task: Task
    strands: tuple[Strand, ...]
    styles: tuple[str, ...]

    def path(self) -> tuple[Candidate, ...]:
        """The candidate of each chord on the path of the wished number.

        Raises InputError where there is none.
        """
        number = self.task.wishes.path
        if number > 1:
            from nearhand.voicing.others import numbered_path

            return numbered_path(self, number)
        return merged([self.best_of(place) for place in range(len(self.strands))])

    def best_of(self, place: int) -> tuple[Candidate, ...]:
        """The best path of one strand.

        Raises InputError where there is none.
        """
        strand = self.strands[place]
        total, choices = least_path(strand.trellis)
        if total >= NEVER:
            from nearhand.voicing.refusals import refuse_top_line

            refuse_top_line(self)
        return strand.taking(choices)


def merged(paths: list[tuple[Candidate, ...]]) -> tuple[Candidate, ...]:
    """The candidates of both hands from those of each."""
    if len(paths) == 1:
        return paths[0]
    rights, lefts = paths
    return tuple(Candidate(left.bass, right.upper, right.reached) for right, left in zip(rights, lefts, strict=True))


def search_for(task: Task) -> Search:
    """The search that a task asks for.

    Raises ValueError for a style that does not exist, InputError for wishes that some chord cannot meet.
    """
    if task.wishes.style not in FAMILIES:
        raise ValueError(f"style must be one of {', '.join(FAMILIES)} (got {task.wishes.style!r})")
    strands, styles = _apart(task) if _is_apart(task) else _as_one(task)
    return Search(task, strands, styles)


def layer_at(place: int, task: Task) -> tuple[Layer, str]:
    """All voicings of one chord that register and span leave, whatever is pinned, and the family they are from."""
    if task.wishes.style == FOUR_PART:
        return _part_layers(task)[0].layers[place], FOUR_PART
    return _whole_layer(task.progression.relative_chords[place], task)


def _is_apart(task: Task) -> bool:
    """Whether nothing ties the hands together."""
    family, wishes, weights = task.family, task.wishes, task.weights
    return (
        family.bass == FREE
        and family.otherwise == family.name
        and wishes.left in _SINGLE_NOTES
        and task.register.low > task.bass_register_of(family).high
        and not (wishes.pins or task.linked)
        and not (weights != KEYBOARD and any(getattr(weights, name) for name in BETWEEN_HANDS))
    )


def _apart(task: Task) -> tuple[tuple[Strand, ...], tuple[str, ...]]:
    """A strand for each hand."""
    family, wishes, key = task.family, task.wishes, task.progression.key
    left = task.bass_register_of(family)
    uppers, lefts = [], []
    for relative in task.progression.relative_chords:
        uppers.append(upper_layer(orders_in(family, relative, key), task.register, wishes.span))
        lefts.append(left_layer(left_patterns(relative.in_key(key), wishes.left, left, wishes.span)))
    right = Strand(_wished(tuple(uppers), task), task.register.centre, task.weights, wishes.top, task.loop)
    return (right, Strand(tuple(lefts), left.centre, KEYBOARD, "free", task.loop)), (family.name,) * len(uppers)


def _as_one(task: Task) -> tuple[tuple[Strand, ...], tuple[str, ...]]:
    """One strand for both hands."""
    if task.wishes.style == FOUR_PART:
        (strand,) = _part_layers(task)
        return (strand._replace(layers=_wished(strand.layers, task)),), (FOUR_PART,) * len(strand.layers)
    found = [_whole_layer(relative, task) for relative in task.progression.relative_chords]
    layers = _wished(tuple(layer for layer, _ in found), task)
    strand = Strand(layers, task.register.centre, task.weights, task.wishes.top, task.loop)
    if task.weights.tendency or task.weights.doubling:
        (rules,) = _part_layers(task)
        strand = strand._replace(makeups=rules.makeups, pulls=rules.pulls)
    return (strand,), tuple(style for _, style in found)


def _whole_layer(relative: RelativeChord, task: Task) -> tuple[Layer, str]:
    """Both hands' candidates for one chord, and the family they come from: the wished one, or that which stands in."""
    wishes, key, family = task.wishes, task.progression.key, task.family
    chord = relative.in_key(key)
    for each in (family, FAMILIES[family.otherwise], FAMILIES["close"]):
        orders = orders_in(each, relative, key)
        patterns = left_patterns(chord, wishes.left, task.bass_register_of(each), wishes.span)
        layer = whole_layer(orders, task.register_of(each), wishes.span, each.bass, patterns)
        if layer or (orders and whole_layer(orders, each.register, SPAN, each.bass, patterns)):
            return layer, each.name
    return (), family.name


def _part_layers(task: Task) -> tuple[Strand]:
    """Four parts: every placing that the textbook allows, with its doublings and tendency tones."""
    from nearhand.harmony.analysis import analyse
    from nearhand.voicing.four_part import four_part_layer, part_chords

    progression, wishes = task.progression, task.wishes
    register = task.register_of(FAMILIES[FOUR_PART])
    parts = part_chords(analyse(progression.relative_chords, progression.key.mode), progression.key, task.loop)
    layers = tuple(four_part_layer(part, register, wishes.span) for part in parts)
    strand = Strand(layers, register.centre, task.weights, wishes.top, task.loop)
    return (strand._replace(makeups=tuple(part.makeup for part in parts), pulls=tuple(part.pulls for part in parts)),)


def _wished(layers: tuple[Layer, ...], task: Task) -> tuple[Layer, ...]:
    """The layers with only those candidates that pins and a given top line leave.

    Raises InputError, which says what is missing, where nothing is left.
    """
    if all(layers) and not (task.wishes.melody or task.wishes.pins):
        return layers
    from nearhand.voicing.narrowing import narrowed

    return narrowed(layers, task)
