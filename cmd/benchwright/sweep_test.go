package main

import (
	"context"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/workspace"
)

// The sweep takes each block's example and puts, in turn, values in the place
// of each of its values that no writer means. A slip may cost a few messages; it
// may not stop the program, hold it up, or put a number on a face that nobody
// can read.

// sweepAll is set by `make fuzz`: every value at every place. `make test` puts
// a few at each, others at the next.
var sweepAll = os.Getenv("SWEEP") != ""

// A scalar is a value of the example and where it stands.
type scalar struct {
	file string
	span source.Span
	text string
}

// An example is a block's workspace, held in memory.
type example struct {
	root    string
	files   map[string]string
	scalars []scalar
}

func readExample(t testing.TB, kind, section string) *example {
	t.Helper()
	e := &example{root: t.TempDir(), files: map[string]string{}}
	writeExample(t, e.root, kind, section)
	for _, name := range []string{"shop.yaml", "unit.yaml", "card.md"} {
		text, err := os.ReadFile(filepath.Join(e.root, name))
		if err != nil {
			t.Fatal(err)
		}
		e.files[name] = string(text)
		var msgs diag.List
		file := source.NewFile(name, text)
		if name != "card.md" {
			e.add(name, syntax.ReadTree(file, &msgs).Root)
			continue
		}
		doc := syntax.ReadDoc(file, &msgs)
		e.add(name, doc.Front.Root)
		for _, st := range doc.Stages {
			for _, s := range st.Steps {
				for _, c := range s.Content {
					if b, ok := c.(*syntax.Block); ok {
						e.add(name, b.Tree.Root)
					}
				}
			}
		}
	}
	return e
}

func (e *example) add(file string, n *syntax.Node) {
	if n.Kind == syntax.Scalar {
		e.scalars = append(e.scalars, scalar{file, n.Span, n.Text})
	}
	for _, f := range n.Fields {
		e.add(file, f.Value)
	}
	for _, i := range n.Items {
		e.add(file, i)
	}
}

// A change puts a value, as YAML, in the place of a scalar.
type swap struct {
	at *scalar
	by string
}

// with returns the files after the changes.
func (e *example) with(changes ...swap) map[string]string {
	files := maps.Clone(e.files)
	slices.SortFunc(changes, func(a, b swap) int { return b.at.span.Start - a.at.span.Start })
	for _, c := range changes {
		text := files[c.at.file]
		files[c.at.file] = text[:c.at.span.Start] + c.by + text[c.at.span.End:]
	}
	return files
}

// hostile are values that stand for no quantity, name or sentence of ours, or
// for one at the edge of what may be written.
var hostile = []string{
	"0", "-7", "1000000000", "1e20", "0.000001", "1e999", `""`, "NaN", `"5"`, "[1, b]", "{a: 1}", "null", "yes", "20 °C", "3 kg", "max 0 mm",
	`"a\u202eb"`, "🔧", "'🔧 to 5 mm'", "5 / 3", "-0", "~", "a: b", "'a`b*c|d'", "2026-02-30", "0.1 to 0.2 to 0.3 mm",
	strings.Repeat("9", 10_000), strings.Repeat("very ", 300) + "long", strings.Repeat("W", 900),
	strings.Repeat("W", 75), strings.Repeat("W", 390), strings.Repeat("very ", 70) + "long", "Wait [there](#nowhere) **now**",
}

// numbers are put before the unit of a value that has one.
var numbers = []string{
	"0", "-7", "1000000000", "100000000000000000000", "0.000001", "0.000001 to 1000000", "-200 to 200", "-1000000 to 1000000", "7/13", "1/3 to 2/3",
	"0.001", "0.01 to 3.9", "13", "1000", "max 0", "max 0.000001", "at least 1000000", "3 ±0.000001", "3 ±100", "0 to 0", "123456789.123456789", "19.05 to 19.0500001", "0.3333333333333333333",
}

var unitOfText = regexp.MustCompile(`^(?:max |at least |±|.* to |.* ±)?[−-]?[0-9.,/]+(?:e-?[0-9]+)?( ?[^0-9]*)$`)

// values returns what is put in the place of a scalar.
func values(text string) []string {
	out := hostile
	if m := unitOfText.FindStringSubmatch(text); m != nil {
		for _, n := range numbers {
			out = append(out[:len(out):len(out)], n+m[1])
		}
	}
	return out
}

// An outcome is what became of a workspace.
type outcome struct {
	list   []diag.Diagnostic
	faces  string         // the text of all faces of a clean build, a line a piece
	panels map[string]int // of a clean build: how many each step has
	fault  string
}

// glyphs finds the texts of a display list in print.
var glyphs = regexp.MustCompile(`Text:([^}]*)}`)

// hangs is a guard: no example takes a hundredth of it.
const hangs = 60 * time.Second

// build builds a workspace of files in memory.
func (e *example) build(files map[string]string) (out outcome) {
	done := make(chan outcome, 1)
	go func() {
		var o outcome
		defer func() {
			if r := recover(); r != nil {
				o.fault = fmt.Sprintf("panic: %v\n%s", r, debug.Stack())
			}
			done <- o
		}()
		unit := source.NewFile("unit.yaml", []byte(files["unit.yaml"]))
		w := &workspace.Workspace{Root: e.root, Shop: source.NewFile("shop.yaml", []byte(files["shop.yaml"])), Units: []*source.File{unit},
			Procedures: []*workspace.Entry{{File: source.NewFile("card.md", []byte(files["card.md"])), Unit: unit, Named: true}}}
		msgs := &diag.List{}
		var text strings.Builder
		o.panels = map[string]int{}
		emit := func(m *compile.Made) error {
			for _, s := range m.Sheets {
				for _, g := range s.Groups {
					for _, e := range s.Marks {
						if e.From >= g.From && e.To <= g.To && e.Class == technical && !slices.Contains(around, e.Kind) {
							o.panels[g.Name]++
						}
					}
				}
				for _, g := range glyphs.FindAllStringSubmatch(fmt.Sprintf("%+v", s.Ops), -1) {
					text.WriteString(g[1] + "\n")
				}
			}
			return nil
		}
		for _, r := range compile.Run(context.Background(), w, compile.Options{Workers: 1, Emit: emit}, msgs) {
			if r.Fault != nil {
				o.fault = r.Fault.Error()
			}
		}
		o.list, o.faces = msgs.Sorted(), text.String()
	}()
	select {
	case out = <-done:
	case <-time.After(hangs):
		out.fault = "it hangs"
	}
	return out
}

// unreadable is text that no face shows: a fraction of inches has a power of
// two below its line, and no setting has seven places.
var unreadable = regexp.MustCompile(`\bNaN\b|<nil>|%!|\d/\d|\d\.\d{7}|\bInf\b|e[+-]\d\d`)

// technical is what says a number or what to do, and no sentence about it.
const technical = 0

// around are the kinds of element that a step has around the panels of its
// blocks.
var around = []string{"step", "stage", "callout", "hazards", "tools"}

// lost returns the steps of a build without a message that have no panel where
// the example has one. Another value may call for another form, a table for a
// setting or no table at all; a block whose keys are all there has its say.
func (o outcome) lost(example outcome) string {
	if len(o.list) > 0 {
		return ""
	}
	var out []string
	for _, step := range slices.Sorted(maps.Keys(example.panels)) {
		if strings.HasPrefix(step, "step ") && o.panels[step] == 0 {
			out = append(out, step)
		}
	}
	return strings.Join(out, ", ")
}

// faulty returns what is wrong with an outcome, "" for nothing. Written is what
// was put into the source: a face may say it as it stands.
func (o outcome) faulty(most int, written ...string) string {
	if o.fault != "" {
		return o.fault
	}
	if len(o.list) > most {
		var b strings.Builder
		for _, d := range o.list {
			fmt.Fprintf(&b, "\n  %s [%s] %q: %s", d.At.File.Name, d.Slug, cut(d.At.Text()), cut(d.Message))
		}
		return fmt.Sprintf("%d messages:%s", len(o.list), b.String())
	}
	for _, d := range o.list {
		if d.Slug == "internal-fault" || strings.Contains(d.Message+d.Fix, "%!") || strings.Contains(d.Message, "<nil>") {
			return d.Message + " / " + d.Fix
		}
		if len(d.Message) > 1000 || len(d.Fix) > 1000 {
			return fmt.Sprintf("a message of %d and %d bytes: %s", len(d.Message), len(d.Fix), d.Message[:min(200, len(d.Message))])
		}
	}
	for line := range strings.Lines(o.faces) {
		if m := unreadable.FindString(line); m != "" && !slices.ContainsFunc(written, func(w string) bool { return strings.Contains(w, m) }) {
			return fmt.Sprintf("a face says %q", line)
		}
	}
	return ""
}

func cut(s string) string {
	if len(s) > 100 {
		return s[:100] + "…"
	}
	return s
}

// mostMessages is how many messages one value may cost.
const mostMessages = 3

func TestSweep(t *testing.T) {
	sections := blocksPage(t)
	for k, kind := range procedure.Built {
		t.Run(kind, func(t *testing.T) {
			t.Parallel()
			e := readExample(t, kind, sections[kind])
			clean := e.build(e.files)
			if len(clean.list) > 0 || clean.fault != "" || clean.faces == "" {
				t.Fatalf("the example is not clean: %v %s", clean.list, clean.fault)
			}
			n := 0
			for i := range e.scalars {
				s := &e.scalars[i]
				for j, v := range values(s.text) {
					if !sweepAll && (i+k+j)%17 != 0 {
						continue
					}
					n++
					o := e.build(e.with(swap{s, v}))
					if why := o.faulty(mostMessages, v); why != "" {
						t.Errorf("%s: `%s` for `%s`: %s", s.file, cut(v), s.text, why)
					}
					if steps := o.lost(clean); steps != "" {
						t.Errorf("%s: `%s` for `%s`: nothing is said, and nothing stands in %s", s.file, cut(v), s.text, steps)
					}
				}
			}
			t.Logf("%d values at %d places", n, len(e.scalars))
		})
	}
}

// FuzzSweep puts two values at once.
func FuzzSweep(f *testing.F) {
	sections := blocksPage(f)
	var all []*example
	for k, kind := range procedure.Built {
		all = append(all, readExample(f, kind, sections[kind]))
		f.Add(uint8(k), uint16(7), uint16(11), uint16(13), uint16(17))
	}
	f.Fuzz(func(t *testing.T, k uint8, i, v, j, w uint16) {
		e := all[int(k)%len(all)]
		a, b := &e.scalars[int(i)%len(e.scalars)], &e.scalars[int(j)%len(e.scalars)]
		if a == b {
			return
		}
		first, second := values(a.text), values(b.text)
		x, y := first[int(v)%len(first)], second[int(w)%len(second)]
		if why := e.build(e.with(swap{a, x}, swap{b, y})).faulty(2*mostMessages, x, y); why != "" {
			t.Errorf("%s: `%s` for `%s`, %s: `%s` for `%s`: %s", a.file, cut(x), a.text, b.file, cut(y), b.text, why)
		}
	})
}

// FuzzBlock puts any text into the blocks of an example, and into its facts.
func FuzzBlock(f *testing.F) {
	sections := blocksPage(f)
	var all []*example
	for k, kind := range procedure.Built {
		e := readExample(f, kind, sections[kind])
		all = append(all, e)
		for _, b := range fences(e.files["card.md"], kind) {
			f.Add(uint8(k), b, "")
		}
	}
	f.Add(uint8(3), "limits: lash\ngauge: dial-indicator\nmeasured: normal-to-flank\nat: 30 mm\nturned: pinion\nholds: {measured: tangent, at: 40 mm, turned: gear}\n", "")
	f.Add(uint8(5), "pack: cap-pack\nstock: steel-shims\nfrom: {old-mark: old, new-mark: new, marks: -5 to 5, per-mark: 0.01 mm, old-pack: play-read}\nwithin: 0.04 mm\n", "")
	f.Add(uint8(2), "of: Bore\nlimits: 52 H7\ngauge: bore-gauge\n", "parts:\n  race: {name: Race}\n")
	f.Fuzz(func(t *testing.T, k uint8, block, facts string) {
		kind := procedure.Built[int(k)%len(all)]
		e := all[int(k)%len(all)]
		files := maps.Clone(e.files)
		step, _, _ := strings.Cut(e.files["card.md"], "```"+kind+"\n")
		files["card.md"] = step + "```" + kind + "\n" + block + "\n```\n"
		files["unit.yaml"] += facts
		if why := e.build(files).faulty(1000, block, facts); why != "" {
			t.Error(why)
		}
	})
}
