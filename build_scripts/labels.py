"""Makes buttons of the labels by which the theme opens its drawer, its lists and its search.

The theme ticks hidden boxes by labels, which no key reaches and which have no role. A page gets the
roles, names and places in the order of keys here; `docs/app/keys.js` does what the buttons say.
"""

import re

_HEADER = {"__drawer": "Contents", "__search": "Search"}
_BUTTON = 'role="button" tabindex="0"'
# A list of the contents: the box that says whether it is open, and the label that ticks it.
_OPENS = re.compile(
    r'(?P<box><input class="md-nav__toggle md-toggle\s*" type="checkbox" id="(?P<id>\w+)"'
    r'(?P<open> checked)?\s*>\s*)<label class="(?P<looks>md-nav__link[^"]*)" for="(?P=id)"[^>]*>'
)
# The head of a list, which on a phone leads back out of it.
_BACK = re.compile(
    r'<label class="md-nav__title" for="(?P<id>__nav\w+|__toc)">'
    r"(?P<inside>\s*(?:<span[^>]*></span>)?(?P<said>[^<]*))"
)


def with_buttons(page: str) -> str:
    """The page with the theme's labels as buttons."""
    for box, name in _HEADER.items():
        plain = f'<label class="md-header__button md-icon" for="{box}"'
        page = page.replace(plain, f'{plain} {_BUTTON} aria-expanded="false" aria-label="{name}"')
    page = re.sub(r'(<nav class="md-nav"[^>]*?) aria-expanded="\w+"', r"\1", page)
    contents, beside, rest = page.partition('<div class="md-sidebar md-sidebar--secondary"')
    page = _OPENS.sub(_opener, _BACK.sub(_way_back, contents)) + beside + rest
    # the theme leaves its search dialog without a name
    return page.replace('role="dialog"', 'role="dialog" aria-label="Search"', 1)


def _opener(found: re.Match[str]) -> str:
    box, looks, at = found["box"], found["looks"], found["id"]
    state = f'aria-expanded="{"true" if found["open"] else "false"}"'
    return f'{box}<label class="{looks}" for="{at}" id="{at}_label" {_BUTTON} {state}>'


def _way_back(found: re.Match[str]) -> str:
    name = f"{found['said'].strip()}: back"
    head = f'<label class="md-nav__title" for="{found["id"]}" {_BUTTON} aria-label="{name}">'
    return f"{head}{found['inside']}"
