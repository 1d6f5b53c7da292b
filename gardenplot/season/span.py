"""Two days and those between them."""

from datetime import date

from attrs import frozen


@frozen(cache_hash=True)
class Span:
    """Two days, and those between them."""

    first: date
    last: date

    @property
    def days(self) -> int:
        """How many days it has."""
        return (self.last - self.first).days + 1
