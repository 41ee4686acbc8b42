"""What is wrong with an input, as facts. `calc.views.words` turns them into a sentence."""


class Refused(ValueError):
    """Input that cannot be used.

    reason -- a key of `calc.views.reasons.REASONS`
    field  -- name of the input; empty until the model knows it
    facts  -- what the sentence needs: text, unit, kind, low, high, says
    """

    def __init__(self, reason: str, field: str = "", **facts: object) -> None:
        super().__init__(f"{field}: {reason}" if field else reason)
        self.reason = reason
        self.field = field
        self.facts = facts
