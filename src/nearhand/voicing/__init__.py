"""How a chord lies under two hands: candidates in a register, and the exact search for the smoothest path."""
