"""One house as one description: its parts by the names of the job, and what runs from them."""
