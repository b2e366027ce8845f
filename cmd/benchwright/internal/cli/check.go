package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/workspace"
)

// options are shared by check and build: a clean check promises that a build
// with the same options succeeds.
type options struct {
	compile.Options
	format string
}

func (c *call) options() *options {
	o := &options{}
	c.flags.StringVar(&o.format, "format", "text", "`text` messages on standard error; json, or sarif for a forge, on standard output")
	c.flags.StringVar(&o.Paper, "paper", "", "page size `NAME`: "+strings.Join(compile.Papers(), ", ")+" (default: the shop's, else A4)")
	c.flags.StringVar(&o.Sheet, "sheet", "", "put two or four pages on a larger sheet `NAME`, with crop marks, for printing on both sides")
	c.flags.StringVar(&o.Flip, "flip", "", "with --sheet: the `EDGE` over which the printer flips it, long (the default) or short")
	c.flags.StringVar(&o.WorkDate, "on", "", "the day of the work, `DATE` as 2026-11-25: warns of wrenches and gauges whose calibration fell due before it")
	return o
}

// begin parses and checks the options that check and build share.
func (c *call) begin(o *options) (code int, ok bool) {
	if code, ok := c.parse(); !ok {
		return code, false
	}
	if !slices.Contains([]string{"text", "json", "sarif"}, o.format) {
		return fail(c.Streams, fmt.Errorf("`%s` is not a format: write --format text, json or sarif", o.format)), false
	}
	if err := o.Check(); err != nil {
		return fail(c.Streams, err), false
	}
	if len(c.paths) == 0 {
		return fail(c.Streams, fmt.Errorf("name what to %s: a folder or a procedure, as in `benchwright %s procedures`", c.command.name, c.command.name)), false
	}
	return 0, true
}

// summaries returns the writer for the line about each card: never the one for
// a document.
func (c *call) summaries(o *options) io.Writer {
	if o.format == "text" {
		return c.Out
	}
	return c.Err
}

// run makes the cards of all workspaces and prints the messages.
func (c *call) run(o *options, spaces []*workspace.Workspace, msgs *diag.List) ([]*compile.Result, error) {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	o.Progress = progress(c.Streams)
	var all []*compile.Result
	for _, w := range spaces {
		all = append(all, compile.Run(ctx, w, o.Options, msgs)...)
	}
	if ctx.Err() != nil {
		return all, fmt.Errorf("stopped before all cards were done: nothing is half-written, run it again")
	}
	sorted := msgs.Sorted()
	switch o.format {
	case "json":
		return all, diag.WriteJSON(c.Out, sorted)
	case "sarif":
		return all, diag.WriteSARIF(c.Out, sorted, c.fromHere(spaces), programVersion)
	}
	return all, diag.WriteText(c.Err, sorted, c.Terminal)
}

// fromHere returns what gives the path of a file of these workspaces from the
// working directory, slash-separated.
func (c *call) fromHere(spaces []*workspace.Workspace) func(*source.File) string {
	return func(f *source.File) string {
		for _, w := range spaces {
			if len(spaces) == 1 || w.Has(f) {
				return c.below(w)(f.Name)
			}
		}
		return f.Name
	}
}

func check(c *call) int {
	o := c.options()
	if code, ok := c.begin(o); !ok {
		return code
	}
	msgs := &diag.List{}
	spaces, err := workspace.Load(c.Dir, c.paths, nil, msgs)
	if err != nil {
		return fail(c.Streams, err)
	}
	results, err := c.run(o, spaces, msgs)
	if err != nil {
		return fail(c.Streams, err)
	}
	out := c.summaries(o)
	for _, r := range results {
		what := findings(r.Errors, r.Warnings)
		if what == "" {
			what = "clean"
		}
		if r.Errors == 0 {
			what += ", " + size(r)
		}
		cardLine(out, r, what)
	}
	total(out, results)
	if len(results) == 0 && msgs.Errors() == 0 {
		fmt.Fprintln(out, "no procedures here: a procedure is a file that ends in .md, other than README.md")
	}
	return exitCode(results, msgs)
}

func exitCode(results []*compile.Result, msgs *diag.List) int {
	for _, r := range results {
		if r.Fault != nil {
			return exitFault
		}
	}
	if msgs.Errors() > 0 {
		return exitFound
	}
	return exitOK
}
