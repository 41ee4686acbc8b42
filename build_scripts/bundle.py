"""Writes the folder from which a browser runs `calc`: Pyodide and two archives of byte-code.

Byte-code starts more than twice as fast as source. The same files give the same
archives, byte for byte, so that a browser may keep those that have not changed.
"""

import hashlib
import json
import py_compile
import shutil
import sys
import tempfile
import zipfile
from collections.abc import Mapping
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PYODIDE = ROOT / "node_modules" / "pyodide"
CACHE = ROOT / ".cache" / "runtime"
AS_SHIPPED = ("pyodide.js", "pyodide.asm.js", "pyodide.asm.wasm")
SCRIPTS = {
    "qrcode-generator/dist/qrcode.mjs": "qrcode.mjs",
    "idb-keyval/dist/index.js": "idb-keyval.js",
}


def write(site: Path, made: Mapping[str, bytes]) -> None:
    """Write the folder runtime/ of a built site; `made` goes into the package beside its own."""
    runtime = site / "runtime"
    runtime.mkdir(parents=True, exist_ok=True)
    for name in AS_SHIPPED:
        shutil.copyfile(PYODIDE / name, runtime / name)
    vendor = site / "app" / "vendor"
    vendor.mkdir(parents=True, exist_ok=True)
    for package_file, name in SCRIPTS.items():
        shutil.copyfile(ROOT / "node_modules" / package_file, vendor / name)
    (runtime / "lock.js").write_text(lock_script(), encoding="utf-8")
    shutil.copyfile(archive("python_stdlib", standard_library()), runtime / "python_stdlib.zip")
    shutil.copyfile(archive("calc", {**package(), **made}), runtime / "calc.zip")


def lock_script() -> str:
    """Pyodide's lock file less its list of packages, of which `calc` needs none."""
    info = json.loads((PYODIDE / "pyodide-lock.json").read_text(encoding="utf-8"))["info"]
    version = ".".join(map(str, sys.version_info[:2]))
    if not info["python"].startswith(f"{version}."):
        raise RuntimeError(f"Pyodide runs Python {info['python']}, the byte-code is for {version}.")
    lock = json.dumps({"info": info, "packages": {}})
    return f"self.pyodideLock = {json.dumps(lock)};\n"


def standard_library() -> dict[str, bytes]:
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as shipped:
        return {m.filename: shipped.read(m) for m in shipped.infolist() if not m.is_dir()}


def package() -> dict[str, bytes]:
    """`calc` as a page needs it; schemas and papers stay with the wheel."""
    return {
        file.relative_to(ROOT).as_posix(): file.read_bytes()
        for file in sorted((ROOT / "calc").rglob("*.py"))
    }


def archive(name: str, members: Mapping[str, bytes]) -> Path:
    """The zip file of `members` with each .py compiled, made anew only if one has changed."""
    path = CACHE / f"{name}-{fingerprint(members)}.zip"
    if not path.exists():
        CACHE.mkdir(parents=True, exist_ok=True)
        for old in CACHE.glob(f"{name}-*"):
            old.unlink()
        with tempfile.TemporaryDirectory(dir=CACHE) as folder:
            written = write_archive(Path(folder), members)
            written.rename(path)
    return path


def fingerprint(members: Mapping[str, bytes]) -> str:
    seen = hashlib.sha256(Path(__file__).read_bytes() + sys.version.encode())
    for name, content in members.items():
        seen.update(f"\0{name}\0{len(content)}\0".encode() + content)
    return seen.hexdigest()[:16]


def write_archive(folder: Path, members: Mapping[str, bytes]) -> Path:
    path = folder / "archive.zip"
    # Stored would start some 60 ms sooner, but weighs 9.7 MB, where deflated weighs 4.1 MB and
    # many servers send a zip as it is.
    with zipfile.ZipFile(path, "w") as target:
        for name, content in members.items():
            if name.endswith(".py"):
                entry, data = f"{name}c", compiled(folder, name, content)
            else:
                entry, data = name, content
            target.writestr(zipfile.ZipInfo(entry), data, zipfile.ZIP_DEFLATED)
    return path


def compiled(folder: Path, name: str, source: bytes) -> bytes:
    """Byte-code that is the same on every build and never looks for its source."""
    module, code = folder / "module.py", folder / "module.pyc"
    module.write_bytes(source)
    unchecked = py_compile.PycInvalidationMode.UNCHECKED_HASH
    py_compile.compile(
        str(module), str(code), dfile=name, doraise=True, invalidation_mode=unchecked
    )
    return code.read_bytes()
