"""The standard library, less what no page comes to import."""

import zipfile

from build_scripts.runtime import imports

PYODIDE = imports.ROOT / "node_modules" / "pyodide"

# What Pyodide 0.29 itself imports to start and to report an error.
PYODIDE_NEEDS = {
    "ast",
    "encodings.utf_8",
    "json",
    "linecache",
    "pathlib",
    "tokenize",
    "traceback",
}
PYODIDE_OWN = ("_pyodide", "pyodide")

# Pyodide's binary carries these within it.
FROZEN = {
    "_collections_abc",
    "abc",
    "codecs",
    "genericpath",
    "importlib._bootstrap",
    "importlib._bootstrap_external",
    "importlib.machinery",
    "importlib.util",
    "io",
    "ntpath",
    "os",
    "posixpath",
    "site",
    "stat",
    "zipimport",
}
NEVER_ASKED = {
    "pyodide.common",
    "pyodide.console",
    "pyodide.http",
    "pyodide.http._exceptions",
    "pyodide.http._pyfetch",
    "pyodide.http.pyxhr",
}

# Pyodide starts with an event loop and an installer of packages. `calc` awaits nothing and
# installs nothing, and they with all that they import are a third of the library. It also wants
# two base classes, docstrings for its own functions, a way to declare types of JavaScript's, and
# `inspect` for these; `dataclasses` and `pkgutil` want a function of that each, and signatures that
# nobody reads.
STAND_INS = {
    "asyncio": "",
    "importlib.abc": """\
class Loader:
    pass
class MetaPathFinder:
    def invalidate_caches(self):
        pass
""",
    "inspect": """\
class Parameter:
    pass
class Signature:
    pass
def get_annotations(of):
    return dict(of.__dict__.get("__annotations__", {}))
def getmodulename(path):
    return path.rpartition("/")[2].removesuffix(".pyc") if path.endswith(".pyc") else None
def iscoroutinefunction(of):
    return False
def signature(of):
    raise ValueError("no signatures here")
""",
    "_pyodide.docstring": "def get_cmeth_docstring(of):\n    return ''\n",
    "_pyodide.jsbind": """\
from _pyodide_core import JsFuncSignature, js2py_default_call_result, py2js_default
def _anything(*args, **kwargs):
    pass
no_default = object()
default_signature = JsFuncSignature(
    _anything, False, 0, (), (), py2js_default, (), (), (), py2js_default,
    js2py_default_call_result,
)
""",
    "pyodide.webloop": "def _initialize_event_loop():\n    pass\n",
    "pyodide._package_loader": """\
from pathlib import Path
SITE_PACKAGES = Path("/lib/python3.13/site-packages")
DSO_DIR = Path("/usr/lib")
def init_loaded_packages():
    pass
""",
}
IN_LIBRARY = ("importlib.abc", "inspect")  # of these, what the library itself comes to import


def standard_library() -> dict[str, bytes]:
    """Sources of the modules that stay, by their path in the archive."""
    asked = imports.asked_of_library(imports.package_files())
    if stood_in := {name for name in asked if name.partition(".")[0] in STAND_INS}:
        raise RuntimeError(f"A page has no {', '.join(sorted(stood_in))}.")
    ours = {name: STAND_INS[name] for name in IN_LIBRARY}
    kept = imports.loaded_with(asked | PYODIDE_NEEDS, ours) - FROZEN - ours.keys()
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as shipped:
        return {
            name: shipped.read(name)
            for name in shipped.namelist()
            if name.endswith(".py") and _stays(module_of(name), kept)
        } | {f"{name.replace('.', '/')}.py": code.encode() for name, code in STAND_INS.items()}


def module_of(path: str) -> str:
    return path.removesuffix(".py").replace("/", ".").removesuffix(".__init__")


def _stays(module: str, kept: set[str]) -> bool:
    if module.partition(".")[0] in PYODIDE_OWN:
        return module not in NEVER_ASKED and module not in STAND_INS
    return module in kept
