"""Works out what a host must send with each file of a built site, and writes it for the host.

Every page carries the Content-Security-Policy as well, so that it holds on a host that sends no
headers of ours. Only what a browser refuses in a page, frame-ancestors, is then missing.
"""

import json
import re
from collections.abc import Mapping
from pathlib import Path

from build_scripts import inline

TEMPLATES = Path(__file__).resolve().parent / "hosting"
FOLDER = "hosting"  # of the site, where a host finds what to send

POLICY = {
    "default-src": "'none'",
    "script-src": "'self' 'wasm-unsafe-eval'",  # the latter lets Python's WebAssembly compile
    "worker-src": "'self'",
    "connect-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self' data:",  # the theme's style sheets hold their icons
    "base-uri": "'none'",
    "form-action": "'none'",
    "frame-ancestors": "'none'",
}
ONLY_AS_HEADER = "frame-ancestors"

REVALIDATE = "no-cache"
FOR_EVER = "public, max-age=31536000, immutable"
# Names with a hash of the content in them: of our runtime, and of the theme's files.
HASHED = r"/runtime/[^/]+-[0-9a-f]{12}\.\w+$|/assets/.+\.[0-9a-f]{8}\.min\.\w+$"

TYPES = {
    "css": "text/css",
    "csv": "text/csv",
    "epub": "application/epub+zip",
    "html": "text/html",
    "js": "text/javascript",
    "json": "application/json",
    "map": "application/json",
    "mjs": "text/javascript",
    "pdf": "application/pdf",
    "png": "image/png",
    "svg": "image/svg+xml",
    "txt": "text/plain",
    "wasm": "application/wasm",
    "xml": "application/xml",
    "zip": "application/zip",
}
TEXT = (
    "text/css",
    "text/csv",
    "text/javascript",
    "text/plain",
    "application/json",
    "image/svg+xml",
)

HEAD = re.compile(r'<head>\s*<meta charset="utf-8">')


def write(site: Path) -> None:
    """Put its policy into each page of a built site, and write the folder hosting/."""
    scripts: set[str] = set()
    for page in site.rglob("*.html"):
        html = page.read_text(encoding="utf-8")
        own = inline.scripts(html, page.relative_to(site).as_posix())
        page.write_text(with_policy(html, own), encoding="utf-8")
        scripts |= own
    folder = site / FOLDER
    folder.mkdir(exist_ok=True)
    told = headers(scripts)
    listed = {"every file": told, "caching": {HASHED: FOR_EVER, "any other path": REVALIDATE}}
    (folder / "headers.json").write_text(json.dumps(listed, indent=1) + "\n", encoding="utf-8")
    for template in TEMPLATES.glob("*.conf"):
        text = filled(template.read_text(encoding="utf-8"), told)
        (folder / template.name).write_text(text, encoding="utf-8")


def with_policy(html: str, scripts: set[str]) -> str:
    """The page with its policy before all that the policy is about."""
    rules = policy(scripts)
    del rules[ONLY_AS_HEADER]
    meta = f'<meta http-equiv="Content-Security-Policy" content="{as_text(rules)}">'
    found, count = HEAD.subn(lambda head: f"{head[0]}\n      {meta}", html, count=1)
    if not count:
        raise RuntimeError('The theme no longer begins a page with <meta charset="utf-8">.')
    return found


def policy(scripts: set[str]) -> dict[str, str]:
    """The policy that lets exactly those inline scripts run, given by their hashes."""
    hashes = [f"'{each}'" for each in sorted(scripts)]
    return POLICY | {"script-src": " ".join([POLICY["script-src"], *hashes])}


def as_text(rules: Mapping[str, str]) -> str:
    return "; ".join(f"{name} {value}" for name, value in rules.items())


def headers(scripts: set[str]) -> dict[str, str]:
    return {
        "Content-Security-Policy": as_text(policy(scripts)),
        "X-Content-Type-Options": "nosniff",
        "Referrer-Policy": "no-referrer",
    }


def filled(template: str, told: Mapping[str, str]) -> str:
    """A template of nginx with our headers, types and names in it."""
    parts = {
        "HEADERS": "\n".join(f'add_header {name} "{told[name]}" always;' for name in told),
        "TYPES": "\n".join(f"  {kind} {ending};" for ending, kind in TYPES.items()),
        "TEXT": " ".join(TEXT),
        "HASHED": HASHED,
        "FOR_EVER": FOR_EVER,
        "REVALIDATE": REVALIDATE,
    }
    return re.sub(r"@(\w+)@", lambda found: parts[found[1]], template)
