"""``NamedTuple`` without the cost of looking at annotations: the base of every value.

Type checkers see ``typing.NamedTuple``. At run time the same kind of class is made here. ``collections.namedtuple``
compiles a constructor for each class at once, for fifty values an eighth of a whole one-shot command, and
``typing.NamedTuple`` reads annotations besides (figures in docs/performance.md). Here a constructor is compiled
for a class of which many values are made.
"""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import NamedTuple
else:
    from operator import itemgetter

    _OFTEN = 24
    """A class of which so many values are made gets a constructor of its own."""

    class _Record(tuple):
        """What all values share; the methods are those of ``collections.namedtuple``."""

        __slots__ = ()
        _fields = ()
        _field_defaults = {}  # noqa: RUF012  # never written to

        _made = 0

        def __new__(cls, *args, **kwargs):
            cls._made += 1
            missing = cls._fields[len(args) :]
            if cls._made < _OFTEN and len(args) <= len(cls._fields) and kwargs.keys() <= set(missing):
                defaults = cls._field_defaults
                if all(name in kwargs or name in defaults for name in missing):
                    rest = [kwargs[name] if name in kwargs else defaults[name] for name in missing]
                    return tuple.__new__(cls, (*args, *rest))
            _compile_constructor(cls)
            return cls.__new__(cls, *args, **kwargs)

        @classmethod
        def _make(cls, iterable):
            return tuple.__new__(cls, iterable)

        def _replace(self, /, **changes):
            made = tuple.__new__(type(self), map(changes.pop, self._fields, self))
            if changes:
                raise ValueError(f"Got unexpected field names: {list(changes)!r}")
            return made

        def _asdict(self):
            return dict(zip(self._fields, self, strict=True))

        def __repr__(self):
            values = ", ".join(f"{name}={value!r}" for name, value in zip(self._fields, self, strict=True))
            return f"{type(self).__name__}({values})"

        def __getnewargs__(self):
            return tuple(self)

    def _compile_constructor(cls):
        fields = cls._fields
        scope = {"make": tuple.__new__, "__builtins__": {}}
        listed = "".join(f"{name}, " for name in fields)
        constructor = eval(f"lambda cls, {listed}: make(cls, ({listed}))", scope)
        constructor.__name__ = constructor.__qualname__ = "__new__"
        constructor.__defaults__ = tuple(cls._field_defaults.values()) or None
        cls.__new__ = staticmethod(constructor)

    class _Maker(type):
        """Turns a class body of annotated fields into a tuple class with the body's methods."""

        def __new__(mcs, name, bases, body):
            if not bases:
                return super().__new__(mcs, name, bases, body)
            fields = tuple(body.pop("__annotations__", ()))
            defaults = {field: body.pop(field) for field in fields if field in body}
            body |= {field: property(itemgetter(place)) for place, field in enumerate(fields)}
            body |= {"_fields": fields, "__match_args__": fields, "_field_defaults": defaults, "__slots__": ()}
            return type(name, (_Record,), body)

    class NamedTuple(metaclass=_Maker):
        """The base class of values: its subclasses are tuples with named fields."""


__all__ = ["NamedTuple"]
