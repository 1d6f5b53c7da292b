"""Give the samples' sheets to a validator of PDF/A-1b that is not ours; 1 if it finds a fault.

    .venv/bin/python .dev/validate_pdf.py

It takes Apache PDFBox's preflight from Debian: libpdfbox2-java, libactivation-java and libjaxb-api-java.
"""

import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from attrs import evolve

from gardenplot.files import sample
from gardenplot.plan.file import read_plan
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper

_JARS = ("preflight", "xmpbox", "pdfbox2", "fontbox2", "commons-logging", "javax.activation", "jaxb-api")
_VALIDATOR = "org.apache.pdfbox.preflight.Validator_A1b"


def main() -> int:
    """Print what the validator says of each sample on each paper."""
    path = ":".join(f"/usr/share/java/{jar}.jar" for jar in _JARS)
    faults = 0
    with TemporaryDirectory() as folder:
        for name in sorted(one.name for one in sample("kestrel-howe.gardenplot").parent.iterdir()):
            for paper in Paper:
                file = Path(folder) / f"{Path(name).stem}-{paper}.pdf"
                plan = read_plan(sample(name)).plan
                # What changed is told against the same plan before its last block was planned.
                before = Choices(before=evolve(plan, plantings=plan.plantings[:-1]))
                file.write_bytes(printed(plan, paper, list(Kind), choices=before, name=name).pdf)
                said = subprocess.run(
                    ["java", "-cp", path, _VALIDATOR, str(file)], capture_output=True, text=True, check=False
                )
                print(said.stdout.strip() or said.stderr.strip())
                faults += "is a valid PDF/A-1b file" not in said.stdout
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
