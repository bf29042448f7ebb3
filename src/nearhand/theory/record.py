"""``NamedTuple`` without the cost of looking at annotations: the base of every value.

Type checkers see ``typing.NamedTuple``. At run time the same tuple class is made by ``collections.namedtuple``, and the
annotations are left alone: with some fifty values, that and the import of ``typing`` were a sixth of a whole one-shot
command (figures in docs/performance.md).
"""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import NamedTuple
else:
    from collections import namedtuple

    class _Maker(type):
        """Turns a class body of annotated fields into a tuple class with the body's methods."""

        def __new__(mcs, name, bases, body):
            if not bases:
                return super().__new__(mcs, name, bases, body)
            fields = tuple(body.get("__annotations__", ()))
            defaults = [body.pop(field) for field in fields if field in body]
            made = namedtuple(name, fields, defaults=defaults, module=body["__module__"])
            for attribute, value in body.items():
                if attribute not in ("__annotations__", "__module__", "__qualname__"):
                    setattr(made, attribute, value)
            return made

    class NamedTuple(metaclass=_Maker):
        """The base class of values: its subclasses are tuples with named fields."""


__all__ = ["NamedTuple"]
