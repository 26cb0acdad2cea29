"""What an eye sees of pieces of wood: visible and hidden edges, and cut faces, before any paper."""
