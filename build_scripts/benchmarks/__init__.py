"""What the benchmark measures, one kind of figure a module."""
