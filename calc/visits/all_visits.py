"""All visits by name. A page brings its own to the browser: it is no part of what runs there."""

from calc.visits import balance_and_commission, first_survey, new_installation, yearly_service
from calc.visits.path import Visit

VISITS: dict[str, Visit] = {
    "first-survey": first_survey.VISIT,
    "new-installation": new_installation.VISIT,
    "balance-and-commission": balance_and_commission.VISIT,
    "yearly-service": yearly_service.VISIT,
}
