"""From a symptom to its cause: what to measure, what it shows, what that means, what to do.

Each step ends some branches and leaves others to the next one. A branch may hold a case in the
words of `calc.request`, with the numbers to put in: the chapter links to it.

The same table serves the trouble call (`calc.diagnosis.evidence`). How likely a cause is, and how
surely it shows a reading, is judgement of this handbook: edit it where you know better.
"""
