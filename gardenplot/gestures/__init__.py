"""What the hand does at the drawing, without Qt: place, move, resize, snap."""
