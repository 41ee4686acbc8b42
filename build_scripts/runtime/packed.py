"""Writes .br and .gz beside each file of a built site that gets smaller by it.

A static server sends them instead, and need not pack anything itself.
"""

import gzip
import hashlib
import time
from collections.abc import Callable
from pathlib import Path

import brotli

from build_scripts.runtime.imports import ROOT

CACHE = ROOT / ".cache" / "packed"
KEPT_FOR = 30 * 24 * 3600  # s since a build last used a packed copy
WORTH_IT = {".css", ".html", ".js", ".json", ".mjs", ".svg", ".txt", ".wasm", ".xml", ".zip"}
TOO_SMALL = 1000  # bytes: one packet of the network either way


def brotli_of(content: bytes) -> bytes:
    packed: bytes = brotli.compress(content, quality=11)
    return packed


def gzip_of(content: bytes) -> bytes:
    return gzip.compress(content, 9, mtime=0)


PACKERS = {".br": brotli_of, ".gz": gzip_of}


def write(folder: Path) -> None:
    """Write the packed copies of all files in a folder and below it."""
    CACHE.mkdir(parents=True, exist_ok=True)
    for file in sorted(folder.rglob("*")):
        if file.suffix in WORTH_IT and file.stat().st_size >= TOO_SMALL:
            _write_copies(file)
    for copy in CACHE.iterdir():
        if time.time() - copy.stat().st_mtime > KEPT_FOR:
            copy.unlink(missing_ok=True)


def _write_copies(file: Path) -> None:
    content = file.read_bytes()
    for ending, packer in PACKERS.items():
        packed = _packed(content, ending, packer)
        if len(packed) < 0.9 * len(content):
            file.with_name(file.name + ending).write_bytes(packed)


def _packed(content: bytes, ending: str, packer: Callable[[bytes], bytes]) -> bytes:
    copy = CACHE / f"{hashlib.sha256(content).hexdigest()}{ending}"
    if not copy.exists():
        whole = copy.with_suffix(f"{ending}-{time.time_ns()}")  # never half a copy, if stopped
        whole.write_bytes(packer(content))
        whole.rename(copy)
    copy.touch()
    return copy.read_bytes()
