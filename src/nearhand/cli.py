"""The command line: the shell's verbs, one shot. Exit status 0, or 2 when something cannot be read."""

from __future__ import annotations

import sys

TYPE_CHECKING = False  # as in typing, which is not worth its import before the version is told
if TYPE_CHECKING:
    from typing import NoReturn, TextIO

    from nearhand.notation.errors import InputError
    from nearhand.render.output import Output
    from nearhand.verbs.session import Session
    from nearhand.verbs.verb import Verb
    from nearhand.verbs.words import Word

OK, REFUSED, INTERRUPTED = 0, 2, 130


def run() -> NoReturn:
    """The program itself. A one-shot command leaves at once: taking the interpreter down costs a tenth of its time."""
    _open_missing_streams()
    status = main()
    if len(sys.argv) > 1:
        import os

        try:
            sys.stderr.flush()  # standard output was flushed, or its reader has left
        finally:
            os._exit(status)
    sys.exit(status)


def _open_missing_streams() -> None:
    """Let streams that were closed before the start lead nowhere, so that nothing trips over them."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            import os

            setattr(sys, name, os.fdopen(os.open(os.devnull, os.O_RDWR), mode, encoding="utf-8"))


def main(argv: list[str] | None = None) -> int:
    """Run one command line (without the program's name); answer the exit status."""
    words = sys.argv[1:] if argv is None else argv
    try:
        status = _version() if words == ["--version"] else _run(words)
        sys.stdout.flush()
    except KeyboardInterrupt:
        return INTERRUPTED
    except BrokenPipeError:  # the reader of a pipe has left: nobody is there to tell
        _write_no_more(sys.stdout)
        return OK
    except OSError as error:  # as on a full disk
        _write_no_more(sys.stdout)
        return _not_written(error)
    return status


def _write_no_more(stream: TextIO) -> None:
    """Let a stream that takes nothing lead nowhere: what it still holds must not fail once more at the end."""
    import os

    os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _not_written(error: OSError) -> int:
    try:
        print(f"the answer cannot be written: {error.strerror or error}", file=sys.stderr, flush=True)
    except OSError:  # nor the refusal: the exit status is left to tell it
        _write_no_more(sys.stderr)
    return REFUSED


def _version() -> int:
    from nearhand import __version__

    print(f"nearhand {__version__}")
    return OK


def _run(words: list[str]) -> int:
    if not words:
        return _shell()
    import gc
    import os

    from nearhand.notation.errors import InputError
    from nearhand.render.output import output_to

    try:
        gc.disable()  # a run of some milliseconds leaves nothing to collect, and looking for it takes one
        return _one_shot(words)
    except InputError as error:
        output_to(sys.stderr, dict(os.environ)).refuse(error, "--json" in words)
        return REFUSED


def _shell() -> int:
    if sys.stdin.isatty() and sys.stdout.isatty():
        from nearhand.shell.terminal import run

        return run()
    from nearhand.shell.piped import run_lines

    return run_lines(sys.stdin.buffer)


def _one_shot(words: list[str]) -> int:
    import os

    from nearhand.render.output import output_to
    from nearhand.verbs.respond import perform
    from nearhand.verbs.table import BY_NAME, find_verb
    from nearhand.verbs.words import Word, line_of

    line, placed = line_of([word.encode("utf-8", "replace").decode("utf-8") for word in words])
    output = output_to(sys.stdout, dict(os.environ))
    name = words[0]
    if name in ("--help", "-h", "help"):
        return _help(output, placed[1:], line)
    if name in BY_NAME:
        placed = placed[1:]
    elif not _is_input(name):
        find_verb(name, line)
    verb = BY_NAME.get(name, BY_NAME["show"])
    if "--help" in words:
        return _help(output, (Word(verb.name, 0), *(word for word in placed if word.text == "--json")), line)
    if not verb.one_shot:
        raise _needs_shell(name, line)
    outcome = perform(_session(output.signs), verb, _with_standard_input(verb, placed, line), line)
    output.show(outcome.answer, outcome.plain, outcome.as_json)
    return OK


def _help(output: Output, words: tuple[Word, ...], line: str) -> int:
    """Help on what the words name."""
    from nearhand.verbs.helping import help_on
    from nearhand.verbs.table import BY_NAME
    from nearhand.verbs.words import sort_words

    named = sort_words(BY_NAME["help"], words, line)
    output.show(help_on(named.text, line, named.start, in_shell=False), as_json=named.has("json"))
    return OK


def _is_input(word: str) -> bool:
    """Whether a first word that is no verb may be what ``show`` works on."""
    from nearhand.notation.chart import looks_like_a_chord
    from nearhand.verbs.loading import is_file_name

    first = word.split(maxsplit=1)[0] if word.split() else ""
    is_option = word == "-" or word.startswith("--")
    return is_option or ":" in word or looks_like_a_chord(first) or is_file_name(word)


def _session(signs: bool) -> Session:
    from nearhand.notation.conventions import Conventions
    from nearhand.verbs.session import Session

    return Session(conventions=Conventions(plain=not signs))


def _with_standard_input(verb: Verb, words: tuple[Word, ...], line: str) -> tuple[Word, ...]:
    """The words with ``-`` replaced by the text of standard input; behind others, or among notes, it holds a note."""
    from nearhand.verbs.words import sort_words

    plain = sort_words(verb, words, line).words
    if "-" in plain[1:] or (verb.follows == "[NOTES]" and plain != ("-",)):
        return words
    return tuple(
        word._replace(text=_standard_input(), quoted=True) if word.text == "-" and not word.quoted else word
        for word in words
    )


def _standard_input() -> str:
    from nearhand.notation.errors import InputError
    from nearhand.verbs.files import decode

    try:
        data = sys.stdin.buffer.read()
    except OSError as error:  # as when a folder stands there
        raise InputError(f"standard input cannot be read: {error.strerror}", hint="give it chords or a chart") from None
    return decode(data, "standard input")


def _needs_shell(verb: str, line: str) -> InputError:
    from nearhand.notation.errors import InputError

    return InputError(
        f"{verb} works inside the shell",
        line,
        line.find(verb),
        hint="start nearhand alone, or use show --to for other keys",
    )


if __name__ == "__main__":
    run()
