"""imsmanifest.xml: what an LMS reads of a package.

Source: ADL, SCORM Version 1.2, The SCORM Content Aggregation Model, 2001 (from memory), and the
schemas published with it, which a test holds the manifest against. It has no learning-object
metadata: it may do without, and their schema as published is refused by schema readers.
"""

import xml.etree.ElementTree as ET
from collections.abc import Iterable

from calc.coursework.problem import ProblemSet

_IMS = "http://www.imsproject.org/xsd/imscp_rootv1p1p2"
_ADL = "http://www.adlnet.org/xsd/adlcp_rootv1p2"


def manifest(problem_set: ProblemSet, files: Iterable[str]) -> bytes:
    """The manifest of a set whose page is `index.html`, in UTF-8.

    No mastery score stands in it: an LMS that finds one fails whoever leaves a sheet half done.
    """
    identifier = f"pail-and-timer.{problem_set.name}.{problem_set.revision}"
    root = ET.Element(f"{{{_IMS}}}manifest", identifier=identifier, version="1.2")
    metadata = _add(root, _IMS, "metadata")
    _add(metadata, _IMS, "schema").text = "ADL SCORM"
    _add(metadata, _IMS, "schemaversion").text = "1.2"
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
    for prefix, space in (("", _IMS), ("adlcp", _ADL)):
        ET.register_namespace(prefix, space)
    written: bytes = ET.tostring(root, encoding="utf-8", xml_declaration=True)
    return written


def _add(parent: ET.Element, space: str, tag: str, **attributes: str) -> ET.Element:
    return ET.SubElement(parent, f"{{{space}}}{tag}", attributes)
