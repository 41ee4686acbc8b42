"""SCORM 1.2: a zip for each problem set, which an LMS gives to its learners.

A zip holds a page, its script and the set as data, and asks nothing of any other place. It is no
part of the site: it holds what is right.
"""

import zipfile
from io import BytesIO
from typing import Any

from build_scripts.scorm.contents import contents
from build_scripts.scorm.manifest import manifest
from calc.coursework.problem import ProblemSet

MOST = 150_000  # bytes; a school's line and its LMS take that at once


class TooLarge(ValueError):
    """A package that would weigh more than `MOST`."""


def zipped(problem_set: ProblemSet, **options: Any) -> bytes:
    """The package of a set. `options` are those of `contents`."""
    files = contents(problem_set, **options)
    files = {"imsmanifest.xml": manifest(problem_set, files)} | files
    packed = BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        for name, data in files.items():
            member = zipfile.ZipInfo(name)  # dated 1980: the same on every build
            member.external_attr = 0o644 << 16
            archive.writestr(member, data, zipfile.ZIP_DEFLATED, 9)
    if (size := len(packed.getvalue())) > MOST:
        raise TooLarge(f"{problem_set.name}: {size} bytes, more than {MOST}")
    return packed.getvalue()
