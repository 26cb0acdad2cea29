"""What is drawn: strokes, hatches and texts in mm on paper, fit for screen and file alike."""
