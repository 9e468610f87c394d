"""`python -m gradegen` does what `gradegen` does."""

import sys

from gradegen.cli import main

if __name__ == "__main__":
    sys.exit(main())
