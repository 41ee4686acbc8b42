"""Arithmetic: SI floats in, a float or a small named result out."""
