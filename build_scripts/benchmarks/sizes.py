"""How much a page with a calculator loads, as a server sends it: in brotli where smaller."""

import json
import re
from collections.abc import Iterable, Iterator, Mapping
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
    runtime = {role: site / file["path"] for role, file in manifest.items()}
    pages = [own(page, runtime) for page in site.rglob("*.html")]
    parts |= {role: [file] for role, file in runtime.items() if "/" not in role}
    parts["calculators, of the page with most"] = max(pages, key=kilobytes)
    for part, files in parts.items():
        yield f"kB: {part}", kilobytes(files)
    yield "kB: first visit", sum(map(kilobytes, parts.values()))
    yield (
        "kB: calculators, of all pages",
        kilobytes(file for role, file in runtime.items() if "/" in role),
    )


def own(page: Path, runtime: Mapping[str, Path]) -> list[Path]:
    """The files that only the calculators of a page need."""
    names = set(re.findall(r'<calc-form name="(\w+)"', page.read_text(encoding="utf-8")))
    return [runtime[f"calculators/{name}"] for name in sorted(names)]


def kilobytes(files: Iterable[Path]) -> float:
    return sum(sent(file).stat().st_size for file in files) / 1000
