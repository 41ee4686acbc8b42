"""How much a page with a calculator loads, as a server sends it: in brotli where smaller."""

import json
from collections.abc import Iterator
from pathlib import Path

from build_scripts.benchmarks.served import sent


def weighed(site: Path) -> Iterator[tuple[str, float]]:
    """Kilobytes (1000 bytes) of each part, and of a first visit without page and theme."""
    app = site / "app"
    parts = {
        "our scripts": [*app.glob("*.js"), site / "sw.js"],
        "our styles": list(app.glob("*.css")),
        "others' scripts": list((app / "vendor").glob("*js")),
    }
    manifest = json.loads((site / "runtime" / "manifest.json").read_text(encoding="utf-8"))
    parts |= {role: [site / file["path"]] for role, file in manifest.items()}
    total = 0.0
    for part, files in parts.items():
        weight = sum(sent(file).stat().st_size for file in files) / 1000
        total += weight
        yield f"kB: {part}", weight
    yield "kB: first visit", total
