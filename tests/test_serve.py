"""What a writer changes shows on the served page, though MkDocs imports our code only once."""

from build_scripts.benchmarks import builds


def test_a_change_of_a_chapter_and_of_calc_shows_while_serving() -> None:
    """By reason. What has not come through within five minutes ends in TimeoutError."""
    with builds.copied() as project:
        changed = [what for what, _ in builds.shown(project)]
    assert changed == [f"serve, s: {what} changed" for what in builds.EDITS]
