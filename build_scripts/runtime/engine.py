"""Pyodide's scripts and its WebAssembly, less what serves libraries loaded later, and graphics.

Pyodide can load compiled packages into a running Python. For them the binary gives away 9700
names, each of which costs a place in a table at every start, and the scripts hold SDL and OpenGL.
We load none.
"""

import hashlib
import json
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from build_scripts.runtime import binary
from build_scripts.runtime.archive import CACHE
from build_scripts.runtime.imports import ROOT
from build_scripts.runtime.library import PYODIDE

TERSER = ROOT / "node_modules" / "terser" / "bin" / "terser"
# By name, it leaves out what nothing calls, if nothing in the text can name it by other means.
REMOVING = ("--compress", "passes=3,pure_getters=true", "--comments", "false")

TABLE = re.compile(r"var wasmImports=\{([^}]*)\}")  # name of an import -> what is called for it
EXPORT = re.compile(r'var (_\w+)=Module\["\1"\]=wasmExports\["(\w+)"\];')
OFFERED = re.compile(r'Module\["(_\w+)"\]=_\w+;')
SIGNATURE = re.compile(r'(?<![\w$.])(\w+)\.sig="\w*";')
EVAL = re.compile(r"(?<![\w.$])eval\(")  # which may name anything; the policy lets none run
ASKED = re.compile(r'\b(?:wasmExports|exports)(?:\.|\[")(\w+)')
MAIN = "__main_argc_argv"  # which the script asks for as "main"

# The binary takes the address of each function of OpenGL. One that is never called is enough.
GRAPHICS = "emscripten_gl"
NO_GRAPHICS = 'function noGraphics(){}noGraphics.sig="v";'


def engine() -> tuple[bytes, bytes]:
    """Script and WebAssembly of the engine, made anew only if what they are made of has changed."""
    files = [PYODIDE / "pyodide.asm.js", PYODIDE / "pyodide.js", PYODIDE / "pyodide.asm.wasm"]
    code = [Path(__file__), Path(binary.__file__)]
    seen = hashlib.sha256(b"".join(file.read_bytes() for file in [*files, *code]))
    kept = [CACHE / f"engine-{seen.hexdigest()[:16]}{ending}" for ending in (".js", ".wasm")]
    if not all(file.exists() for file in kept):
        CACHE.mkdir(parents=True, exist_ok=True)
        for old in CACHE.glob("engine-*"):
            old.unlink(missing_ok=True)
        for file, content in zip(kept, _made(*files), strict=True):
            file.write_bytes(content)
    script, wasm = (file.read_bytes() for file in kept)
    return script + lock(), wasm


def lock() -> bytes:
    """Pyodide's lock file, less the list of packages, as a line of script."""
    info = json.loads((PYODIDE / "pyodide-lock.json").read_text(encoding="utf-8"))["info"]
    version = ".".join(map(str, sys.version_info[:2]))
    if not info["python"].startswith(f"{version}."):
        raise RuntimeError(f"Pyodide runs Python {info['python']}, the byte-code is for {version}.")
    text = json.dumps({"info": info, "packages": {}})
    return f"self.pyodideLock = {json.dumps(text)};\n".encode()


def _made(inner: Path, outer: Path, wasm: Path) -> tuple[bytes, bytes]:
    content = wasm.read_bytes()
    starter = _without_map(outer)
    script = _without_dead_code(_loosened(_without_map(inner), starter, binary.imported(content)))
    asked = {*ASKED.findall(script), MAIN}
    return f"{starter}\n{script}\n".encode(), binary.exporting(content, asked)


def _without_map(file: Path) -> str:
    return file.read_text(encoding="utf-8").partition("\n//# sourceMappingURL")[0]


def _loosened(script: str, starter: str, imported: set[str]) -> str:
    """The script without the lines that only offer a function to a library loaded later."""
    table = TABLE.search(script)
    assert table, "Pyodide's script has no table of imports any more."
    called = _called(table[1], imported)
    short = ",".join(f"{name}:{function}" for name, function in called.items())
    script = script.replace(table[0], f"{NO_GRAPHICS}var wasmImports={{{short}}}")
    signed = set(called.values())
    script = SIGNATURE.sub(_unless(lambda name: name not in signed), script)
    named = Counter(re.findall(r"[\w$]+", OFFERED.sub("", EXPORT.sub("", script)) + starter))
    script = EXPORT.sub(_unless(lambda name: not named[name]), script)
    used = {*re.findall(r"[\w$]+", starter), *re.findall(r"Module\.(\w+)", script)}
    return EVAL.sub("globalThis.eval(", OFFERED.sub(_unless(lambda name: name not in used), script))


def _called(table: str, imported: set[str]) -> dict[str, str]:
    """Of a table of imports, what the binary imports, and what is called for each."""
    every = dict(f"{entry}:{entry}".split(":")[:2] for entry in table.split(","))
    return {
        name: "noGraphics" if name.startswith(GRAPHICS) else function
        for name, function in every.items()
        if name in imported
    }


def _unless(dead: Callable[[str], bool]) -> Callable[[re.Match[str]], str]:
    return lambda line: "" if dead(line[1]) else line[0]


def _without_dead_code(script: str) -> str:
    command = ["node", str(TERSER), *REMOVING]
    return subprocess.run(command, input=script, check=True, capture_output=True, text=True).stdout
