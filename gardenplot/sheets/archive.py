"""What makes a PDF one to keep (PDF/A-1b, ISO 19005-1): data about it in XMP, and what its black and greys mean.

The rest of that standard asks for faces inside the file and no transparency, which all sheets keep.
"""

from functools import cache
from struct import pack
from xml.sax.saxutils import escape

from reportlab.pdfbase.pdfdoc import PDFArray, PDFCatalog, PDFDictionary, PDFName, PDFObject, PDFStream, PDFString
from reportlab.pdfgen.canvas import Canvas

_MADE = "2000-01-01T00:00:00+00:00"
"""The moment that reportlab writes into a file that is to be the same each time."""
_XMP = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
 xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
<pdfaid:part>1</pdfaid:part>
<pdfaid:conformance>B</pdfaid:conformance>
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<dc:description><rdf:Alt><rdf:li xml:lang="x-default">{subject}</rdf:li></rdf:Alt></dc:description>
<dc:creator><rdf:Seq><rdf:li>{author}</rdf:li></rdf:Seq></dc:creator>
<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
<pdf:Producer>{producer}</pdf:Producer>
<pdf:Keywords>{keywords}</pdf:Keywords>
<xmp:CreatorTool>{creator}</xmp:CreatorTool>
<xmp:CreateDate>{made}</xmp:CreateDate>
<xmp:ModifyDate>{made}</xmp:ModifyDate>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>
"""


def make_archive(page: Canvas, language: str) -> None:
    """Add what a PDF to keep must have; to be called when its title and creator are set."""
    document = page._doc
    about = document.info
    words = {name: getattr(about, name) for name in ("title", "subject", "author", "producer", "creator", "keywords")}
    xmp = _XMP.format(made=_MADE, language=language, **{name: escape(said) for name, said in words.items()})
    catalog = document.Catalog
    catalog.Metadata = _Metadata(xmp.encode())
    end_streams_on_a_line()
    profile = PDFStream(PDFDictionary({"N": 1}), grey_profile())
    intent = PDFDictionary(
        {
            "Type": PDFName("OutputIntent"),
            "S": PDFName("GTS_PDFA1"),
            "OutputConditionIdentifier": PDFString("grey, gamma 2.2"),
            "DestOutputProfile": document.Reference(profile),
        }
    )
    # reportlab writes only what its catalog knows of, and does not know of this.
    catalog.__NoDefault__ = [*PDFCatalog.__NoDefault__, "OutputIntents"]
    catalog.OutputIntents = PDFArray([intent])


class _Metadata(PDFObject):  # type: ignore[misc]  # reportlab tells no types
    """Data about a document, which is never compressed."""

    __RefOnly__ = 1
    """It is an object of its own in the file."""

    def __init__(self, xmp: bytes) -> None:
        self._xmp = xmp

    def format(self, _document: object) -> bytes:
        """The object as it is written."""
        return b"<< /Type /Metadata /Subtype /XML /Length %d >>\nstream\n%b\nendstream\n" % (
            len(self._xmp),
            self._xmp,
        )


@cache
def end_streams_on_a_line() -> None:
    """Have reportlab end a line before "endstream", as ISO 32000-1, 7.3.8.1 advises and PDF/A asks; it does not."""
    as_it_was = PDFStream.format

    def on_a_line(stream: PDFStream, document: object) -> bytes:
        written: bytes = as_it_was(stream, document)
        return written.removesuffix(b"endstream\n") + b"\nendstream\n"

    PDFStream.format = on_a_line


def grey_profile() -> bytes:
    """A colour profile for grey from black to white (ICC.1:2001-04, 8.2: monochrome display), gamma 2.2."""
    tags = {
        b"desc": b"desc" + bytes(4) + pack(">I", 5) + b"grey\0" + bytes(4 + 4 + 2 + 1 + 67),
        b"cprt": b"text" + bytes(4) + b"no copyright\0",
        b"wtpt": b"XYZ " + bytes(4) + _xyz(0.9642, 1.0, 0.8249),
        b"kTRC": b"curv" + bytes(4) + pack(">IH", 1, round(2.2 * 256)),
    }
    at, table, data = 128 + 4 + 12 * len(tags), b"", b""
    for name, content in tags.items():
        table += pack(">4sII", name, at + len(data), len(content))
        data += content + bytes(-len(content) % 4)
    head = pack(
        ">I4sI4s4s4s6H4sI4sIIQI12s4s", at + len(data), bytes(4), 0x02400000, b"mntr", b"GRAY", b"XYZ ",
        2000, 1, 1, 0, 0, 0, b"acsp", 0, bytes(4), 0, 0, 0, 0, _xyz(0.9642, 1.0, 0.8249), bytes(4),
    )  # fmt: skip
    return head.ljust(128, b"\0") + pack(">I", len(tags)) + table + data


def _xyz(*parts: float) -> bytes:
    """A colour in numbers of 16 and 16 bits."""
    return pack(">3i", *(round(part * 65536) for part in parts))
