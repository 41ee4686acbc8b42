"""A page of the handbook as it stands on paper: nothing to press, nothing to fill in.

A form becomes a table of the figures that its fields show: the page itself is the only source.
"""

import re
from xml.etree.ElementTree import Element

from build_scripts.book.tree import classes, having, inside, make, reshape, swap, text

CONTROLS = {"button", "datalist", "input", "option", "select", "textarea"}
SILENT = {"noscript", "script", "style", "template"}
LEFT_OUT = {"headerlink", "calc-error", "calc-state", "calc-tools", "chart-file", "page-edition"}
# Empty ones are places where a script would have put something.
HOLDERS = {"div", "p", "section", "span"}
DROPPED = {"autocomplete", "download", "novalidate", "open", "tabindex", "role", "title", "name"}


def on_paper(article: Element) -> Element:
    """The article as a section for the book."""
    body = make("section", *inside(article))
    reshape(body, _printed)
    _drop_empty(body)
    for each in body.iter():
        _clean(each)
    return body


def _printed(element: Element) -> Element | None:
    tag, of = element.tag, classes(element)
    if element.get("type") in {"radio", "checkbox"}:
        return make("span", "☐\u00a0")
    if tag in CONTROLS | SILENT or of & LEFT_OUT or "hidden" in element.attrib:
        return None
    if tag == "img":
        raise ValueError(f"The book prints drawings, not pictures: {element.attrib}")
    if "calc-fields" in of:
        return _inputs(element)
    if "calc-example" in of:  # the rest speaks of changing a figure
        return make("p", text(element).partition(".")[0] + ".", class_="calc-example")
    if tag == "summary":
        said = text(element).removeprefix("Show ")
        return make("p", said[:1].upper() + said[1:], class_="opened")
    _mend(element, of)
    return element


def _mend(element: Element, of: set[str]) -> None:
    """Change what stays so that it reads without the page's styles and scripts."""
    tag = element.tag
    if "calc-sure" in of and element.text:
        element.text = f" {element.text.lstrip()}"
    if tag == "figure":  # the checker of EPUBs wants its caption first or last
        for caption in element.findall("figcaption"):
            element.remove(caption)
            element.append(caption)
    if tag in {"details", "fieldset", "form"} or "-" in tag:  # a dash: an element of our own
        element.tag = "div"


def _drop_empty(parent: Element) -> None:
    for child in list(parent):
        _drop_empty(child)
        if child.tag in HOLDERS and len(child) == 0 and not (child.text or "").strip():
            swap(parent, child)


def _clean(element: Element) -> None:
    """Leave only attributes that mean something on paper."""
    if level := element.get("data-level"):
        element.set("class", f"{element.get('class', '')} level-{level}".strip())
    keeps_role = element.tag == "svg" or "calc-formula" in classes(element)
    for name in list(element.attrib):
        if name.startswith("data-") or (name in DROPPED and not (name == "role" and keeps_role)):
            del element.attrib[name]
    if order := element.attrib.pop("paint-order", None):  # unknown to EPUB as an attribute
        element.set("style", f"paint-order: {order}")
    if element.tag == "div":
        element.attrib.pop("aria-label", None)
    if element.tag == "label":  # of a sheet's field, which is not on paper
        element.attrib.pop("for", None)
        element.tag = "div" if (element[:1] and element[0].text == "☐\u00a0") else "span"
    if element.tag == "legend":
        element.tag = "p"


def _inputs(form: Element) -> Element:
    """Title, question, cautions, and a table of what stands in the fields."""
    groups = [_group(each) for each in having(form, "calc-group")]
    head = make("tr", *(make("th", said, scope="col") for said in ("Input", "Figure", "How")))
    kept = [each for each in form if not classes(each) & {"calc-group", "calc-set"}]
    return make("div", *kept, make("table", make("thead", head), *groups, class_="inputs"))


def _group(group: Element) -> Element:
    heading = make("th", text(group.find("legend")), colspan="3", scope="rowgroup")
    rows = [_row(each) for each in group if "data-field" in each.attrib]
    return make("tbody", make("tr", heading, class_="group"), *rows)


def _row(field: Element) -> Element:
    label = field.find("legend" if field.tag == "fieldset" else "label")
    name = make("th", text(label), scope="row", class_="label")
    help_ = next(having(field, "calc-help")).find("p")
    return make("tr", name, make("td", *_figures(field)), make("td", *inside(help_)))


def _figures(field: Element) -> list[Element | str]:
    """What the field shows: the figure, its plus-or-minus, the figure in the other units."""
    if field.tag == "fieldset":
        chosen = (label for label in field.iter("label") if _is_chosen(label))
        return [text(next(chosen, None)) or "—"]
    entry = next(having(field, "calc-entry"))
    for each in entry.iter("select"):
        if "data-pick" in each.attrib:
            return [text(next(one for one in each if "selected" in one.attrib))]
    values = ", ".join(box.get("value", "") for box in entry.iter("input") if box.get("value"))
    units = [text(each) for each in entry.iter("option") if "selected" in each.attrib]
    shown: list[Element | str] = [re.sub(" ", "\u00a0", " ".join([values or "—", *units]))]
    for box in field.iter("input"):
        if "data-sure" in box.attrib and box.get("value"):
            shown.append(make("span", f" ±\u00a0{box.get('value')}", class_="sure"))
    for reading in having(field, "calc-reading"):
        if text(reading):
            shown.append(make("span", f" {text(reading)}", class_="reading"))
    return shown


def _is_chosen(label: Element) -> bool:
    return any("checked" in box.attrib for box in label.iter("input"))
