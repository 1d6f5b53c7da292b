"""What a dialog asks for, and how it is told what is wrong with an answer."""

from collections.abc import Callable, Mapping

from attrs import frozen


@frozen
class Ask:
    """One thing to ask for: a text, or a choice among named values, which may be one to type in.

    While the text is empty, `default` tells what holds then, and where nothing does, an example of what to type.
    `group` is the heading of a group that it begins.
    """

    name: str
    label: str
    text: str = ""
    example: str = ""
    default: str = ""
    choices: tuple[tuple[str, object], ...] = ()
    chosen: object = None
    is_typed: bool = False
    group: str = ""


Accept = Callable[[Mapping[str, object]], Mapping[str, str]]
"""What is given the texts and choices by name and gives the words of what is wrong, by name."""
