"""Nothing of the machine it was written on is left in the repository, and its top level stays small."""

import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.rules.source_tree import ROOT, Offence, assert_none, write_tree

# In pieces, so that this file does not hold what it looks for.
TRACES = ("/wo" + "rk/", "/ro" + "ot/", "pypi" + ".org", "registry." + "npmjs")

TOP_LEVEL = frozenset(
    ["README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "gardenplot", "resources", "samples", "tests"]
)

in_a_checkout = pytest.mark.skipif(not (ROOT / ".git").exists(), reason="only a checkout knows its files")


def repository_files(root: Path) -> list[str]:
    """Every file that is tracked or could be, by its path."""
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(command, cwd=root, capture_output=True, encoding="utf-8", check=True).stdout
    # Git still lists a tracked file that was deleted a moment ago.
    return sorted({path for path in listed.split("\0") if path and (root / path).is_file()})


def traces(root: Path) -> Iterator[Offence]:
    """Text files that name the machine they were written on or where its packages came from."""
    for path in repository_files(root):
        content = (root / path).read_bytes()
        if b"\0" not in content:
            for trace in TRACES:
                if trace.encode() in content:
                    yield Offence(path, f"names {trace}")


def strangers(root: Path) -> Iterator[Offence]:
    """Entries at the top level that do not belong there."""
    for name in sorted({path.partition("/")[0] for path in repository_files(root)}):
        if name not in TOP_LEVEL and not name.startswith("."):
            yield Offence(name, "does not belong at the top level")


@in_a_checkout
def test_no_file_names_a_machine() -> None:
    assert_none(traces(ROOT))


@in_a_checkout
def test_the_top_level_holds_only_what_belongs_there() -> None:
    assert_none(strangers(ROOT))


def test_traces_are_found_in_every_file_that_is_not_ignored(tmp_path: Path) -> None:
    subprocess.run(["git", "init", "--quiet"], cwd=tmp_path, check=True)
    tree = {f"tests/{n}.txt": f"see {trace}here" for n, trace in enumerate(TRACES)}
    others = {".gitignore": "build/\n", "build/log": TRACES[0], "picture": f"\0{TRACES[0]}", "clean": "roots/work"}
    write_tree(tmp_path, tree | others)
    subprocess.run(["git", "add", "tests/0.txt"], cwd=tmp_path, check=True)
    assert [offence.where for offence in traces(tmp_path)] == list(tree)


def test_strangers_at_the_top_level_are_found(tmp_path: Path) -> None:
    subprocess.run(["git", "init", "--quiet"], cwd=tmp_path, check=True)
    names = ["README.md", ".github/ci.yml", "gardenplot/a.py", "notes.md", "scripts/tests/a.py", "tests/a.py"]
    write_tree(tmp_path, dict.fromkeys(names, ""))
    assert [offence.where for offence in strangers(tmp_path)] == ["notes.md", "scripts"]
