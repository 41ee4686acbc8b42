"""The visits, each a path of steps that name inputs and calculators. A step more is one entry here.

The trouble call is no list: its next step follows from what was seen (`calc.views.trouble`).
"""
