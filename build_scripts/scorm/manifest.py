"""imsmanifest.xml: what an LMS reads of a package.

Source: ADL, SCORM Version 1.2, The SCORM Content Aggregation Model, 2001 (from memory), and the
schemas published with it, which a test holds the manifest against.
"""

import xml.etree.ElementTree as ET
from collections.abc import Iterable

from calc.coursework.problem import ProblemSet

_IMS = "http://www.imsproject.org/xsd/imscp_rootv1p1p2"
_ADL = "http://www.adlnet.org/xsd/adlcp_rootv1p2"
_LOM = "http://www.imsglobal.org/xsd/imsmd_rootv1p2p1"
_LANG = "{http://www.w3.org/XML/1998/namespace}lang"


def manifest(problem_set: ProblemSet, files: Iterable[str]) -> bytes:
    """The manifest of a set whose page is `index.html`, in UTF-8.

    No mastery score stands in it: an LMS that finds one fails whoever leaves a sheet half done.
    """
    root = ET.Element(f"{{{_IMS}}}manifest", identifier=_identifier(problem_set), version="1.2")
    _metadata(root, problem_set)
    organizations = _add(root, _IMS, "organizations", default="set")
    organization = _add(organizations, _IMS, "organization", identifier="set")
    _add(organization, _IMS, "title").text = problem_set.title
    item = _add(organization, _IMS, "item", identifier="sheet", identifierref="page")
    _add(item, _IMS, "title").text = problem_set.title
    resource = _add(
        _add(root, _IMS, "resources"), _IMS, "resource",
        identifier="page", type="webcontent", href="index.html",
    )  # fmt: skip
    resource.set(f"{{{_ADL}}}scormtype", "sco")
    for name in files:
        _add(resource, _IMS, "file", href=name)
    for prefix, space in (("", _IMS), ("adlcp", _ADL), ("imsmd", _LOM)):
        ET.register_namespace(prefix, space)
    written: bytes = ET.tostring(root, encoding="utf-8", xml_declaration=True)
    return written


def _identifier(problem_set: ProblemSet) -> str:
    return f"pail-and-timer.{problem_set.name}.{problem_set.revision}"


def _metadata(root: ET.Element, problem_set: ProblemSet) -> None:
    metadata = _add(root, _IMS, "metadata")
    _add(metadata, _IMS, "schema").text = "ADL SCORM"
    _add(metadata, _IMS, "schemaversion").text = "1.2"
    general = _add(_add(metadata, _LOM, "lom"), _LOM, "general")
    objectives = " ".join(each.objective for each in problem_set.problems)
    for name, words in (("title", problem_set.title), ("description", objectives)):
        text = _add(_add(general, _LOM, name), _LOM, "langstring")
        text.set(_LANG, "en")
        text.text = words


def _add(parent: ET.Element, space: str, tag: str, **attributes: str) -> ET.Element:
    return ET.SubElement(parent, f"{{{space}}}{tag}", attributes)
