"""How a calculator looks: as a form, an answer, a chart, a text, JSON. The model draws nothing."""
