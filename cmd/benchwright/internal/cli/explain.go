package cli

import (
	"fmt"
	"slices"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
)

func explain(c *call) int {
	if code, ok := c.parse(); !ok {
		return code
	}
	switch len(c.paths) {
	case 0:
		for _, s := range diag.Slugs() {
			p, _ := diag.PageOf(s)
			fmt.Fprintf(c.Out, "%-24s %-8s %s\n", s, p.Severity, p.Summary)
		}
		return exitOK
	case 1:
	default:
		return fail(c.Streams, fmt.Errorf("explain one message at a time, as in `benchwright explain limits-missing`"))
	}
	if slices.Contains(procedure.Built, c.paths[0]) {
		return fail(c.Streams, fmt.Errorf("`%s` is a block: procedures/README.md shows it in a small example, and `benchwright schema block-%s` prints its keys", c.paths[0], c.paths[0]))
	}
	p, ok := procedure.PageOf(c.paths[0])
	if !ok {
		help := "`benchwright explain` lists them all"
		if near := diag.Nearest(c.paths[0], diag.Slugs()); near != "" {
			help = "did you mean `benchwright explain " + near + "`?"
		}
		return fail(c.Streams, fmt.Errorf("no message is called `%s`: %s", c.paths[0], help))
	}
	fmt.Fprint(c.Out, p.WithCarets())
	return exitOK
}
