"""A number shows the formula that it was worked out by, and is known no better than what went into it."""

from fractions import Fraction
from math import ceil, floor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.working import Number, Rounding, Trust, Unit, added, known, larger, numbers_in, worked

FRACTIONS = st.fractions(min_value=-1000, max_value=1000, max_denominator=60)


def number(name: str, value: Fraction | int | None, trust: Trust = Trust.EXACT) -> Number:
    return known(name, value, Unit.COUNT, trust=trust)


@given(FRACTIONS, FRACTIONS, st.integers(0, 5))
def test_a_formula_is_worked_out_as_python_works_it_out(a: Fraction, b: Fraction, k: int) -> None:
    found = worked("x", Unit.COUNT, "(a + 2 × b)^k − a × b", number("a", a), number("b", b), number("k", k))
    assert found.value == (a + 2 * b) ** k - a * b


@given(FRACTIONS, FRACTIONS)
def test_a_division_is_exact_and_by_nothing_is_not_known(a: Fraction, b: Fraction) -> None:
    found = worked("x", Unit.COUNT, "a ÷ b", number("a", a), number("b", b))
    assert found.value == (a / b if b else None)


@given(FRACTIONS)
def test_a_rounded_number_keeps_what_it_was(a: Fraction) -> None:
    up, down = (worked("x", Unit.COUNT, "a", number("a", a), rounding=way) for way in (Rounding.UP, Rounding.DOWN))
    assert [up.value, down.value, up.exact] == [ceil(a), floor(a), a]


@given(st.sampled_from(Trust), st.sampled_from(Trust), st.sampled_from(Trust))
def test_a_number_is_trusted_no_further_than_the_weakest_put_in(own: Trust, one: Trust, other: Trust) -> None:
    found = worked("x", Unit.COUNT, "a + b", number("a", 1, one), number("b", 2, other), trust=own)
    order = [*Trust]
    assert found.trust == max((own, one, other), key=order.index)


def test_what_is_not_known_is_named_through_all_that_hangs_on_it() -> None:
    half = worked("half", Unit.COUNT, "leg ÷ 2", number("leg", None))
    found = worked("x", Unit.COUNT, "half + apron + ends", half, number("apron", None), number("ends", 3))
    assert found.value is None
    assert [*found.lacks()] == ["leg", "apron"]
    assert [one.name for one in numbers_in(found)] == ["x", "half", "leg", "apron", "ends"]


def test_a_decimal_that_was_typed_is_taken_as_it_is_read() -> None:
    assert known("g", 0.1, Unit.COUNT).value == Fraction(1, 10)


@given(st.lists(FRACTIONS, max_size=6))
def test_a_sum_adds_all_of_its_parts(parts: list[Fraction]) -> None:
    assert added("all", Unit.COUNT, [number("part", part) for part in parts]).value == sum(parts)


def test_a_function_is_called_by_its_name_and_no_other_can_be() -> None:
    assert worked("x", Unit.COUNT, "larger(a, 0)", number("a", -3), using={"larger": larger}).value == 0
    with pytest.raises(KeyError):
        worked("x", Unit.COUNT, "open(a, 0)", number("a", -3))
    with pytest.raises(ValueError, match="lambda"):
        worked("x", Unit.COUNT, "lambda: 3")
