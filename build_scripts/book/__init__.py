"""The printed edition and the EPUB, made from a built handbook."""
