"""Plans for sheets: any cuts from edge to edge, cheapest stock first, then what suits the shop."""
