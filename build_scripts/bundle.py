"""Writes the folder from which a browser runs `calc`, and tells the page its files.

Each file carries a hash of its content in its name, so that a browser may keep it for ever, and
one that has not changed is never fetched again.
"""

import base64
import hashlib
import json
import shutil
from collections import Counter
from collections.abc import Mapping
from itertools import chain
from pathlib import Path

from build_scripts.runtime import imports
from build_scripts.runtime.archive import archive
from build_scripts.runtime.engine import engine
from build_scripts.runtime.library import standard_library

ROOT = imports.ROOT
FETCHER = ROOT / "docs" / "app" / "runtime-files.js"
SHARED = 5  # a module that so many calculators need is on every page
SCRIPTS = {
    "qrcode-generator/dist/qrcode.mjs": "qrcode.mjs",
    "idb-keyval/dist/index.js": "idb-keyval.js",
}


def write(site: Path, made: Mapping[str, bytes]) -> None:
    """Write the folder runtime/ of a built site; `made` goes into the package beside its own.

    runtime/manifest.json lists its files: {role: {path, bytes, sha256}}, paths from the site's
    root. The roles: engine, wasm, library, calc, and calculators/NAME for what only those need,
    coursework/problems for the pages of problem sets.
    """
    vendor = site / "app" / "vendor"
    vendor.mkdir(parents=True, exist_ok=True)
    for package_file, name in SCRIPTS.items():
        shutil.copyfile(ROOT / "node_modules" / package_file, vendor / name)
    runtime = site / "runtime"
    shutil.rmtree(runtime, ignore_errors=True)
    runtime.mkdir(parents=True)
    started, wasm = engine()
    manifest = {
        "engine": put(runtime, "pyodide.js", started),
        "wasm": put(runtime, "pyodide.wasm", wasm),
        "library": put(runtime, "library.zip", archive("library", standard_library(), optimize=2)),
    }
    for role, members in packages(made).items():
        name = role.rpartition("/")[2]
        manifest[role] = put(runtime, f"{name}.zip", archive(name, members, optimize=2))
    (runtime / "manifest.json").write_text(json.dumps(manifest, indent=1), encoding="utf-8")
    checked = {
        role: (file["path"], integrity(str(file["sha256"]))) for role, file in manifest.items()
    }
    text = FETCHER.read_text(encoding="utf-8")
    script = f"const RUNTIME = {json.dumps(checked)};\n{text}"
    (site / "app" / FETCHER.name).write_text(script, encoding="utf-8")


def packages(made: Mapping[str, bytes]) -> dict[str, dict[str, bytes]]:
    """`calc` in parts, by role: what pages need in general, and what each calculator does besides.

    What a few calculators need is in the part of each: a page has few, and loads no more files.
    """
    every = package() | dict(made)
    core = {_path(file) for file in imports.reached([imports.PAGE_ASKS]).values()}
    core |= {path for path in made if path.endswith("/__init__.py")}
    own = {
        module.rpartition(".")[2]: {
            *(_path(file) for file in imports.reached([module]).values()),
            *(path for path in made if path.endswith(f"/{module.rpartition('.')[2]}.py")),
        }
        for module in imports.calculators()
    }
    needed = Counter(chain.from_iterable(own.values()))
    core |= {path for path, count in needed.items() if count >= SHARED}
    parts = {f"calculators/{name}": paths - core for name, paths in own.items()}
    practice = {_path(file) for file in imports.reached(imports.coursework()).values()}
    parts["coursework/problems"] = practice - core
    return {
        role: {path: every[path] for path in sorted(paths)}
        for role, paths in ({"calc": core} | parts).items()
    }


def integrity(sha256: str) -> str:
    """A hash as browsers take it, to refuse a file that has another."""
    return f"sha256-{base64.b64encode(bytes.fromhex(sha256)).decode()}"


def put(runtime: Path, name: str, content: bytes) -> dict[str, str | int]:
    """Write a file under its name with a hash in it, and return what the manifest says of it."""
    sha256 = hashlib.sha256(content).hexdigest()
    stem, ending = name.split(".")
    file = runtime / f"{stem}-{sha256[:12]}.{ending}"
    file.write_bytes(content)
    return {"path": f"runtime/{file.name}", "bytes": len(content), "sha256": sha256}


def package() -> dict[str, bytes]:
    """`calc` as a page needs it; the command line, schemas and papers stay with the wheel."""
    files = imports.package_files().values()
    return {_path(file): file.read_bytes() for file in files}


def _path(file: Path) -> str:
    return file.relative_to(ROOT).as_posix()
