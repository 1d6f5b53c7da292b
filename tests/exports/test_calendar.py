"""Calendar files: read by the library icalendar, and by hand for folding, escaping and ends that are not meant.

RFC 5545: 3.1 (lines of at most 75 octets, CRLF), 3.3.11 (escaping of text), 3.6.1 and 3.8.2.2 (whole days, whose end
is the first day that is no longer meant; its example is 28 June to 8 July 2007 with DTEND 9 July).
"""

import re
import unicodedata
from datetime import UTC, date, datetime, timedelta

import pytest
from attrs import evolve
from hypothesis import given, settings
from icalendar import Calendar

from gardenplot.drawing.date_list import Job, date_rows
from gardenplot.errors import PlanError
from gardenplot.exports.calendar import written
from gardenplot.files import sample
from gardenplot.plan import Cover, Plan
from gardenplot.plan.edits import change_bed, change_crop, change_place, change_planting
from gardenplot.plan.file import read_plan
from gardenplot.units import parse_length
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import metric_plan, plans

MADE = datetime(2027, 2, 1, 9, 30, 15, 250, tzinfo=UTC)
NAMES = {
    "emoji": "Rue \U0001f331\U0001f468‍\U0001f33e, bêtes; «grün» " * 4,
    "newlines": "Leek\r\nEND:VEVENT\r\nBEGIN:VEVENT\nX\x00Y\x1bZ",
    "marks": 'a,b;c\\d:"e" \\n \\, <b>not bold</b> %s {0}',
    "long": "Ж" * 300,
    "one word": "x" * 300,
}


def lines_of(content: bytes) -> list[str]:
    """The lines of a file, unfolded by hand: CRLF and one space are taken out."""
    assert content.endswith(b"\r\n")
    assert b"\n" not in content.replace(b"\r\n", b"")
    assert b"\r" not in content.replace(b"\r\n", b"")
    for line in content.split(b"\r\n"):
        assert len(line) <= 75
        line.decode()
    return content.decode().replace("\r\n ", "").split("\r\n")[:-1]


def events_of(content: bytes) -> list[dict[str, str]]:
    """The events of a file by hand: what stands before the colon, and after it."""
    events: list[dict[str, str]] = []
    for line in lines_of(content):
        name, _colon, value = line.partition(":")
        if line == "BEGIN:VEVENT":
            events.append({})
        elif events and name not in ("BEGIN", "END"):
            assert name not in events[-1]
            events[-1][name] = value
    return events


def unescaped(text: str) -> str:
    """A text without the signs that RFC 5545 puts before its marks."""
    return re.sub(r"\\([\\;,nN])", lambda found: "\n" if found[1] in "nN" else found[1], text)


def example() -> Plan:
    """The plan that the program opens with at first."""
    return read_plan(sample("kestrel-howe.gardenplot")).plan


def test_every_job_is_an_event_of_whole_days() -> None:
    plan = example()
    content = written(plan, name="Kestrel Howe", made=MADE)
    calendar = Calendar.from_ical(content)
    assert not calendar.errors
    assert (calendar["version"], calendar["calscale"]) == ("2.0", "GREGORIAN")
    rows = [row for row in date_rows(plan) if row.job is not Job.LAST]
    events = calendar.walk("VEVENT")
    assert len(events) == len(rows)
    for event, row in zip(events, rows, strict=True):
        assert not event.errors
        assert event.decoded("dtstart") == row.day
        assert event["dtstart"].params["VALUE"] == "DATE"
        assert event.decoded("dtend") > row.day
        assert row.name.split()[-1] in str(event["summary"])
        assert event.decoded("dtstamp") == MADE.replace(microsecond=0)
        assert event["transp"] == "TRANSPARENT"
    assert len({event["uid"] for event in events}) == len(events)
    assert lines_of(content)[:2] == ["BEGIN:VCALENDAR", "VERSION:2.0"]


def test_a_day_ends_on_the_next_and_days_end_after_their_last() -> None:
    """S1, worked by hand: kohlrabi hardens off from Fri 28 Mar to Thu 3 Apr and is set out on Fri 4 Apr 2025."""
    found = {event["SUMMARY"]: event for event in events_of(written(hand_worked("s1"), made=MADE))}
    hardened = found["harden off: B Kohlrabi\\, 1 tray"]
    assert (hardened["DTSTART;VALUE=DATE"], hardened["DTEND;VALUE=DATE"]) == ("20250328", "20250404")
    out = found["set out: B Kohlrabi\\, 45 plants"]
    assert (out["DTSTART;VALUE=DATE"], out["DTEND;VALUE=DATE"]) == ("20250404", "20250405")


@pytest.mark.parametrize(
    ("first", "last", "start", "end"),
    [
        ("2007-06-28", "2007-07-08", "20070628", "20070709"),
        ("2027-02-28", "2027-02-28", "20270228", "20270301"),
        ("2028-02-28", "2028-02-29", "20280228", "20280301"),
    ],
)
def test_a_harvest_ends_on_the_first_day_that_is_no_longer_meant(first: str, last: str, start: str, end: str) -> None:
    """The first is the example of RFC 5545, the others plain arithmetic over the end of a February."""
    days = (date.fromisoformat(last) - date.fromisoformat(first)).days
    found = events_of(written(harvest(first, days), made=MADE))
    (ready,) = (event for event in found if event["SUMMARY"].startswith("ready to harvest"))
    assert (ready["DTSTART;VALUE=DATE"], ready["DTEND;VALUE=DATE"]) == (start, end)


def harvest(ready: str, days: int) -> Plan:
    return plan_from(
        {"name": "Upper Sill"},
        beds=[{"id": "b1", "name": "Long bed", "length": "12 m", "width": "75 cm"}],
        crops=[{"id": "c", "name": "Leek", "in_row": "15 cm", "row_spacing": "25 cm", "harvest_days": days}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "c", "plants": 40, "ready": ready}],
    )


def test_the_last_day_of_all_needs_no_end() -> None:
    for event in events_of(written(harvest("9999-12-31", 0), made=MADE)):
        assert event["DTSTART;VALUE=DATE"] == "99991231"
        assert "DTEND;VALUE=DATE" not in event


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
def test_names_of_any_kind_come_back_as_text(name: str) -> None:
    plan = change_place(change_crop(change_bed(metric_plan(), "b1", name=name), "pak-choi", name=name), name=name)
    content = written(plan, name=name, made=MADE)
    rows = [row for row in date_rows(plan) if row.job is not Job.LAST]
    by_hand, parsed = events_of(content), Calendar.from_ical(content).walk("VEVENT")
    assert len(by_hand) == len(parsed) == len(rows)
    for event, other, row in zip(by_hand, parsed, rows, strict=True):
        said = unescaped(event["SUMMARY"])
        assert str(other["summary"]) == said
        assert not any(unicodedata.category(sign) == "Cc" for sign in said)
        assert plain(row.name) in plain(said)
        assert plain(row.bed_name) in plain(unescaped(event["LOCATION"]))


def plain(text: str) -> str:
    """A text with a space for each sign that steers."""
    return "".join(" " if unicodedata.category(sign) == "Cc" else sign for sign in text)


def test_text_is_escaped_as_rfc_5545_asks() -> None:
    plan = change_bed(metric_plan(), "b1", name="Sow beets, chard; cover")
    found = {event["DESCRIPTION"].split("\\n")[1] for event in events_of(written(plan, made=MADE))}
    assert "Sow beets\\, chard\\; cover" in found


def test_a_second_file_brings_the_first_up_to_date() -> None:
    plan = example()
    later = change_planting(plan, "lettuce-1", in_ground=date(2027, 4, 7))
    first = events_of(written(plan, made=MADE))
    second = events_of(written(later, made=MADE + timedelta(days=1)))
    before, after = ({event["UID"]: event for event in events} for events in (first, second))
    assert set(before) == set(after)
    assert all(int(after[uid]["SEQUENCE"]) > int(before[uid]["SEQUENCE"]) for uid in before)
    assert all(int(event["SEQUENCE"]) < 2**31 for event in second)
    assert all(after[uid]["LAST-MODIFIED"] > before[uid]["LAST-MODIFIED"] for uid in before)
    moved = {uid for uid in before if before[uid]["DTSTART;VALUE=DATE"] != after[uid]["DTSTART;VALUE=DATE"]}
    assert {uid.partition("-")[0] for uid in moved} >= {"sow", "set", "harden"}


def test_the_next_years_plan_leaves_this_years_days_alone() -> None:
    plan = harvest("2027-07-01", 5)
    this, following = (uids(one) for one in (plan, harvest("2028-07-01", 5)))
    assert this & following == set()
    south = {"latitude": -43.6, "longitude": 170.9}
    summer, same = (uids(change_place(harvest(day, 5), **south)) for day in ("2027-12-28", "2028-01-04"))
    assert summer == same


def uids(plan: Plan) -> set[str]:
    return {event["UID"] for event in events_of(written(plan, made=MADE))}


def test_a_cover_and_a_planting_of_the_same_id_are_two() -> None:
    cover = Cover("p1", "b1", parse_length("1 m"), parse_length("3 m"), date(2027, 4, 9), date(2027, 5, 28))
    found = events_of(written(evolve(metric_plan(), covers=(cover,)), made=MADE))
    assert len({event["UID"] for event in found}) == len(found)
    (on,) = (event for event in found if event["SUMMARY"].startswith("cover on"))
    assert on["SUMMARY"] == "cover on: 1.00 – 3.00\u2009m\\, Tunnel\\, east"
    assert (on["DTSTART;VALUE=DATE"], on["DTEND;VALUE=DATE"]) == ("20270409", "20270410")


def test_a_plan_without_days_gives_no_file() -> None:
    with pytest.raises(PlanError, match="no day is known"):
        written(Plan(), made=MADE)


def test_the_same_plan_and_moment_give_the_same_bytes() -> None:
    assert written(example(), made=MADE) == written(example(), made=MADE)


@settings(max_examples=40)
@given(plans())
def test_any_plan_gives_a_file_that_is_read_without_an_error(plan: Plan) -> None:
    if not date_rows(plan):
        return
    content = written(plan, made=MADE)
    parsed = Calendar.from_ical(content)
    assert not parsed.errors
    assert len(parsed.walk("VEVENT")) == len(events_of(content))
