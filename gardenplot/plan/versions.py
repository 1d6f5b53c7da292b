"""The last good versions of each plan file, kept in a folder of the program's own."""

import os
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from pathlib import Path

from attrs import frozen

from gardenplot.errors import FileError
from gardenplot.plan.disk_words import why
from gardenplot.plan.file import SUFFIX, Opened, file_name, left_in, mark_of, read_plan, write_whole

MOST = 10
"""So many versions are kept besides the one that stands in the file."""
_MARK = 16
"""So many letters of its content's mark stand in the name of a version."""
_STAMP = "%Y%m%d-%H%M%S-%f"


@frozen
class Version:
    """What stood in a plan file at a time, in UTC."""

    path: Path
    saved: datetime
    mark: str

    def read(self) -> Opened:
        """The plan; raises FileError."""
        return read_plan(self.path)


@frozen
class Versions:
    """Keeps versions below a folder, apart for each file by where it lies.

    They do not lie beside the plans: whoever is given a folder of plans is not given what they once were, and a disk
    that is full or read-only takes nothing from them.
    """

    folder: Path

    def of(self, path: Path) -> tuple[Version, ...]:
        """The versions of a file, the newest first."""
        found = (_version(one) for one in self._folder_of(path).glob(f"*{SUFFIX}"))
        return tuple(sorted((one for one in found if one), key=lambda one: one.saved, reverse=True))

    def keep(self, path: Path, content: bytes) -> None:
        """Keep what stands in a file as its newest version, and no more than the last ones. Raises FileError."""
        mark, folder = mark_of(content)[:_MARK], self._folder_of(path)
        try:
            before = self.of(path)
            if before and before[0].mark == mark:
                return
            now = datetime.now(UTC)
            if before:
                # A clock that is put back must not make the newest one old.
                now = max(now, before[0].saved + timedelta(microseconds=1))
            folder.mkdir(parents=True, exist_ok=True, mode=0o700)
            write_whole(folder / f"{now.strftime(_STAMP)}-{mark}{SUFFIX}", content)
            again = [one.path for one in before if one.mark == mark]
            for old in (*again, *(one.path for one in self.of(path)[MOST + 1 :]), *left_in(folder)):
                old.unlink(missing_ok=True)
        except OSError as error:
            raise FileError(f"{folder}: {why(error)}") from None

    def _folder_of(self, path: Path) -> Path:
        where = os.path.normcase(os.path.realpath(path))
        return self.folder / f"{file_name(path.stem)[:40]}-{sha256(os.fsencode(where)).hexdigest()[:16]}"


def _version(path: Path) -> Version | None:
    stamp, _rule, mark = path.stem.rpartition("-")
    try:
        return Version(path, datetime.strptime(stamp, _STAMP).replace(tzinfo=UTC), mark)
    except ValueError:
        return None
