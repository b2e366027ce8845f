package cli

import (
	"fmt"
	"io"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
)

// A working is one computation of the trade at a terminal: what it asks for
// and how it is worked out, so that a card's number can be checked by hand.
type working struct {
	name    string
	about   string // one line of the list
	words   string // what stands before the options: "LIMITS"; "" for nothing
	asks    []ask
	example string // what stands behind the name; it runs as it is
	work    func(*answers) *sheet
}

// workings lists the computations in the order in which a job meets them.
func workings() []working {
	return []working{
		convertWork, wrenchWork, adapterWork, fastenerWork, orderWork, flatsWork,
		lashWork, bevelWork, shimWork, preloadWork,
		sizeWork, pressWork, heatWork, holdWork, leakWork, gaugeWork, tiltWork,
	}
}

// otherWords are what a tech may call a computation, and its names here.
var otherWords = map[string][]string{
	"fit": {"size", "press", "heat"}, "chill": {"heat"}, "torque": {"wrench", "adapter"}, "bolt": {"fastener", "order"},
	"limits": {"convert"}, "units": {"convert"}, "pressure": {"hold", "leak", "press"}, "vacuum": {"hold", "leak"}, "spanner": {"flats"},
	"socket": {"flats"}, "backlash": {"lash", "bevel"}, "crowfoot": {"adapter"}, "passes": {"order"}, "stack": {"shim"},
	"dial": {"lash", "tilt"}, "indicator": {"tilt"}, "proof": {"fastener"}, "iso": {"size"}, "pull": {"preload"},
}

// work runs one computation. Its exit code is 0 where there is an answer, 1
// where the answer is that it cannot be, and 2 for wrong use.
func work(c *call) int {
	if len(c.rest) == 0 || asksHelp(c.rest[0]) {
		workUsage(c.Out)
		return exitOK
	}
	name := c.rest[0]
	var names []string
	for _, w := range workings() {
		if w.name == name {
			return c.workOut(w, c.rest[1:])
		}
		names = append(names, w.name)
	}
	help := "`benchwright work` lists what can be worked out"
	if others := otherWords[strings.ToLower(name)]; others != nil {
		help = "did you mean `benchwright work " + strings.Join(others, "` or `benchwright work ") + "`?"
	} else if near := diag.Nearest(name, names); near != "" {
		help = "did you mean `benchwright work " + near + "`?"
	}
	return fail(c.Streams, fmt.Errorf("nothing is worked out by the name of `%s`: %s", short(name), help))
}

func (c *call) workOut(w working, words []string) int {
	for _, word := range words {
		if asksHelp(word) {
			w.usage(c.Out)
			return exitOK
		}
	}
	a, err := w.read(words)
	if err != nil {
		return fail(c.Streams, err)
	}
	s := w.work(a)
	if a.err != nil {
		return fail(c.Streams, a.err)
	}
	if _, err := io.WriteString(c.Out, s.text()); err != nil {
		return fail(c.Streams, err)
	}
	if s.cannot {
		return exitFound
	}
	return exitOK
}

func asksHelp(word string) bool { return word == "--help" || word == "-help" || word == "-h" }

func workUsage(w io.Writer) {
	fmt.Fprintf(w, "%s work shows a computation of the cards with formula, steps and source.\n\n", program)
	for _, k := range workings() {
		fmt.Fprintf(w, "  %-10s %s\n", k.name, k.about)
	}
	fmt.Fprintf(w, "\n`benchwright work NAME --help` lists what it asks for, with an example. A number\nhas its unit; `Nm`, `ft-lb`, `deg`, `degC` and `um` are read too. Quotes round a\nquantity may be left out.\n")
}

// labelWidth is how long an option may be for its meaning to stand beside it.
const labelWidth = 30

func (k working) usage(w io.Writer) {
	fmt.Fprintf(w, "usage: %s\n\n%s.\n\n", strings.TrimRight("benchwright work "+k.name+" "+k.words, " ")+" OPTIONS", strings.ToUpper(k.about[:1])+k.about[1:])
	width := 0
	for _, q := range k.asks {
		if n := runes(q.label()); n <= labelWidth {
			width = max(width, n)
		}
	}
	for _, q := range append(k.asks, decimalAsk) {
		text := q.about
		if q.must {
			text += " (needed)"
		}
		label := q.label()
		if runes(label) > width {
			fmt.Fprintf(w, "  %s\n", label)
			label = ""
		}
		io.WriteString(w, hanging("  "+label+strings.Repeat(" ", width-runes(label)+2), text))
	}
	fmt.Fprintf(w, "\nExample:\n")
	io.WriteString(w, k.shown())
}

// shown returns the example as it is typed, broken at its options.
func (k working) shown() string {
	line, out := "  benchwright work "+k.name, ""
	for i, part := range strings.Split(k.example, " --") {
		if i > 0 {
			part = "--" + part
		}
		if runes(line)+1+runes(part) > 76 {
			out, line = out+line+" \\\n", "   "
		}
		line += " " + part
	}
	return out + line + "\n"
}

// decimalAsk is what every computation understands besides its own.
var decimalAsk = ask{name: "decimal", example: "comma", about: "how numbers are typed and printed: point (left out) or comma"}

// markOf reads the decimal mark.
func markOf(text string) (quantity.Mark, error) {
	switch text {
	case "", "point":
		return quantity.Point, nil
	case "comma":
		return quantity.Comma, nil
	}
	return 0, fmt.Errorf("`%s` is no decimal mark: write `--decimal point` or `--decimal comma`", short(text))
}
