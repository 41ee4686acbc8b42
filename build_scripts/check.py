"""Runs every check: python3 build_scripts/check.py [arguments for pytest]

Sets up what is missing, runs all checks whatever each says, and ends with a
status that is not zero if one failed.
"""

import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from build_scripts import environment

CHECKS = (
    ["ruff", "check"],
    ["ruff", "format", "--check"],
    ["mypy"],
    ["mkdocs", "build", "--strict"],
)
EACH = ["--numprocesses=logical", "--dist=loadscope", "--no-loadscope-reorder"]  # on a processor
TESTS = (["pytest", "-m", "browser", *EACH], ["pytest", "-m", "not browser", *EACH])


def main() -> None:
    environment.prepare("test")
    environment.install_chromium()
    environment.install_other_browsers()
    environment.install_epub_checker()
    environment.install_nginx()
    tests = [["pytest", *sys.argv[1:]]] if sys.argv[1:] else TESTS
    failed = [" ".join(check) for check in (*CHECKS, *tests) if not passes(check)]
    if failed:
        sys.exit(f"Failed: {'; '.join(failed)}")
    print("All checks passed.")


def passes(check: list[str]) -> bool:
    print(f"\n== {' '.join(check)}", flush=True)
    return subprocess.run([environment.PYTHON, "-m", *check], check=False).returncode == 0


if __name__ == "__main__":
    main()
