package cli

func newWorkspace(c *call) int { return exitFault }
