package cli

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/release"
)

// The program's voice. Everything it says to a person, apart from messages
// about procedures (which have slugs and pages), is made here.
//
//   - One line a card: its number, its title, what became of it.
//   - Say what was done, not what is being done; no thanks, no exclamation.
//   - A failure is one sentence that begins with "benchwright:" and ends with
//     what to do.
//   - Numbers count what the reader cares for: steps, pages, errors.
//   - Paths are as the reader gave them.

const program = "benchwright"

func usage(w io.Writer) {
	fmt.Fprintf(w, "%s turns bench procedures into laminated bench cards.\n\n", program)
	for _, c := range commands() {
		fmt.Fprintf(w, "  %-32s %s\n", strings.TrimRight("benchwright "+c.name+" "+c.args, " "), c.about)
	}
	fmt.Fprintf(w, "\n`benchwright COMMAND --help` lists a command's options. PATH is a workspace (a folder\nwith shop.yaml), a folder below it, or a procedure file.\n")
}

func commandUsage(w io.Writer, c command, flags *flag.FlagSet) {
	fmt.Fprintf(w, "usage: %s\n\n%s.\n", strings.TrimRight("benchwright "+c.name+" "+c.args, " "), strings.ToUpper(c.about[:1])+c.about[1:])
	first := true
	flags.VisitAll(func(f *flag.Flag) {
		if first {
			fmt.Fprintln(w)
			first = false
		}
		dash := "--"
		if len(f.Name) == 1 {
			dash = "-"
		}
		name, text := flag.UnquoteUsage(f)
		fmt.Fprintf(w, "  %-16s %s\n", strings.TrimRight(dash+f.Name+" "+name, " "), text)
	})
}

// fail prints why a command failed.
func fail(s Streams, err error) int {
	fmt.Fprintf(s.Err, "%s: %s\n", program, err)
	return exitFault
}

// cardLine prints the outcome for a card.
func cardLine(w io.Writer, res *compile.Result, what string) {
	p := res.Procedure
	number := p.Number.Name
	if number == "" {
		number = p.File.Name
	}
	fmt.Fprintf(w, "%-10s %s: %s\n", number, p.Title.Name, what)
}

// size returns the number of steps and faces of a card.
func size(r *compile.Result) string {
	return count(r.Steps, "step", "steps") + ", " + count(r.Faces(), "page", "pages") + ", " + count(r.Laminates(), "laminate", "laminates")
}

// recallList prints what a release asks for at the benches, bench by bench, and
// what to print.
func recallList(w io.Writer, r release.Recall, old, now *release.Release, files []string) {
	var before []string
	if old != nil {
		before = old.Copies
	}
	for i, place := range before {
		if !slices.Contains(now.Copies, place) {
			fmt.Fprintf(w, "  bring back  %s, copy %d: all pages, no copy hangs there any more\n", place, i+1)
			continue
		}
		for _, of := range r.Back {
			fmt.Fprintf(w, "  bring back  %s, copy %d: %s of revision %s%s\n", place, i+1, pageNumbers(of.Pages), old.Revision, forVariants(of.Variants))
		}
	}
	for i, place := range now.Copies {
		if !slices.Contains(before, place) {
			fmt.Fprintf(w, "  hang        %s, copy %d: all pages\n", place, i+1)
			continue
		}
		for _, of := range r.Print {
			fmt.Fprintf(w, "  hang        %s, copy %d: %s of revision %s%s\n", place, i+1, pageNumbers(of.Pages), now.Revision, forVariants(of.Variants))
		}
	}
	if old != nil {
		for _, of := range r.Mend {
			fmt.Fprintf(w, "  may stay    %s until printed anew: only the wording changed%s\n", pageNumbers(of.Pages), forVariants(of.Variants))
		}
		for _, p := range r.Moved {
			fmt.Fprintf(w, "  stays       page %d, which is now page %d%s\n", p.Old, p.New, forVariants(p.Variants))
		}
		if len(r.Back)+len(r.Print)+len(r.Mend) == 0 {
			fmt.Fprintf(w, "  no page says anything new: the laminates stay\n")
		}
	}
	for _, f := range files {
		fmt.Fprintf(w, "  print       %s\n", f)
	}
}

// forVariants names the variants of a deck where it has any.
func forVariants(ids []string) string {
	if len(ids) == 0 {
		return ""
	}
	return " [" + strings.Join(ids, ", ") + "]"
}

// total prints the sum over several cards.
func total(w io.Writer, results []*compile.Result) {
	cards, pages, laminates := 0, 0, 0
	for _, r := range results {
		if r.Errors == 0 && r.Fault == nil {
			cards, pages, laminates = cards+1, pages+r.Faces(), laminates+r.Laminates()
		}
	}
	if cards > 1 {
		fmt.Fprintf(w, "%d cards: %s, %s\n", cards, count(pages, "page", "pages"), count(laminates, "laminate", "laminates"))
	}
}

func count(n int, singular, plural string) string {
	if n == 1 {
		return "1 " + singular
	}
	return fmt.Sprintf("%d %s", n, plural)
}

// findings returns the number of errors and warnings as text, "" for none.
func findings(errors, warnings int) string {
	var parts []string
	if errors > 0 {
		parts = append(parts, count(errors, "error", "errors"))
	}
	if warnings > 0 {
		parts = append(parts, count(warnings, "warning", "warnings"))
	}
	return strings.Join(parts, ", ")
}

// progress returns a function that shows progress on a terminal.
func progress(s Streams) func(done, total int) {
	if !s.Terminal {
		return nil
	}
	return func(done, total int) {
		if total < 20 {
			return
		}
		fmt.Fprintf(s.Err, "\r%d of %d cards", done, total)
		if done == total {
			fmt.Fprint(s.Err, "\r\x1b[K")
		}
	}
}
