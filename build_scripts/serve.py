"""Serves the handbook while it is being written: python3 build_scripts/serve.py

Sets up what is missing, then serves http://127.0.0.1:8000 and builds again after
every change. With --build it builds into site/ instead, and stops. Any other
argument goes to MkDocs.
"""

import argparse
import os
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from build_scripts import environment


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--build", action="store_true", help="build into site/ and stop")
    options, others = parser.parse_known_args()
    environment.prepare("site")
    # A warning must stop a build, but not the server of a writer in mid-sentence.
    command = ["build", "--strict"] if options.build else ["serve", "--no-strict"]
    python = str(environment.PYTHON)
    os.execv(python, [python, "-m", "mkdocs", *command, *others])


if __name__ == "__main__":
    main()
