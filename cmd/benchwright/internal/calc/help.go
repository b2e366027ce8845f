package calc

import (
	"fmt"
	"io"
	"strings"
)

// list prints what can be worked out.
func list(w io.Writer) {
	fmt.Fprintf(w, "benchwright calc works out one calculation of the cards, with its formula, steps and source.\n\n")
	for _, c := range computations() {
		fmt.Fprintf(w, "  %-10s %s\n", c.name, c.about)
	}
	fmt.Fprintf(w, "\n`benchwright calc NAME --help` lists what it asks for, with an example. A number\nneeds its unit of measure; `Nm`, `ft-lb`, `deg`, `degC` and `um` are read too.\nThe quotes around a quantity may be left out.\n")
}

// labelWidth is how long an option may be for its meaning to stand beside it.
const labelWidth = 30

// usage prints the help of one computation: its options and its example.
func (c computation) usage(w io.Writer) {
	fmt.Fprintf(w, "usage: %s\n\n%s.\n\n", strings.TrimRight("benchwright calc "+c.name+" "+c.words, " ")+" OPTIONS", strings.ToUpper(c.about[:1])+c.about[1:])
	width := 0
	for _, q := range c.options {
		if n := runes(q.label()); n <= labelWidth {
			width = max(width, n)
		}
	}
	for _, q := range append(c.options, decimalOption) {
		text := q.about
		if q.needed {
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
	io.WriteString(w, c.shown())
}

// shown returns the example as it is typed, broken at its options.
func (c computation) shown() string {
	line, out := "  benchwright calc "+c.name, ""
	for i, part := range strings.Split(c.example, " --") {
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
