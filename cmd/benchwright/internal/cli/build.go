package cli

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
)

func build(c *call) int {
	o := c.options()
	folder := c.flags.String("o", "out", "the `FOLDER` to write the cards to")
	if code, ok := c.begin(o); !ok {
		return code
	}
	target := c.absolute(*folder)
	msgs := &diag.List{}
	spaces, err := workspace.Load(c.Dir, c.paths, []string{target}, msgs)
	if err != nil {
		return fail(c.Streams, err)
	}
	out, err := openOutput(target)
	if err != nil {
		return fail(c.Streams, err)
	}
	o.Emit = out.write
	results, err := c.run(o, spaces, msgs)
	if err != nil {
		return fail(c.Streams, err)
	}
	lines := c.summaries(o)
	for _, r := range results {
		number := r.Procedure.Number.Name
		if r.Errors > 0 || r.Fault != nil {
			what := findings(r.Errors, r.Warnings)
			if r.Fault != nil && r.Errors == 0 {
				what = r.Fault.Error()
			}
			if kept := out.keep(number); len(kept) > 0 {
				what += "; " + strings.Join(kept, ", ") + " kept, NOT current"
			} else {
				what += "; nothing written"
			}
			cardLine(lines, r, what)
			continue
		}
		var files []string
		for _, m := range r.Decks {
			files = append(files, m.Name)
		}
		slices.Sort(files)
		what := size(r) + " → " + strings.Join(files, ", ")
		if r.Warnings > 0 {
			what += " (" + findings(0, r.Warnings) + ")"
		}
		cardLine(lines, r, what)
	}
	total(lines, results)
	full := true
	for _, w := range spaces {
		for _, e := range w.Procedures {
			full = full && e.Named
		}
		full = full && !w.Standalone
	}
	removed, err := out.close(full, results)
	if err != nil {
		return fail(c.Streams, err)
	}
	for _, name := range removed {
		fmt.Fprintf(lines, "removed %s: no procedure makes it any more\n", name)
	}
	return exitCode(results, msgs)
}
