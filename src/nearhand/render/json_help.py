"""Help as a document: the table of verbs, and the topics."""

from __future__ import annotations

from nearhand.verbs.helping import HelpAnswer
from nearhand.verbs.meanings import meanings_of
from nearhand.verbs.table import VERBS
from nearhand.verbs.verb import Option, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from nearhand.verbs.topics import Topic


def help_document(answer: HelpAnswer) -> dict[str, Any]:
    """The document of the verb or the topic that help is given on, or of all of them."""
    verbs: tuple[Verb, ...] = (answer.verb,) if answer.verb else ()
    topics: tuple[Topic, ...] = (answer.topic,) if answer.topic else ()
    if not verbs + topics:
        from nearhand.verbs.topics import TOPICS

        verbs, topics = VERBS, TOPICS
    return {"verbs": [_verb(verb) for verb in verbs], "topics": [_topic(topic) for topic in topics]}


def _verb(verb: Verb) -> dict[str, Any]:
    return {
        "name": verb.name,
        "usage": verb.usage,
        "help": verb.help,
        "stands_alone": verb.one_shot,
        "other_names": list(verb.aliases),
        "options": [_option(option) for option in verb.options],
        "words": [{"word": word, "help": meaning} for word, meaning in meanings_of(verb.name)],
        "examples": list(verb.examples),
    }


def _option(option: Option) -> dict[str, Any]:
    return {
        "name": f"--{option.name}",
        "value": option.value or None,
        "help": option.help,
        "choices": list(option.choices),
    }


def _topic(topic: Topic) -> dict[str, Any]:
    return {
        "name": topic.name,
        "other_names": list(topic.aliases),
        "help": topic.summary,
        "text": list(topic.text),
        "words": [{"word": word, "help": meaning} for word, meaning in topic.rows],
        "examples": list(topic.examples),
    }
