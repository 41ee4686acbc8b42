"""All that knows MkDocs, with `kept`, which spares a writer's server work. A successor needs only
these written again.
"""

import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page

from build_scripts import bundle, drawings, early, fences, formulas, headers, labels, offline, pages
from build_scripts.houses import Houses
from build_scripts.kept import Kept
from build_scripts.options import Options
from build_scripts.pages.uses import Book
from build_scripts.paths import Paths
from build_scripts.practice import Practice
from build_scripts.runtime import packed

drawer = fences.Fences()
kept = Kept()
serving = False


def code() -> dict[Path, int]:
    """When each file of our own code, and of its tables, was last changed."""
    folders = (Path(__file__).parent, Path(__file__).parents[1] / "calc")
    files = (file for each in folders for file in each.rglob("*.*") if file.suffix != ".pyc")
    return {file: file.stat().st_mtime_ns for file in files}


loaded = code()


def on_startup(command: str, dirty: bool) -> None:
    global serving  # noqa: PLW0603 -- MkDocs tells it once and keeps nothing of ours
    serving = command == "serve"


def renew() -> None:
    """Take up changes of our own code: MkDocs imports it once, however often it builds."""
    global serving  # noqa: PLW0603 -- this module runs anew, but the server does not
    for name in list(sys.modules):
        if name.partition(".")[0] in ("build_scripts", "calc"):
            del sys.modules[name]
    assert __spec__ is not None
    assert __spec__.loader is not None
    __spec__.loader.exec_module(sys.modules[__name__])
    serving = True


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    if serving and code() != loaded:
        renew()
    formulas.teach()
    book = Book(Path(config.docs_dir))
    if serving:
        kept.begin(book)
    settings: dict[str, Any] = config.mdx_configs.setdefault("pymdownx.superfences", {})
    settings["custom_fences"] = [
        {"name": "calc", "class": "calc", "format": drawer.calc},
        {"name": "claims", "class": "claims", "format": drawer.claims},
        {"name": "coursework", "class": "coursework", "format": Practice(drawer).draw},
        {"name": "drawing", "class": "drawing", "format": drawings.figure},
        {"name": "options", "class": "options", "format": Options(drawer).draw},
        *(
            {"name": name, "class": name, "format": getattr(Houses(book, drawer), name)}
            for name in ("house", "visit", "trouble")
        ),
        {"name": "diagnosis", "class": "diagnosis", "format": Paths(book, drawer).draw},
    ]
    return config


def on_files(files: Files, config: MkDocsConfig) -> Files:
    for path, text in pages.generated(Path(config.docs_dir)).items():
        files.append(File.generated(config, path, content=text))
    return files


def on_page_markdown(markdown: str, page: Page, config: MkDocsConfig, files: Files) -> str:
    root = "../" * page.file.src_uri.count("/")
    drawer.page = fences.Page(root)
    foot = pages.foot(page.file.src_uri, pages.reviews())
    markdown = pages.with_problems(markdown, page.file.src_uri, root)
    markdown = f"{pages.with_citations(markdown, root)}\n\n{foot}\n"
    return kept.text(page, markdown) if serving else markdown


def on_page_content(html: str, page: Page, config: MkDocsConfig, files: Files) -> str:
    # a fence hides its ids from MkDocs, which checks that links lead somewhere
    assert page.present_anchor_ids is not None
    page.present_anchor_ids |= drawer.page.keys
    html = html.replace("<th></th>", "<td></td>")  # an empty corner is the head of nothing
    return kept.content(page, html, files) if serving else html


def on_env(env: Environment, config: MkDocsConfig, files: Files) -> None:
    if serving:
        search: Any = config.plugins["material/search"]
        kept.ready(files, env, search.search_index)


def on_post_page(output: str, page: Page, config: MkDocsConfig) -> str:
    def draw() -> str:
        root = "../" * page.file.src_uri.count("/")
        return labels.with_buttons(early.with_preloads(output, root))

    return kept.output(page, draw) if serving else draw()


def on_post_template(output_content: str, template_name: str, config: MkDocsConfig) -> str:
    return labels.with_buttons(output_content)  # the page for a wrong address has the contents too


def on_post_build(config: MkDocsConfig) -> None:
    site = Path(config.site_dir)
    bundle.write(site, formulas.as_modules())
    if serving:  # a writer waits for no brotli, and must see each change at once
        offline.write_none(site)
        return
    headers.write(site)  # not for a writer: the policy refuses the script of MkDocs
    offline.mark(site)
    packed.write(site)
    offline.write(site)  # it tells the packed sizes
    packed.write(site)  # and is packed itself
