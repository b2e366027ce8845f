// Package calc shows the computations of the cards at a terminal, each with
// its formula, inputs, steps, result and source, so that a card's number can
// be checked by hand. A file holds one computation: what it asks for, and how
// its sheet is filled in. The numbers come from package bench.
package calc

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
)

// A computation is one computation of the trade at a terminal.
type computation struct {
	name    string
	about   string // one line of the list
	words   string // what stands before the options: "LIMITS"; "" for nothing
	options []option
	example string // what stands behind the name; it runs as it is
	work    func(*answers) *sheet
}

// computations lists them in the order in which a job meets them.
func computations() []computation {
	return []computation{
		convert, wrench, adapter, fastener, order, flats,
		lash, bevel, shim, preload,
		size, press, heat, hold, leak, gauge, tilt,
	}
}

// otherWords are what a tech may call a computation, and its names here.
var otherWords = map[string][]string{
	"fit": {"size", "press", "heat"}, "chill": {"heat"}, "torque": {"wrench", "adapter"}, "bolt": {"fastener", "order"},
	"limits": {"convert"}, "units": {"convert"}, "pressure": {"hold", "leak", "press"}, "vacuum": {"hold", "leak"}, "spanner": {"flats"},
	"socket": {"flats"}, "backlash": {"lash", "bevel"}, "crowfoot": {"adapter"}, "passes": {"order"}, "stack": {"shim"},
	"dial": {"lash", "tilt"}, "indicator": {"tilt"}, "proof": {"fastener"}, "iso": {"size"}, "pull": {"preload"},
}

// ErrImpossible reports a computation that was worked out and printed, and whose
// answer is that it cannot be done: no mark lies inside the limits, say.
var ErrImpossible = errors.New("it cannot be done")

// Run works out what args ask for, the name of a computation and its options,
// and prints the sheet, or help, to w. An error is ErrImpossible, wrong use in
// one sentence with its fix, or w's own.
func Run(args []string, w io.Writer) error {
	if len(args) == 0 || asksHelp(args[0]) {
		list(w)
		return nil
	}
	name, words := args[0], args[1:]
	var names []string
	for _, c := range computations() {
		if c.name == name {
			return c.run(words, w)
		}
		names = append(names, c.name)
	}
	help := "`benchwright calc` lists them"
	if others := otherWords[strings.ToLower(name)]; others != nil {
		help = "did you mean `benchwright calc " + strings.Join(others, "` or `benchwright calc ") + "`?"
	} else if near := diag.Nearest(name, names); near != "" {
		help = "did you mean `benchwright calc " + near + "`?"
	}
	return fmt.Errorf("there is no calculation `%s`: %s", short(name), help)
}

func (c computation) run(words []string, w io.Writer) error {
	for _, word := range words {
		if asksHelp(word) {
			c.usage(w)
			return nil
		}
	}
	a, err := c.read(words)
	if err != nil {
		return err
	}
	s := c.work(a)
	if a.err != nil {
		return a.err
	}
	if _, err := io.WriteString(w, s.text()); err != nil {
		return err
	}
	if s.impossible {
		return ErrImpossible
	}
	return nil
}

func asksHelp(word string) bool { return word == "--help" || word == "-help" || word == "-h" }
