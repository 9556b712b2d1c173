"""What all kinds have in common whose caramel is melted, poured between bars and left to cool."""
