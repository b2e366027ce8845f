package cli

import (
	"fmt"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/schema"
)

func printSchema(c *call) int {
	if code, ok := c.parse(); !ok {
		return code
	}
	names := append(schema.Names(), schema.Printed()...)
	if len(c.paths) == 0 {
		for _, n := range names {
			fmt.Fprintln(c.Out, n)
		}
		return exitOK
	}
	text, ok := schema.Source(c.paths[0])
	if !ok || len(c.paths) > 1 {
		help := "the names are " + strings.Join(names, ", ")
		if near := diag.Nearest(c.paths[0], names); near != "" && !ok {
			help = "did you mean `benchwright schema " + near + "`?"
		}
		return fail(c.Streams, fmt.Errorf("no schema is called `%s`: %s", strings.Join(c.paths, " "), help))
	}
	fmt.Fprintf(c.Out, "%s", text)
	return exitOK
}
