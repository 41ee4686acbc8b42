"""Archives of byte-code. The same files give the same archive, byte for byte."""

import ast
import hashlib
import marshal
import sys
import tempfile
import zipfile
from collections.abc import Iterator, Mapping
from importlib.util import MAGIC_NUMBER, source_hash
from pathlib import Path
from types import CodeType

from build_scripts.runtime.imports import ROOT

_HEAD = 16  # bytes before the code: magic number, flags, hash of the source
CACHE = ROOT / ".cache" / "runtime"


def archive(name: str, members: Mapping[str, bytes], *, optimize: int) -> bytes:
    """The zip file of `members` with each .py compiled, made anew only if one has changed.

    optimize -- as of compile(): 0 keeps everything, 2 leaves out assertions and docstrings

    Members are stored, not deflated: a server's brotli then makes a third less of the whole than
    of deflated ones, and Python starts without inflating.
    """
    path = CACHE / f"{name}-{_fingerprint(members, optimize)}.zip"
    if not path.exists():
        CACHE.mkdir(parents=True, exist_ok=True)
        for old in CACHE.glob(f"{name}-*"):
            old.unlink(missing_ok=True)
        with tempfile.TemporaryDirectory(dir=CACHE) as folder:
            _write(Path(folder), members, optimize).rename(path)
    return path.read_bytes()


def _fingerprint(members: Mapping[str, bytes], optimize: int) -> str:
    seen = hashlib.sha256(Path(__file__).read_bytes() + f"{sys.version}{optimize}".encode())
    for name, content in members.items():
        seen.update(f"\0{name}\0{len(content)}\0".encode() + content)
    return seen.hexdigest()[:16]


def _write(folder: Path, members: Mapping[str, bytes], optimize: int) -> Path:
    path = folder / "archive.zip"
    with zipfile.ZipFile(path, "w") as target:
        for name, content in members.items():
            if name.endswith(".py"):
                entry, data = f"{name}c", _compiled(name, content, optimize)
            else:
                entry, data = name, content
            target.writestr(zipfile.ZipInfo(entry), data, zipfile.ZIP_STORED)
    return path


def _compiled(name: str, source: bytes, optimize: int) -> bytes:
    """Byte-code that is the same on every build and never looks for its source: PEP 552's header
    of an unchecked hash. What a function of ours says of its types is left out: nothing asks at run
    time, as the standard library's single dispatch does.
    """
    tree = ast.parse(source)
    if name.startswith("calc/"):
        tree = _Bare().visit(tree)
    code = compile(tree, name, "exec", dont_inherit=True, optimize=optimize)
    unchecked = (1).to_bytes(4, "little")
    bare = _without_lines(code)
    # marshal marks what is referred to more than once: held here, everything is, whatever else
    # this process has in common with it
    held = list(_parts(bare))
    body = marshal.dumps(bare)
    del held
    return MAGIC_NUMBER + unchecked + source_hash(source) + body


class _Bare(ast.NodeTransformer):
    """Takes the annotations off functions. Those of a class make its fields, and stay."""

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.FunctionDef:
        self.generic_visit(node)
        node.returns = None
        given = node.args
        for each in (*given.posonlyargs, *given.args, *given.kwonlyargs, given.vararg, given.kwarg):
            if each:
                each.annotation = None
        return node


def _without_lines(code: CodeType) -> CodeType:
    """The code less the lines that it was written on, a third of it: a page needs none.

    In the table's place stand entries for no place, 8 units of code each (0xF8 and the length less
    one): without any Python could not say what went wrong.
    """
    inner = (
        _without_lines(each) if isinstance(each, CodeType) else each for each in code.co_consts
    )
    eights, rest = divmod(len(code.co_code) // 2, 8)
    nowhere = b"\xff" * eights + (bytes([0xF7 + rest]) if rest else b"")
    return code.replace(co_linetable=nowhere, co_consts=tuple(inner))


def _parts(value: object) -> Iterator[object]:
    yield value
    if isinstance(value, CodeType):
        names = (value.co_names, value.co_varnames, value.co_cellvars, value.co_freevars)
        yield from _parts((value.co_consts, *names, value.co_name, value.co_qualname))
    elif isinstance(value, tuple | frozenset):
        for each in value:
            yield from _parts(each)
