package compile

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render"
)

// A stand is a workspace that mutants are made of, and its cards.
type stand struct {
	name string
	lib  *library
	old  map[string]compiled // by file
	told map[string]telling  // by file
}

// A compiled is one procedure and what was made of it.
type compiled struct {
	file      string
	procedure *procedure.Procedure
	*compare.Made
}

// as is the side to be compared; digest tells the sides apart. Nothing is laid out.
func (c compiled) as(digest string) compare.Procedure {
	p := c.procedure
	made := *c.Made
	made.Pages = nil
	return compare.Procedure{Number: p.Number.Name, Title: p.Title.Name, File: c.file, Rests: map[string]string{c.file: digest}, Make: func() *compare.Made { return &made }}
}

// A telling is what the cards of a procedure say.
type telling struct {
	pages []map[spot]string // of each card, place by place
	holds string            // all that the cards hold
}

// A spot is a place of a card as a report names it.
type spot struct {
	place string
	step  int
}

func tellingOf(p compiled) (out telling) {
	for _, c := range p.Cards {
		out.pages = append(out.pages, spots(c))
	}
	return out
}

// stands returns the demo and the example of each block type.
func stands(t testing.TB) []*stand {
	load := func(name, dir string) *stand {
		msgs := &diag.List{}
		spaces, err := workspace.Load(dir, []string{"."}, nil, msgs)
		if err != nil {
			t.Fatal(err)
		}
		s := &stand{name: name, lib: read(spaces[0], msgs), old: map[string]compiled{}, told: map[string]telling{}}
		for _, f := range s.lib.procedures {
			p := compiled{f.File.Name, f.procedure, s.lib.side(f)}
			if s.old[p.file] = p; p.Errors > 0 {
				t.Fatalf("%s: %s", name, p.First)
			}
			told := tellingOf(p)
			told.holds = holds(p.Cards)
			s.told[p.file] = told
		}
		return s
	}
	out := []*stand{load("demo", "../../../../procedures")}
	page, err := os.ReadFile("../../../../procedures/README.md")
	if err != nil {
		t.Fatal(err)
	}
	var picture bytes.Buffer
	if err := png.Encode(&picture, image.NewGray(image.Rect(0, 0, 8, 6))); err != nil {
		t.Fatal(err)
	}
	for _, kind := range procedure.Built {
		_, section, _ := strings.Cut(string(page), "\n## "+kind+"\n")
		section, _, _ = strings.Cut(section, "\n## ")
		files := map[string]string{
			"shop.yaml": "benchwright: 1\nshop: Fallow Lane Drive Works\n",
			"unit.yaml": "unit: winch\ntitle: Winch head\n",
			"card.md":   "---\ncard: W-10\ntitle: Set the winch up\nunit: winch\nrevision: A\ndate: 2026-02-03\n---\n\n## Stage\n\n",

			"figures/oil-hole.png": picture.String(),
		}
		for rest := section; ; {
			_, text, found := strings.Cut(rest, "\n```yaml\n# ")
			if !found {
				break
			}
			text, rest, _ = strings.Cut(text, "\n```\n")
			file, facts, _ := strings.Cut(text, "\n")
			files[file] += facts + "\n"
		}
		_, steps, _ := strings.Cut(section, "\n````markdown\n")
		steps, _, _ = strings.Cut(steps, "\n````")
		files["card.md"] += steps + "\n"
		dir := t.TempDir()
		for name, text := range files {
			path := filepath.Join(dir, name)
			if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		out = append(out, load("block "+kind, dir))
	}
	return out
}

// mutants returns all mutants of a workspace.
func (s *stand) mutants(t testing.TB) []*mutant {
	g := newMutator(t)
	msgs := &diag.List{}
	g.look("shop", syntax.ReadTree(s.lib.workspace.Shop, msgs))
	for _, u := range s.lib.units {
		g.look("unit", syntax.ReadTree(u.file, msgs))
	}
	for _, p := range s.lib.procedures {
		g.look("front", p.procedure.Doc.Front)
		blocksOf(p.procedure.Doc, func(b *syntax.Block) { g.look("block-"+b.Type, b.Tree) })
	}
	g.facts("shop", s.lib.workspace.Shop)
	for _, u := range s.lib.units {
		g.facts("unit", u.file)
	}
	for _, p := range s.lib.procedures {
		g.variants = nil
		if u := p.unit(); u != nil {
			g.variants = u.VariantIDs()
		}
		g.procedure(p.File)
	}
	return g.out
}

// mutated makes the cards anew that a mutant can reach: those of its file alone,
// with everything else as it was read.
func (s *stand) mutated(m *mutant) (after []compiled) {
	with := func(f *source.File) *source.File {
		if f != nil && f.Name == m.file {
			return source.NewFile(f.Name, []byte(m.text))
		}
		return f
	}
	w := *s.lib.workspace
	w.Shop = with(w.Shop)
	lib := &library{workspace: &w, shop: s.lib.shop, decimal: s.lib.decimal, units: s.lib.units}
	msgs := &diag.List{}
	if w.Shop != s.lib.workspace.Shop {
		lib.readShop(msgs)
	}
	units := map[*unitFile]*unitFile{}
	if anew := lib.decimal != s.lib.decimal; anew || slices.ContainsFunc(w.Units, func(u *source.File) bool { return u.Name == m.file }) {
		w.Units = slices.Clone(w.Units)
		for i, f := range w.Units {
			w.Units[i] = with(f)
		}
		lib.units = nil
		lib.readUnits(msgs)
		for i, u := range s.lib.units {
			if anew || lib.units[i].file != u.file {
				units[u] = lib.units[i]
			}
		}
	}
	reached := map[string]bool{}
	for _, p := range s.lib.procedures {
		f := *p
		file := with(f.File)
		if u := units[f.nearest]; u != nil {
			f.nearest = u
		}
		if file != f.File || lib.decimal != s.lib.decimal {
			entry := *p.Entry
			entry.File = file
			f.Entry, f.refused, f.inline = &entry, &diag.List{}, nil
			lib.readProcedure(&f, f.refused)
			f.errors = f.refused.Errors()
			f.warned = f.refused.Extract(func(d diag.Diagnostic) bool { return d.Severity() == diag.Warning })
			reached[file.Name] = true
		}
		if w.Shop != s.lib.workspace.Shop || units[f.nearest] != nil || units[p.nearest] != nil {
			reached[file.Name] = m.id == "" || bytes.Contains(file.Text, []byte(m.id))
		}
		lib.procedures = append(lib.procedures, &f)
	}
	lib.cards = &card.Library{Picture: lib.picture}
	for _, f := range lib.procedures {
		lib.cards.Procedures = append(lib.cards.Procedures, f.procedure)
	}
	lib.sharedNumbers(msgs)
	lib.missingCards(msgs)
	for _, f := range lib.procedures {
		if reached[f.File.Name] {
			after = append(after, compiled{f.File.Name, f.procedure, lib.side(f)})
		}
	}
	if len(after) > 0 && after[0].Errors == 0 {
		after[0].Errors = msgs.Errors()
	}
	return after
}

// A verdict is what became of a mutant.
type verdict struct {
	kind   string // one of the kinds
	why    string
	report string // what compare says, a line a change
}

const (
	refused  = "refused"
	reported = "reported"
	silent   = "no change"
	missed   = "missed"
	wrongly  = "wrongly reported"
)

// judge says whether a mutant is seen for what it is.
func (s *stand) judge(m *mutant) (v verdict) {
	after := s.mutated(m)
	for _, p := range after {
		if p.Errors > 0 {
			return verdict{kind: refused, why: p.First}
		}
	}
	var before, anew []compare.Procedure
	for _, p := range after {
		before, anew = append(before, s.old[p.file].as("old")), append(anew, p.as("new"))
	}
	all := compare.Sides(before, anew).Cards
	for _, c := range all {
		for _, x := range c.Changes {
			v.report += fmt.Sprintf("\t%s %s %q %s %s: %q → %q (%s)\n", c.Number, x.Class, x.Title, x.Place, x.What, x.Before, x.After, x.Note)
		}
	}
	var now []telling
	pages := false
	for _, p := range after {
		now = append(now, tellingOf(p))
		pages = pages || !reflect.DeepEqual(now[len(now)-1].pages, s.told[p.file].pages)
	}
	differ := pages
	if !differ {
		differ = slices.ContainsFunc(after, func(p compiled) bool { return s.told[p.file].holds != holds(p.Cards) })
	}
	switch {
	case m.same && len(all) > 0:
		v.kind, v.why = wrongly, "it says the same"
	case m.same:
		v.kind = silent
	case len(all) == 0 && (!differ || !pages && m.loose):
		v.kind = silent
	case len(all) == 0:
		v.kind = missed
	case !differ:
		v.kind, v.why = wrongly, "the cards hold the same"
	default:
		v.kind = reported
		if v.why = s.seen(m, after, now, all); v.why != "" {
			v.kind = missed
		}
	}
	return v
}

// holds is all that cards hold, without where it was read.
func holds(cards []*card.Card) string {
	var b strings.Builder
	for _, c := range cards {
		met := map[thingAt]bool{}
		bare, p := *c, *c.Procedure
		p.Lead, p.Stages = nil, nil
		bare.Unit, bare.Shop, bare.Procedure = nil, nil, &p
		tell(&b, reflect.ValueOf(bare), met)
		u := *c.Unit
		u.Parts, u.Fasteners, u.Packs, u.Gears, u.Limits, u.Root, u.File = nil, nil, nil, nil, nil, nil, nil
		tell(&b, reflect.ValueOf(u), met)
		if c.Shop != nil {
			h := *c.Shop
			h.Tools, h.Wrenches, h.Gauges, h.Stock, h.Root, h.File, h.Name = nil, nil, nil, nil, nil, nil, ""
			tell(&b, reflect.ValueOf(h), met)
		}
	}
	return b.String()
}

// places are the types that say where a thing stands and not what it says, or
// that follow from what is told.
var placeTypes = []reflect.Type{
	reflect.TypeFor[source.Place](), reflect.TypeFor[source.Span](), reflect.TypeFor[*syntax.Node](), reflect.TypeFor[*syntax.Doc](), files,
	reflect.TypeFor[diag.Reported](), reflect.TypeFor[*card.Step](), reflect.TypeFor[*procedure.Procedure](),
}

// A thingAt is a pointer that was followed.
type thingAt struct {
	reflect.Type
	at uintptr
}

// tell is walk, without the places.
func tell(w *strings.Builder, v reflect.Value, met map[thingAt]bool) {
	if v.IsValid() && slices.Contains(placeTypes, v.Type()) && !(v.Type() == placeTypes[5]) {
		if v.Type() != reflect.TypeFor[*card.Step]() && v.Type() != reflect.TypeFor[*procedure.Procedure]() {
			return
		}
	}
	switch v.Kind() {
	case reflect.Invalid:
	case reflect.Pointer:
		switch again := met[thingAt{v.Type(), v.Pointer()}]; {
		case v.IsNil():
			w.WriteString("nil;")
		case v.Type() == numbers:
			fmt.Fprintf(w, "%v;", v)
		case again:
		default:
			met[thingAt{v.Type(), v.Pointer()}] = true
			tell(w, v.Elem(), met)
		}
	case reflect.Interface:
		tell(w, v.Elem(), met)
	case reflect.Struct:
		if v.Type().PkgPath() == "benchwright/cmd/benchwright/internal/bench" && v.Type().Name() == "Stacks" {
			return
		}
		w.WriteByte('{')
		for i := range v.NumField() {
			if n := v.Type().Field(i).Name; n == "trace" || n == "EngravedUnit" {
				continue
			}
			w.WriteString(v.Type().Field(i).Name + "=")
			tell(w, v.Field(i), met)
		}
		w.WriteByte('}')
	case reflect.Slice, reflect.Array:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			fmt.Fprintf(w, "%d bytes", v.Len())
			return
		}
		for i := range v.Len() {
			tell(w, v.Index(i), met)
			w.WriteByte(';')
		}
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(fmt.Sprint(a), fmt.Sprint(b)) })
		for _, k := range keys {
			fmt.Fprintf(w, "%v:", k)
			tell(w, v.MapIndex(k), met)
		}
	case reflect.Func:
	default:
		fmt.Fprintf(w, "%v;", v)
	}
}

// seen says what a report of a mutant lacks, "" for nothing: the class, a step
// whose page differs, the words that it had or has.
func (s *stand) seen(m *mutant, after []compiled, now []telling, all []compare.Card) string {
	var changes []compare.Change
	for _, c := range all {
		changes = append(changes, c.Changes...)
	}
	if class, exact := m.class(); !slices.ContainsFunc(changes, func(x compare.Change) bool { return x.Class.Reaches(class) }) ||
		exact && slices.ContainsFunc(changes, func(x compare.Change) bool { return x.Class != class }) {
		return "not of class " + string(class)
	}
	if m.titles != nil {
		if !slices.ContainsFunc(changes, func(x compare.Change) bool {
			return strings.HasPrefix(x.What, "step ") && slices.Contains(m.titles, x.Title)
		}) {
			return "the step is not named"
		}
		return ""
	}
	for i, p := range after {
		at := slices.IndexFunc(all, func(c compare.Card) bool { return c.File == p.file })
		for j, c := range p.Cards {
			if j >= len(s.told[p.file].pages) {
				continue
			}
			for spot, is := range now[i].pages[j] {
				was := s.told[p.file].pages[j][spot]
				if was == is {
					continue
				}
				var old, new strings.Builder
				if at >= 0 {
					for _, x := range all[at].Changes {
						if spot.is(x, c.VariantID()) {
							fmt.Fprint(&old, " ", x.Before, " ", x.Note)
							fmt.Fprint(&new, " ", x.After, " ", x.Note)
						}
					}
				}
				switch {
				case old.Len()+new.Len() == 0:
					return fmt.Sprintf("%s %s: nothing at %v", p.file, c.VariantID(), spot)
				case spot.step == 0:
				default:
					if w := lost(was, is, old.String()); w != "" {
						return fmt.Sprintf("%s %v: %q is not in what was before", p.file, spot, w)
					}
					if w := lost(is, was, new.String()); w != "" {
						return fmt.Sprintf("%s %v: %q is not in what comes after", p.file, spot, w)
					}
				}
			}
		}
	}
	return ""
}

// is says whether a change stands at a spot of a variant.
func (s spot) is(x compare.Change, variant string) bool {
	return slices.ContainsFunc(x.Reaches, func(r compare.Reach) bool { return r.Variant == variant && s == spot{x.Place, r.New.Step} })
}

// class is the class that a mutant has by what changes.md of the design says,
// and whether it has no change of another.
func (m *mutant) class() (class compare.Class, exact bool) {
	switch {
	case m.key == "prose" && m.how == "another text":
		return compare.Wording, true
	case m.key == "prose" && (m.how == "number" || m.how == "the other way"):
		return compare.Safety, false
	case m.how == "renamed" && m.key == "step":
		return compare.Method, true
	case m.quantity && !slices.Contains(noSafety, m.key):
		return compare.Safety, false
	case m.key == "block-caution" || m.key == "block-hold-point" || strings.HasPrefix(m.key, "block-caution/") || strings.HasPrefix(m.key, "block-hold-point/"):
		if strings.HasPrefix(m.how, "exchanged") {
			return compare.Wording, false
		}
		return compare.Safety, false
	case m.titles != nil, strings.HasPrefix(m.key, "block-tool"), m.how == "one left out":
		return compare.Method, false
	}
	return compare.Wording, false
}

// noSafety are the keys whose value is a number or a word of a list and neither
// set nor accepted.
var noSafety = []string{"shop/paper", "shop/reading-distance", "shop/callout-order", "shop/language", "shop/decimal", "shop/$stock/shims", "shop/$shims/*/thickness", "shop/$shims/*/at-most", "unit/$part/count", "shop/$gauge/resolution", "front/kind", "front/status", "front/people", "front/date", "block-figure/$call-out/at", "block-figure/$call-out/to", "shop/$wrench/due", "shop/$gauge/due"}

// spots returns what the pages of a card say, place by place.
func spots(c *card.Card) map[spot]string {
	out := map[spot]string{}
	d := deck.Build(c, nil)
	out[spot{"head of every page", 0}] = render.Canonical(render.Deck{Running: d.Running})
	for i, s := range d.Sections {
		for _, g := range s.Groups {
			at := spot{"before the steps", 0}
			if i == 0 {
				at.place = "lay-out page"
			}
			for _, st := range c.Steps() {
				if card.Anchor(st.Number) == g.Anchor && i > 0 {
					at = spot{"", st.Number}
				}
			}
			g.Anchor, g.Bookmark = "", ""
			for k, e := range g.Elements { // the steps of a hazard follow from their callouts
				if h, ok := e.Content.(render.Hazards); ok {
					h.Rows = slices.Clone(h.Rows)
					for n := range h.Rows {
						h.Rows[n].Steps = ""
					}
					g.Elements[k].Content = h
				}
			}
			said := render.Canonical(render.Deck{Sections: []render.Section{{Groups: []render.Group{g}}}})
			out[at] += number.ReplaceAllStringFunc(said, func(n string) string { return exactly(n)[0] })
		}
	}
	return out
}

// lost returns the first number of a page that another does not have and a
// report does not tell, "" for none.
func lost(page, other, report string) string {
	count := map[string]int{}
	for _, w := range figures(other) {
		count[w]++
	}
	told := exactly(report)
	for _, w := range figures(page) {
		if count[w]--; count[w] < 0 && !slices.Contains(told, w) && !slices.ContainsFunc([]string{"rows that differ", "more lines", "…"}, func(cut string) bool { return strings.Contains(report, cut) }) {
			return w
		}
	}
	return ""
}

var (
	inQuotes  = regexp.MustCompile(`@?"((?:[^"\\]|\\.)*)"`)
	reference = regexp.MustCompile(`\b[Ss]teps? [0-9]+`)
)

// exactly returns the numbers of a text, each with as few digits as can be.
func exactly(text string) []string {
	out := number.FindAllString(text, -1)
	for i, n := range out {
		if strings.Contains(n, ".") {
			out[i] = strings.TrimRight(strings.TrimRight(n, "0"), ".")
		}
	}
	return out
}

// figures returns the numbers that a canonical text quotes, but those of steps.
func figures(page string) []string {
	var out []string
	for _, m := range inQuotes.FindAllString(page, -1) {
		if text, err := strconv.Unquote(m); err == nil && !strings.Contains(text, "figures/") {
			text = strings.ReplaceAll(text, "\u00a0", " ")
			out = append(out, exactly(reference.ReplaceAllString(text, ""))...)
		}
	}
	return out
}

// stride is the distance of the mutants that every run of the tests makes.
const stride = 499

// TestMutants makes a bounded part of the mutants, or with MUTANTS=file all of
// them, as make mutants does: what became of each is then written to the file, its
// last line the count. MUTANTS_EACH=20 makes every twentieth alone, and MUTANTS_OF,
// a regular expression, those whose key and change it matches.
func TestMutants(t *testing.T) {
	record, of := os.Getenv("MUTANTS"), regexp.MustCompile(os.Getenv("MUTANTS_OF"))
	type job struct {
		*stand
		*mutant
	}
	var jobs []job
	for _, s := range stands(t) {
		for _, m := range s.mutants(t) {
			if of.MatchString(m.key + ", " + m.how) {
				jobs = append(jobs, job{s, m})
			}
		}
	}
	if record == "" || os.Getenv("MUTANTS_EACH") != "" {
		each := stride
		if n, err := strconv.Atoi(os.Getenv("MUTANTS_EACH")); err == nil && n > 0 {
			each = n
		}
		var some []job
		for i := 0; i < len(jobs); i += each {
			some = append(some, jobs[i])
		}
		jobs = some
	}
	verdicts := make([]verdict, len(jobs))
	var next atomic.Int64
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(jobs); i = next.Add(1) - 1 {
				verdicts[i] = jobs[i].judge(jobs[i].mutant)
			}
		})
	}
	wg.Wait()
	count := map[string]int{}
	var log bytes.Buffer
	for i, v := range verdicts {
		count[v.kind]++
		line := fmt.Sprintf("%s: %s: %s: %s", v.kind, jobs[i].name, jobs[i].mutant, v.why)
		if v.kind == missed || v.kind == wrongly {
			t.Error(line)
		}
		fmt.Fprint(&log, line, "\n", v.report)
	}
	sum := fmt.Sprintf("%d mutants: %d refused by check, %d reported by compare, %d no change and not reported, %d missed, %d wrongly reported",
		len(jobs), count[refused], count[reported], count[silent], count[missed], count[wrongly])
	fmt.Fprintln(&log, sum)
	if t.Log(sum); record != "" {
		if err := os.WriteFile(record, log.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}
