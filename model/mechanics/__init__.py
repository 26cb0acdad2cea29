"""Formulas of engineering that know nothing of beds: frames, plates, fasteners."""
