"""What the hand does, without a window: plan before, the hand, plan after."""
