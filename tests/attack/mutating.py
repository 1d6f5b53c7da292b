"""Mutated and random plan files, each a plan or refused; run as a program it prints how many of each and how dear."""

import json
import random
import re
import resource
import sys
import time
from collections import Counter
from collections.abc import Callable
from copy import deepcopy
from pathlib import Path
from typing import Any

from gardenplot.errors import FileError
from gardenplot.one_line import one_line
from gardenplot.plan.file import plan_of_content, plan_of_text, text_of

ROOT = Path(__file__).resolve().parents[2]
ODD: tuple[Any, ...] = (
    None, True, -1, 0, 1, 10**400, -(10**30), 1e308, 1e-308, "", " ", "\0", "\u202e", "\ud800", "=1+1", "<b>",
    "{0}%s", "x" * 10_000, "0 m", "-1 m", "1e9 m", "9" * 300 + " m", "1/0 in", "1/3 in", "2027-02-30", "9999-12-31",
    "0001-01-01", "100 %", "1e400 %", "-5 °C", "400°", [], {}, [[]], [None], {"": None}, [["0 m", "0 m"]] * 3,
    ["1 mm"] * 700,
)  # fmt: skip
TOKENS = (b"{", b"}", b"[", b"]", b",", b":", b'"', b"\\u0000", b"\\ud800", b"\xff", b"\xef\xbb\xbf", b"\0", b"1e999",
          b"NaN", b"-Infinity", b"null", b"true", b" m", b"\xe2\x80\xae", b"/*", b"9" * 400)  # fmt: skip
PLACED = re.compile(r"^(line \d+, column \d+|[a-z_]+(\[\d+\])?(\.[a-z_A-Z\[\]0-9 %.]+)*): \S")
"""A part of the plan or a line and column, and what is wrong there."""
OF_THE_WHOLE = re.compile(
    r"no text in UTF-8|no plan|no format version|has format|nested deeper|half of a letter|stands twice"
    r"|no number that|holds more than|larger than|digits"
)
"""Sentences about a file as a whole, which have no place in it or name what they are about."""


def samples() -> list[bytes]:
    """Plans to begin with, the small ones first."""
    paths = [*(ROOT / "samples").glob("*.gardenplot"), *(ROOT / "tests" / "scenarios").glob("*.gardenplot")]
    return sorted((path.read_bytes() for path in paths), key=len)


def of_bytes(dice: random.Random, content: bytes, others: list[bytes]) -> bytes:
    """A file with some bytes changed, gone, doubled, or taken from another file."""
    made = bytearray(content)
    for _turn in range(dice.choice((1, 1, 1, 2, 5, 30))):
        start = dice.randrange(len(made) + 1)
        end = min(len(made), start + dice.choice((0, 1, 1, 2, 10, 100, 5000)))
        other = dice.choice(others)
        cut = dice.randrange(len(other))
        put: bytes = dice.choice((
            b"", bytes([dice.randrange(256)]), dice.choice(TOKENS), bytes(made[start:end]) * 2, other[cut : cut + 60],
        ))  # fmt: skip
        made[start:end] = put
        if dice.random() < 0.1:
            del made[dice.randrange(len(made) + 1) :]
    return bytes(made)


def of_parts(dice: random.Random, content: bytes, others: list[bytes]) -> bytes:
    """A file whose JSON is sound, with some values of it others, gone, renamed, doubled, or of another plan."""
    raw = json.loads(content)
    for _turn in range(dice.choice((1, 1, 2, 4))):
        part: Any = raw
        while True:
            if not isinstance(part, dict | list) or not part:
                break
            step = dice.choice(list(part) if isinstance(part, dict) else range(len(part)))
            if not isinstance(part[step], dict | list) or not part[step] or dice.random() < 0.2:
                _change(dice, part, step, others)
                break
            part = part[step]
    return json.dumps(raw, ensure_ascii=dice.random() < 0.5).encode("utf-8", "surrogatepass")


def _change(dice: random.Random, part: Any, step: Any, others: list[bytes]) -> None:
    match dice.randrange(6):
        case 0:
            del part[step]
        case 1 if isinstance(part, list):
            part.insert(step, part[step])
        case 2 if isinstance(part, dict):
            part[str(dice.choice(ODD))[:50]] = part.pop(step)
        case 3:
            other = json.loads(dice.choice(others))
            part[step] = dice.choice(list(other.values()))
        case 4 if isinstance(part[step], str) and part[step]:
            letters = list(part[step])
            letters[dice.randrange(len(letters))] = dice.choice("0123456789 /.,'\"-%mftin\u0000é½")
            part[step] = "".join(letters)
        case _:
            part[step] = deepcopy(dice.choice(ODD))


def at_random(dice: random.Random, _content: bytes, _others: list[bytes]) -> bytes:
    """A file of nothing but chance, of bytes or of what plans are written with."""
    if dice.random() < 0.5:
        return dice.randbytes(dice.randrange(300))
    words = (*TOKENS, b'"gardenplot":1', b'"beds":', b'"crops":', b'"plantings":', b'"id":', b'"b1"', b'"1 m"', b"1")
    return b'{"gardenplot":1,' + b"".join(dice.choices(words, k=dice.randrange(40)))


WAYS: tuple[Callable[[random.Random, bytes, list[bytes]], bytes], ...] = (of_bytes, of_parts, of_parts, at_random)


def made(number: int, plans: list[bytes]) -> bytes:
    """The file of a number; the same one every time."""
    dice = random.Random(number)
    # Small plans more often: more of them go through in an hour, and they have the same fields.
    content = plans[min(dice.randrange(len(plans)), dice.randrange(len(plans)))]
    return dice.choice(WAYS)(dice, content, plans)


def tried(content: bytes) -> str:
    """What becomes of a file: "plan" or "refused"; raises AssertionError, or what should never be raised."""
    try:
        plan = plan_of_content(content).plan
    except FileError as error:
        sentence = str(error)
        assert sentence == one_line(sentence), sentence
        assert PLACED.match(sentence) or OF_THE_WHOLE.search(sentence), sentence
        return "refused"
    assert plan_of_text(text_of(plan)).plan == plan
    return "plan"


def attack(first: int, count: int) -> dict[str, float]:
    """Try so many files from a number on; how many of each came of it, the dearest of them and the memory in MB."""
    plans, came, dearest = samples(), Counter[str](), (0.0, 0)
    for number in range(first, first + count):
        content = made(number, plans)
        began = time.process_time()
        try:
            came[tried(content)] += 1
        except Exception as error:
            error.add_note(f"file number {number}")
            raise
        dearest = max(dearest, (time.process_time() - began, number))
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / (1024 if sys.platform != "darwin" else 1 << 20)
    return {**came, "slowest": dearest[0], "slowest number": dearest[1], "MB": memory}


if __name__ == "__main__":
    print(json.dumps(attack(int(sys.argv[1]), int(sys.argv[2]))))
