"""Makes the edition to hand out: python3 -m build_scripts.handout SITE OUT.zip"""

import sys
from pathlib import Path

from build_scripts import handout

if len(sys.argv) != 3:
    sys.exit(__doc__)
handout.write(Path(sys.argv[1]), Path(sys.argv[2]))
