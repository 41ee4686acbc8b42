"""Lets a browser fetch a form's modules at once: one found in another costs a way to the host."""

import re
from pathlib import Path

APP = Path(__file__).resolve().parents[1] / "docs" / "app"
FORM = "calc-form.js"
IMPORTED = re.compile(r'^import .* from "\./([\w-]+\.js)";', re.MULTILINE)
PRELOAD = '<link rel="modulepreload" href="{}">'


def with_preloads(html: str, root: str) -> str:
    """A page that has a form, with what it imports named in the head."""
    if "<calc-form" not in html:
        return html
    links = "".join(PRELOAD.format(f"{root}app/{name}") for name in sorted(modules()))
    return html.replace("</head>", f"{links}</head>", 1)


def modules() -> set[str]:
    """The form's module and all of ours that it comes to import."""
    found: set[str] = set()
    waiting = [FORM]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += IMPORTED.findall((APP / name).read_text(encoding="utf-8"))
    return found
