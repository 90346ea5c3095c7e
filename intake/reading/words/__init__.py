"""Facts that words give: choices, a yes or a no, permissions, materials, trials."""
