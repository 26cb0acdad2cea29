"""The drawing of one mark: views, sections and notes to cut it by."""
