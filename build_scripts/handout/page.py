"""One page of the site, changed so that it works from a disk."""

import re

MODULE = re.compile(
    r'[ \t]*<script\b(?=[^>]*\btype="module")[^>]*\bsrc="([^"]+)"[^>]*></script>\n?'
)
THEME_SCRIPT = re.compile(r'<script src="[^"]*assets/javascripts/bundle\.')
PRELOAD = re.compile(r'<link rel="modulepreload"[^>]*>')
# It allows a worker from 'self', which a Blob is not.
POLICY = re.compile(r'[ \t]*<meta http-equiv="Content-Security-Policy"[^>]*>\n?')


def modules(html: str) -> list[str]:
    """Addresses of the module scripts that a page runs, in order."""
    return MODULE.findall(html)


def from_disk(html: str, script: str) -> str:
    """The page with one plain script in place of its modules, before the theme starts workers."""
    html = POLICY.sub("", PRELOAD.sub("", MODULE.sub("", html)))
    html, found = THEME_SCRIPT.subn(rf'<script src="{script}"></script>\n      \g<0>', html)
    if found != 1:
        raise RuntimeError(f"The theme's script was found {found} times on a page, not once.")
    return html
