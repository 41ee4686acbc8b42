"""Problems that a school can assign: variants, grading, sheets and keys, all worked by `calc`."""
