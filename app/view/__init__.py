"""The bed in three dimensions: `app.view.bed_view.BedView` is the widget that the window shows."""
