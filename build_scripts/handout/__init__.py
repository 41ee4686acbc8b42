"""The edition to hand out: a zip that is read from a disk, with calculators and search working.

It is made from the built site. A browser that reads from a disk runs plain scripts and little
else: no modules, no fetch, no worker from a file. So modules become one script, and whatever a
worker needs is packed into scripts, from which embedded.js starts it.
"""

import base64
import gzip
import hashlib
import json
import shutil
import subprocess
import tempfile
import zipfile
from itertools import chain
from pathlib import Path

from build_scripts.handout import page
from calc import EDITION

HERE = Path(__file__).parent
ESBUILD = HERE.parents[1] / "node_modules" / ".bin" / "esbuild"
FOLDER = "pail-and-timer"
SCRIPT = "app/handout.js"
PYTHON_WORKER = "app/worker.js"
MANIFEST = "runtime/manifest.json"
STORE = "app/keyval.js"
SHARED_STORE = HERE / "shared-store.js"

# For a server only, or for languages and tools that no reader of this copy has.
LEFT_OUT = (
    "404.html",
    "*.br",
    "*.gz",
    "*.map",
    "lunr",
    "sitemap.xml",
    "sw.js",
)


def write(site: Path, target: Path) -> None:
    """Write the zip file `target`, which may lie in the site, from a built site."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder).resolve() / FOLDER
        shutil.copytree(site, copy, ignore=shutil.ignore_patterns(*LEFT_OUT, target.name))
        turn_into_handout(copy)
        write_zip(copy, target)


def turn_into_handout(site: Path) -> None:
    """Change a built site, in place, so that it works from a disk."""
    modules: dict[str, None] = {}  # in the order in which pages run them
    for file in sorted(site.rglob("*.html")):
        html = file.read_text(encoding="utf-8")
        modules |= dict.fromkeys(
            (file.parent / each).resolve().relative_to(site).as_posix()
            for each in page.modules(html)
        )
        root = "../" * (len(file.relative_to(site).parts) - 1)
        file.write_text(page.from_disk(html, root + SCRIPT), encoding="utf-8")
    bundle(site, list(modules), embed(site))
    index = site / "search" / "search_index.json"
    script = f"var __index = {index.read_text(encoding='utf-8')};\n"
    index.with_suffix(".js").write_text(script, encoding="utf-8")
    index.unlink()


def embed(site: Path) -> dict[str, list[str]]:
    """Pack what workers need into scripts; which script of a worker may ask for which files."""
    runtime = json.loads((site / MANIFEST).read_text(encoding="utf-8"))
    needs = {PYTHON_WORKER: [PYTHON_WORKER, runtime["engine"]["path"]]}
    for searcher in site.glob("assets/javascripts/workers/*.js"):
        name = searcher.relative_to(site).as_posix()
        needs[name] = [name]
    for name in {*chain(*needs.values()), *(file["path"] for file in runtime.values())}:
        pack(site, name)
    (site / MANIFEST).unlink()
    return needs


def pack(site: Path, name: str) -> None:
    """Put a script in place of a file, which hands the same bytes to the page."""
    packed = base64.b64encode(gzip.compress((site / name).read_bytes(), mtime=0)).decode()
    script = site / "embedded" / f"{name}.js"
    script.parent.mkdir(parents=True, exist_ok=True)
    script.write_text(f'handout.take("{name}", "{packed}");\n', encoding="ascii")
    (site / name).unlink()


def bundle(site: Path, modules: list[str], worker_files: dict[str, list[str]]) -> None:
    """Put plain scripts in place of the modules: one for all pages, one for storage.html."""
    if not (site / STORE).exists():
        raise RuntimeError(f"{STORE} is gone, and {SHARED_STORE.name} cannot take its place.")
    used = storage_page(site)  # to it alone the store is what it is on a server
    shutil.copyfile(SHARED_STORE, site / STORE)
    live = ", ".join(f"import({json.dumps(f'./{module}')})" for module in modules)
    start = f"""
        import {json.dumps(str(HERE / "embedded.js"))};
        import {{ opened }} from "./{STORE}";
        opened.then(() => Promise.all([{live}]));
    """
    used += esbuild(
        site,
        start,
        f"--outfile={SCRIPT}",
        "--define:import.meta.url=handout.moduleUrl",
        "--define:localStorage=handout.choices",
        "--define:fetch=handout.fetch",
        f"--define:WORKER_FILES={json.dumps(worker_files)}",
    )
    for file in set(used):
        if file.is_relative_to(site):
            file.unlink()


def storage_page(site: Path) -> list[Path]:
    """Add the page that keeps things for all. Returns the files its script was made of."""
    shutil.copyfile(HERE / "storage.html", site / "storage.html")
    shutil.copyfile(HERE / "storage-page.js", site / "app" / "storage-page.js")
    return esbuild(site, 'import "./app/storage-page.js";', "--outfile=app/storage.js")


def esbuild(site: Path, start: str, *options: str) -> list[Path]:
    """Write a plain script of a module and all it imports. Returns the files it was made of."""
    report = site / "report.json"
    shared = ("--bundle", "--format=iife", "--charset=utf8", "--log-level=warning")
    command = [str(ESBUILD), *shared, f"--metafile={report.name}", *options]
    subprocess.run(command, cwd=site, input=start, text=True, check=True)
    inputs = json.loads(report.read_text(encoding="utf-8"))["inputs"]
    report.unlink()
    return [(site / name).resolve() for name in inputs if not name.startswith("<")]


def write_zip(folder: Path, target: Path) -> None:
    """Write a folder, with a note to its reader and the sums of its files, as a zip."""
    note = (HERE / "README.txt").read_text(encoding="utf-8").format(edition=EDITION)
    (folder / "README.txt").write_text(note, encoding="utf-8")
    files = {
        file.relative_to(folder).as_posix(): file.read_bytes()
        for file in sorted(folder.rglob("*"))
        if file.is_file()
    }
    sums = "".join(f"{hashlib.sha256(data).hexdigest()}  {name}\n" for name, data in files.items())
    files["SHA256SUMS"] = sums.encode()
    with zipfile.ZipFile(target, "w") as book:
        for name, data in files.items():
            member = zipfile.ZipInfo(f"{folder.name}/{name}")  # dated 1980: the same on every build
            member.external_attr = 0o644 << 16
            book.writestr(member, data, zipfile.ZIP_DEFLATED, 9)
