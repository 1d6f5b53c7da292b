"""A PDF to keep: what ISO 19005-1 (PDF/A-1b) asks of a file, as far as it can be read back here.

The samples' books were also given to a validator of that standard (`.dev/validate_pdf.py`), which found them valid.
"""

import re
from io import BytesIO
from xml.etree import ElementTree as ET

import pypdfium2
import pytest
from attrs import evolve
from PIL import ImageCms

from gardenplot.files import sample
from gardenplot.plan.file import read_plan
from gardenplot.sheets.archive import grey_profile
from gardenplot.sheets.choices import Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import MISSING, Paper
from tests.drawing.hand_worked import hand_worked
from tests.sheets.pdf_pages import pages_of
from tests.sheets.printed import bed_with
from tests.sheets.test_book import SINGLE

PDF = printed(hand_worked("s1"), Paper.A4, SINGLE, name="Rook Hollow").pdf
DC = "{http://purl.org/dc/elements/1.1/}"
ID = "{http://www.aiim.org/pdfa/ns/id/}"


def xmp(pdf: bytes) -> ET.Element:
    """The data about a file, which stand in it uncompressed."""
    found = re.search(rb"/Subtype /XML /Length (\d+) >>\nstream\n", pdf)
    assert found
    return ET.fromstring(
        pdf[found.end() : found.end() + int(found[1])].decode().removesuffix('<?xpacket end="r"?>\n')
    )


def test_the_data_in_the_file_say_what_it_is_as_its_older_data_do() -> None:
    about, document = xmp(PDF), pypdfium2.PdfDocument(PDF)
    assert [about.findtext(f".//{ID}{name}") for name in ("part", "conformance")] == ["1", "B"]
    said = document.get_metadata_dict()
    assert "".join(about.find(f".//{DC}title").itertext()) == said["Title"] == "Sheets: Rook Hollow"  # type: ignore[union-attr]  # it is there
    assert about.findtext(".//{http://ns.adobe.com/xap/1.0/}CreatorTool") == said["Creator"]
    assert about.findtext(".//{http://ns.adobe.com/pdf/1.3/}Producer") == said["Producer"]


@pytest.mark.parametrize("name", ["<b>&amp;", "Ὀρέστης", "a\x00b\x1b", "Đồng Cỏ", "\uffff\ufdd0", "x" * 300, "]]>"])
def test_the_data_are_read_whatever_the_plan_is_called(name: str) -> None:
    pdf = printed(hand_worked("s1"), Paper.A4, [Kind.BEDS], name=name).pdf
    title = pypdfium2.PdfDocument(pdf).get_metadata_dict()["Title"]
    assert "".join(xmp(pdf).find(f".//{DC}title").itertext()) == title  # type: ignore[union-attr]  # it is there


def test_the_file_has_an_id_a_language_and_a_colour_profile() -> None:
    assert re.search(rb"/ID\s*\[<[0-9a-f]{32}><[0-9a-f]{32}>\]", PDF)
    assert b"/Lang (en)" in PDF
    assert b"/GTS_PDFA1" in PDF
    assert PDF.startswith(b"%PDF-1.4")


def test_every_stream_ends_on_a_line_of_its_own() -> None:
    assert b"endstream" in PDF
    assert not re.search(rb"[^\n\r]endstream", PDF)


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("kind", SINGLE)
def test_every_face_is_in_the_file(kind: Kind, paper: Paper) -> None:
    for page in pages_of(printed(hand_worked("s1"), paper, [kind]).pdf):
        assert page.words
        assert all(words.embedded for words in page.words)
    assert b"Helvetica" not in PDF


def test_the_profile_of_grey_is_read_by_a_colour_library() -> None:
    """By Little CMS, through Pillow."""
    profile = ImageCms.ImageCmsProfile(BytesIO(grey_profile()))
    assert profile.profile.xcolor_space.strip() == "GRAY"
    assert profile.profile.version == pytest.approx(2.4)
    assert profile.profile.profile_description == "grey"


def test_words_in_scripts_that_the_face_has_stand_as_they_are() -> None:
    for name in ("Ρόκα", "Брокколі", "Cải thìa", "Crème 2½″ → <b>&amp;%s"):
        (page,) = pages_of(printed(bed_with({"length": "1 m"}, crop=name), Paper.A4, [Kind.BEDS]).pdf)
        assert name in page.text
        assert MISSING not in page.text


def test_signs_without_a_letter_are_replaced_and_that_is_said() -> None:
    plan = bed_with({"length": "1 m"}, crop="Salad 🌱 芥菜")
    (page,) = pages_of(printed(plan, Paper.A4, [Kind.BEDS]).pdf)
    assert f"Salad {MISSING} {MISSING}{MISSING}" in page.text
    assert f"{MISSING} stands for a sign" in page.text
    plain = evolve(plan, crops=(evolve(plan.crops[0], name="Salad"),))
    (page,) = pages_of(printed(plain, Paper.A4, [Kind.BEDS]).pdf)
    assert "stands for a sign" not in page.text


def test_the_note_is_on_no_other_page_than_the_one_with_such_signs() -> None:
    plan = read_plan(sample("larch-bend.gardenplot")).plan
    first, *others = plan.beds
    renamed = evolve(plan, beds=(evolve(first, name="Bed 🥕"), *others))
    noted = ["stands for a sign" in page.text for page in pages_of(printed(renamed, Paper.A4, [Kind.BEDS]).pdf)]
    assert noted[0]
    assert not all(noted)
