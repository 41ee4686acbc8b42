"""Sets up what the two commands need.

It runs before anything is installed: standard library only.
"""

import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
VENV = ROOT / ".venv"
PYTHON = VENV / "bin" / "python"
CHROMIUM = Path("/usr/bin/chromium")
NGINX = Path("/usr/sbin/nginx")
NGINX_BROTLI = Path("/usr/lib/nginx/modules/ngx_http_brotli_static_module.so")
MATHS_FONT = Path("/usr/share/fonts/truetype/dejavu/DejaVuMathTeXGyre.ttf")

# Byte-code made here must be byte-code that the browser's Python reads.
PYTHON_VERSION = (3, 13)


def prepare(lock: str) -> None:
    """Leave .venv and node_modules as requirements/{lock}.txt and package-lock.json say."""
    if sys.version_info[:2] != PYTHON_VERSION:
        wanted = ".".join(map(str, PYTHON_VERSION))
        sys.exit(f"Python {wanted} is needed, and this is {sys.version.split()[0]}.")
    os.environ["NO_MKDOCS_2_WARNING"] = "1"
    os.chdir(ROOT)
    if not PYTHON.exists():
        if importlib.util.find_spec("ensurepip") is None:
            install_from_debian("python3-venv")
        run(sys.executable, "-m", "venv", "--clear", VENV)
    install_python_packages(ROOT / "requirements" / f"{lock}.txt")
    install_npm_packages()


def install_python_packages(lock: Path) -> None:
    stamp = VENV / f".{lock.stem}-stamp"
    if is_current(stamp, lock):
        return
    pip = (PYTHON, "-m", "pip", "install", "--quiet", "--disable-pip-version-check")
    run(*pip, "--require-hashes", "--only-binary=:all:", "--requirement", lock)
    stamp.write_text(digest(lock))


def install_npm_packages() -> None:
    lock = ROOT / "package-lock.json"
    stamp = ROOT / "node_modules" / ".stamp"
    if is_current(stamp, lock):
        return
    if shutil.which("npm") is None:
        install_from_debian("npm")
    run("npm", "ci", "--no-progress")
    stamp.write_text(digest(lock))


def install_chromium() -> None:
    """Leave Chromium, which tests drive and which prints the book, with fonts to print it in."""
    if not CHROMIUM.exists() or not MATHS_FONT.exists():
        install_from_debian("chromium", "fonts-liberation", "fonts-dejavu-extra")


def install_other_browsers() -> None:
    """Leave Firefox and WebKitGTK, in which tests read the copy on a disk."""
    needed = {
        "firefox-esr": "firefox-esr",
        "WebKitWebDriver": "webkit2gtk-driver",
        "xvfb-run": "xvfb",
        "xauth": "xauth",
    }
    missing = [package for program, package in needed.items() if shutil.which(program) is None]
    if missing:
        install_from_debian(*missing)


def install_epub_checker() -> None:
    if shutil.which("epubcheck") is None:
        install_from_debian("epubcheck")


def install_nginx() -> None:
    """Leave nginx, by which tests serve the book as hosts do."""
    if not NGINX.exists() or not NGINX_BROTLI.exists():
        install_from_debian("nginx-light", "libnginx-mod-http-brotli-static")


def install_from_debian(*packages: str) -> None:
    if shutil.which("apt-get") is None:
        sys.exit(f"Please install {' and '.join(packages)}: this is no Debian machine.")
    as_root = [] if os.geteuid() == 0 else ["sudo"]
    apt = [*as_root, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "--quiet=2", "--yes"]
    run(*apt, "update")
    run(*apt, "install", "--no-install-recommends", *packages)


def is_current(stamp: Path, lock: Path) -> bool:
    return stamp.exists() and stamp.read_text() == digest(lock)


def digest(file: Path) -> str:
    return hashlib.sha256(file.read_bytes()).hexdigest()


def run(*command: "str | Path") -> None:
    """Run a step of the set-up, and stop with its status if it fails."""
    print("$", *command, flush=True)
    status = subprocess.run(command, check=False).returncode
    if status:
        sys.exit(status)
