"""A bed with its plantings in a few words, and any block of plants, for the tests of what stands where."""

import json
from functools import cache
from typing import Any

from attrs import evolve, frozen
from hypothesis import settings
from hypothesis import strategies as st

from gardenplot.layout import LaidOut, Layout, lay_out_bed, lay_out_plan
from gardenplot.plan import Bed, Crop, Pattern, Plan, Planting
from gardenplot.plan.file import plan_of_text
from gardenplot.units import CM, INCH, MM, Length, M, Units, length_of, parse_length
from tests.numbered import numbered, shared

Fields = dict[str, Any]
many = settings(max_examples=max(600, settings().max_examples))
"""For laws over a few whole numbers, which cost next to nothing."""
several = settings(max_examples=max(200, settings().max_examples))
"""For laws that are easily met by chance."""

ROW_PATTERNS = (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TRIANGULAR)


def nm(text: str) -> int:
    """A length in nanometres."""
    return parse_length(text).nm


def long(length: int) -> Length:
    """A length from its nanometres."""
    return length_of(length, Units.METRIC)


def plan_with(bed: Fields, crop: Fields, *plantings: Fields, **more: list[Fields]) -> Plan:
    """A plan of one bed and one crop, its fields as in a plan file; plantings are p1, p2 ..."""
    parts = {
        "beds": [{"id": "b1", "name": "Bed"} | bed],
        "crops": [{"id": "crop", "name": "Crop"} | crop],
        "plantings": [
            {"id": f"p{number}", "bed": "b1", "crop": "crop"} | one for number, one in enumerate(plantings, 1)
        ],
    }
    return plan_of_text(json.dumps({"gardenplot": 1} | parts | more)).plan


def laid_out(bed: Fields, crop: Fields, *plantings: Fields, **more: list[Fields]) -> LaidOut:
    """The one bed of such a plan, laid out."""
    return lay_out_plan(plan_with(bed, crop, *plantings, **more))[0]


@frozen
class Block:
    """Any planting that has its bed to itself."""

    bed: Bed
    crop: Crop
    planting: Planting

    @property
    def layout(self) -> Layout:
        """Where its plants stand."""
        plan = Plan(beds=(self.bed,), crops=(self.crop,), plantings=(self.planting,))
        return lay_out_bed(plan, self.bed).layouts[0]


@cache
def lengths(least: int, most: int) -> st.SearchStrategy[int]:
    """Lengths in nm: whole centimetres and eighths of an inch, as people measure, and any at all."""
    eighth = INCH // 8
    return st.one_of(
        st.integers(-(-least // CM), most // CM).map(CM.__mul__),
        st.integers(-(-least // eighth), most // eighth).map(eighth.__mul__),
        st.integers(least, most),
    )


@st.composite
def _blocks(draw: st.DrawFn, patterns: tuple[Pattern, ...]) -> Block:
    margins = st.none() | lengths(MM, 15 * CM).map(long)
    sized = draw(st.sampled_from(["plants", "length", "gap"]))
    return Block(
        Bed(
            "b1",
            "Bed",
            length=long(draw(lengths(40 * CM, 2 * M))),
            width=long(draw(lengths(20 * CM, 2 * M))),
            head_margin=draw(margins),
            foot_margin=draw(margins),
            edge=draw(st.none() | lengths(0, 30 * CM).map(long)),
        ),
        Crop("crop", "Crop", long(draw(lengths(10 * CM, 60 * CM))), (long(draw(lengths(10 * CM, 60 * CM))),)),
        Planting(
            "p1",
            "b1",
            "crop",
            start=draw(st.none() | lengths(0, 2 * M).map(long)),
            plants=draw(st.integers(1, 300)) if sized == "plants" else None,
            length=long(draw(lengths(MM, 2 * M))) if sized == "length" else None,
            pattern=draw(st.sampled_from(patterns)),
        ),
    )


_block_of = numbered(_blocks(ROW_PATTERNS))


@cache
def blocks(patterns: tuple[Pattern, ...] = ROW_PATTERNS) -> st.SearchStrategy[Block]:
    """Any block of up to a few hundred plants, perhaps reaching past its bed's margins."""

    def next_of(number: int) -> Block:
        """A block by number, in one of the patterns."""
        block = _block_of(number)
        return evolve(block, planting=evolve(block.planting, pattern=patterns[number % len(patterns)]))

    return shared(_blocks(patterns), next_of)
