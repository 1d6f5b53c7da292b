"""The index finds by any beginnings of words, the best first."""

from hypothesis import given
from hypothesis import strategies as st

from gardenplot.gestures.sought import Sought, folded, seek

LINES = (
    Sought("Add bed …", "Bed", "new make ground"),
    Sought("Place a post", "Bed", "obstacle stake", can_be=False),
    Sought("Place the shelf's crop", "Planting", "plant set sow"),
    Sought("A  Spätkohl  3 × 40", "Tunnel, east", "planting block"),
    Sought("B  Leek  4 × 20", "Field 2", "planting block"),
)


def names(text: str) -> list[str]:
    return [LINES[number].name for number in seek(LINES, text)]


def test_words_of_the_name_its_menu_and_synonyms_all_find_it() -> None:
    for text in ("add bed", "bed add", "ADD", "b ad", "new", "grou", "bed new"):
        assert "Add bed …" in names(text), text


def test_a_letter_finds_its_planting_first() -> None:
    assert names("a")[0] == "A  Spätkohl  3 × 40"
    assert names("b")[0] == "B  Leek  4 × 20"
    assert names("b leek") == ["B  Leek  4 × 20"]


def test_accents_and_case_do_not_matter() -> None:
    assert names("spatkohl") == names("SPÄT") == ["A  Spätkohl  3 × 40"]


def test_of_equals_what_can_be_done_comes_first() -> None:
    assert names("place") == ["Place the shelf's crop", "Place a post"]


def test_three_letters_inside_a_word_are_enough_and_two_are_not() -> None:
    assert names("kohl") == ["A  Spätkohl  3 × 40"]
    assert names("hl") == []


def test_nothing_typed_finds_everything_in_its_order() -> None:
    assert seek(LINES, "  ") == tuple(range(len(LINES)))


@given(st.lists(st.text(max_size=12), max_size=6), st.text(max_size=8))
def test_what_is_found_holds_every_word_and_one_more_word_never_finds_more(some: list[str], text: str) -> None:
    lines = tuple(Sought(name) for name in some)
    found = seek(lines, text)
    assert len(set(found)) == len(found)
    for number in found:
        assert all(any(word in one for one in folded(some[number])) for word in folded(text))
    assert set(seek(lines, f"{text} a")) <= set(found)
