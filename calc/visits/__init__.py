"""The visits, each a path of steps that name inputs and calculators. A step more is one entry here.

The trouble call is no list: its next step follows from what was seen (`calc.views.trouble`).
"""

from calc.visits import balance_and_commission, first_survey, new_installation, yearly_service
from calc.visits.path import Visit

VISITS: dict[str, Visit] = {
    "first-survey": first_survey.VISIT,
    "new-installation": new_installation.VISIT,
    "balance-and-commission": balance_and_commission.VISIT,
    "yearly-service": yearly_service.VISIT,
}
