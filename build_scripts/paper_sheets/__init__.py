"""Problem sheets and their keys on paper, for a class."""
