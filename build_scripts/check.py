"""Runs every check: python3 build_scripts/check.py [arguments for pytest]

Sets up what is missing, runs all checks whatever each says, and ends with a
status that is not zero if one failed.
"""

import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from build_scripts import environment

CHECKS = ("ruff check", "ruff format --check", "mypy", "mkdocs build --strict", "pytest")


def main() -> None:
    environment.prepare("test")
    environment.install_chromium()
    environment.install_other_browsers()
    environment.install_epub_checker()
    environment.install_nginx()
    failed = [check for check in CHECKS if not passes(check)]
    if failed:
        sys.exit(f"Failed: {', '.join(failed)}")
    print("All checks passed.")


def passes(check: str) -> bool:
    command = [*check.split(), *(sys.argv[1:] if check == "pytest" else [])]
    print(f"\n== {' '.join(command)}", flush=True)
    return subprocess.run([environment.PYTHON, "-m", *command], check=False).returncode == 0


if __name__ == "__main__":
    main()
