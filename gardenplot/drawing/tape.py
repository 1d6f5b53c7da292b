"""The tape along the drawing: ticks at round readings, fewer of them the smaller the drawing."""

from attrs import frozen

from gardenplot.units import CM, FOOT, INCH, MM, M, Units

_METRIC = (CM, 5 * CM, 10 * CM, 50 * CM, M, 2 * M, 5 * M, 10 * M, 20 * M, 50 * M, 100 * M, 500 * M, 1000 * M)
_FEET = (INCH // 4, INCH, 3 * INCH, 6 * INCH, FOOT, 2 * FOOT, 5 * FOOT, 10 * FOOT, 20 * FOOT, 50 * FOOT,
         100 * FOOT, 500 * FOOT, 1000 * FOOT, 5000 * FOOT)  # fmt: skip
_TENTHS = (FOOT // 100, FOOT // 10, FOOT // 2, FOOT, 2 * FOOT, 5 * FOOT, 10 * FOOT, 20 * FOOT, 50 * FOOT,
           100 * FOOT, 500 * FOOT, 1000 * FOOT, 5000 * FOOT)  # fmt: skip
_STEPS = {Units.METRIC: _METRIC, Units.FEET_AND_INCHES: _FEET, Units.DECIMAL_FEET: _TENTHS}


@frozen
class Tick:
    """A tick at a tape reading in nm; one without words is short."""

    at: int
    words: str = ""


def round_step(units: Units, least: float) -> int:
    """The smallest round step of at least `least` nm, in nm."""
    return next((step for step in _STEPS[units] if step >= least), _STEPS[units][-1])


def ticks(start: int, end: int, units: Units, px_per_mm: float) -> tuple[Tick, ...]:
    """The ticks between two readings in nm, at least 7 px apart, their words at least 64 px apart."""
    major = round_step(units, 64 / px_per_mm * MM)
    finest = [step for step in _STEPS[units] if step * px_per_mm / MM >= 7 and major % step == 0]
    minor = finest[0] if finest else major
    first = max(0, -(-start // minor) * minor)
    return tuple(
        Tick(at, _reading(at, major, units) if at % major == 0 else "") for at in range(first, end + 1, minor)
    )


def _reading(at: int, step: int, units: Units) -> str:
    if at == 0:
        return "0"
    match units:
        case Units.METRIC:
            return f"{at // M}\u2009m" if step % M == 0 else f"{at / M:.{2 if step < 10 * CM else 1}f}\u2009m"
        case Units.DECIMAL_FEET:
            return (
                f"{at // FOOT}\u2009ft"
                if step % FOOT == 0
                else f"{at / FOOT:.{2 if step < FOOT // 10 else 1}f}\u2009ft"
            )
        case Units.FEET_AND_INCHES:
            feet, rest = divmod(at, FOOT)
            inches, part = divmod(rest, INCH)
            if step % FOOT == 0 or not rest:
                return f"{feet}′"
            return f"{feet}′\u2009{inches}″" if not part else f"{feet}′\u2009{rest / INCH:g}″"
