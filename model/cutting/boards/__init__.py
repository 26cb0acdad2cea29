"""Boards of a rack: rips then crosscuts, or crosscuts then rips, board by board."""
