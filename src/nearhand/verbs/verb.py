"""What a verb is: its name, its options, its help, and how it runs on its words."""

from __future__ import annotations

from importlib import import_module

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.session import Outcome, Session


class Arguments(NamedTuple):
    """A verb's words: the text that is no option with its place, and the options' values with theirs, by name."""

    line: str
    words: tuple[str, ...] = ()
    start: int = 0
    options: dict[str, str] = {}  # noqa: RUF012  # never written to
    starts: dict[str, int] = {}  # noqa: RUF012

    @property
    def text(self) -> str:
        """The words that are no options, as one text."""
        return " ".join(self.words)

    def option(self, name: str) -> str | None:
        """An option's value; None when it is not given."""
        return self.options.get(name)

    def has(self, name: str) -> bool:
        """Whether a flag is set."""
        return name in self.options

    def without(self, name: str) -> Arguments:
        """The arguments as if an option had not been given."""
        return self._replace(options={other: value for other, value in self.options.items() if other != name})

    def placed(self, error: InputError, name: str) -> InputError:
        """An error in an option's value, placed in the whole line."""
        return error.within(self.line, self.starts.get(name, 0))

    def unquoted(self, name: str, what: str, example: str, wanted: str = "") -> InputError:
        """The refusal of an option whose value ends at a blank, since quotes are missing."""
        text, hint = self.option(name) or "", f'put quotes round them: --{name} "{example}"'
        return self.placed(InputError(what, text, len(text), wanted=wanted, hint=hint), name)


class Option(NamedTuple):
    """An option of a verb: written ``--name VALUE``, or ``--name`` alone when ``value`` is empty.

    Its value is one of ``choices``, where there are some. ``completes`` names what may stand in it, as it does of a
    verb; also ``instruments``, with commas between.
    """

    name: str
    value: str
    help: str
    choices: tuple[str, ...] = ()
    completes: tuple[str, ...] = ()

    @property
    def usage(self) -> str:
        """The option as it is written, with a word for its value.

        >>> Option("to", "KEYS", "").usage, Option("loop", "", "").usage
        ('--to KEYS', '--loop')
        """
        return f"--{self.name} {self.value}".rstrip()


class Verb(NamedTuple):
    """A verb: its name, what follows it, one line of help, its function, its options and examples.

    ``function`` is written ``module.function`` and imported when the verb runs: a one-shot command needs one of them.
    ``completes`` names what may follow it: ``keys``, ``files``, ``folders``, ``verbs``, ``words`` (those that
    ``meanings`` has), or some fixed words.
    ``one_shot`` tells whether it stands alone on a command line; the others need a shell's session.
    """

    name: str
    follows: str
    help: str
    function: str
    options: tuple[Option, ...] = ()
    examples: tuple[str, ...] = ()
    completes: tuple[str, ...] = ()
    one_shot: bool = False
    aliases: tuple[str, ...] = ()

    @property
    def usage(self) -> str:
        """A verb with what follows it.

        >>> Verb("why", "[CHART] N", "", "").usage, Verb("next", "", "", "").usage
        ('why [CHART] N', 'next')
        """
        return f"{self.name} {self.follows}".rstrip()

    def run(self, session: Session, arguments: Arguments) -> Outcome:
        """Run the verb.

        Raises InputError.
        """
        module, _, function = self.function.partition(".")
        outcome: Outcome = getattr(import_module(f"nearhand.verbs.{module}"), function)(session, arguments)
        return outcome
