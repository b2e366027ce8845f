package compile

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/schema"
)

// A mutant is a workspace in which one thing was changed: a number, a unit, a
// side, a word of a list, a key that is gone. What can be changed, the schemas
// say, so that a new block type is mutated without new code. What says the same
// in other words is a mutant too, which must not be reported.
type mutant struct {
	file     string   // that was changed, below the workspace
	text     string   // of the whole file
	unit     string   // text of the unit.yaml that goes with it; "" where it is as it was
	at       int      // offset of what changed
	key      string   // as keys_test names it, "unit/$limit/band"; "step", "prose"
	how      string   // "number", "left out", "step removed"
	from, to string   // what stood there, and stands
	loose    bool     // it may change nothing that anybody reads: an order, a thing said twice
	id       string   // of the thing of shop.yaml or unit.yaml that changed; "" where it may reach every card
	same     bool     // it says the same in other words
	quantity bool     // it is a number, a unit, a side or a word of a list, of a key
	titles   []string // the steps that must be named, where steps went or moved
}

func (m *mutant) String() string {
	return fmt.Sprintf("%s, %s, %s: `%s` → `%s`", place(m), m.key, m.how, short(m.from), short(m.to))
}

func place(m *mutant) string {
	return fmt.Sprintf("%s:%d", m.file, 1+strings.Count(m.text[:min(m.at, len(m.text))], "\n"))
}

func short(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}

// A mutator makes the mutants of one file.
type mutator struct {
	keys      map[string]*key
	names     map[*key]string
	elsewhere map[*key][]string // values that a key has in the workspace
	schemas   map[string]*keyReader
	variants  []string
	out       []*mutant

	file *source.File
	id   string
}

// put adds a mutant in which the bytes from:to are others.
func (g *mutator) put(key, how string, from, to int, by string) *mutant {
	text := string(g.file.Text)
	m := &mutant{file: g.file.Name, text: text[:from] + by + text[to:], at: from, key: key, how: how, from: text[from:to], to: by, id: g.id}
	m.loose = strings.Contains(how, "order") || strings.Contains(how, "exchanged") || how == "said twice"
	if m.text != text {
		g.out = append(g.out, m)
	}
	return m
}

// again is put for what says the same.
func (g *mutator) again(key, how string, from, to int, by string) {
	g.put(key, how, from, to, by).same = true
}

// tree mutates what stands in a file of keys, a front matter or a block.
func (g *mutator) tree(kind string, t *syntax.Tree) {
	r := g.schemas[kind]
	r.use = func(k *key, f syntax.Field, within *syntax.Node) {
		name := g.names[k]
		g.id = thing(t.Root, f.KeySpan.Start)
		if !k.required {
			from, to := g.span(f, within)
			// How a scale's unit is engraved is another spelling of it.
			g.put(name, "left out", from, to, "").same = strings.HasSuffix(name, "/marked")
		}
		g.value(k, name, r.resolved(k.schema), f.Value)
	}
	r.read("", r.root, t.Root)
	g.id = ""
	if n := t.Root; len(n.Fields) > 1 {
		a, b := n.Fields[0], n.Fields[1]
		one, other := g.file.At(a.KeySpan.Start, a.Value.Span.End).Text(), g.file.At(b.KeySpan.Start, b.Value.Span.End).Text()
		between := g.file.At(a.Value.Span.End, b.KeySpan.Start).Text()
		g.again(kind, "keys in another order", a.KeySpan.Start, b.Value.Span.End, other+between+one)
	}
	text, at := g.file.Text, t.Root.Span
	var b strings.Builder
	from := at.Start
	for _, v := range scalars(t.Root) {
		if !v.Quoted && !strings.Contains(v.Text, `\\`) && g.file.At(v.Span.Start, v.Span.End).Text() == v.Text {
			b.WriteString(string(text[from:v.Span.Start]) + `"` + v.Text + `"`)
			from = v.Span.End
		}
	}
	g.again(kind, "in quotes", at.Start, at.End, b.String()+string(text[from:at.End]))
}

// scalars returns the values of a tree in the order of the file.
func scalars(n *syntax.Node) []*syntax.Node {
	var out []*syntax.Node
	for _, f := range n.Fields {
		out = append(out, scalars(f.Value)...)
	}
	for _, i := range n.Items {
		out = append(out, scalars(i)...)
	}
	if n.Kind == syntax.Scalar {
		out = append(out, n)
	}
	return out
}

// thing is the id of the tool, part or limit that a place of shop.yaml or
// unit.yaml belongs to: the cards that use it name it. What is used without its
// name, a wrench that is chosen, a gear behind a pack, has none.
func thing(root *syntax.Node, at int) string {
	for _, kind := range []string{"tools", "gauges", "stock", "parts", "fasteners", "limits"} {
		for _, f := range fieldsOf(root.Get(kind)) {
			if f.KeySpan.Start < at && at < f.Value.Span.End {
				return f.Key
			}
		}
	}
	return ""
}

func fieldsOf(n *syntax.Node) []syntax.Field {
	if n == nil {
		return nil
	}
	return n.Fields
}

// resolved follows a schema's reference.
func (r *keyReader) resolved(s map[string]any) map[string]any {
	ref, ok := s["$ref"].(string)
	if !ok {
		return s
	}
	return r.root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
}

// span is what must go when a field is left out: its line or lines, or in braces
// its comma too.
func (g *mutator) span(f syntax.Field, within *syntax.Node) (from, to int) {
	return g.extent(f.KeySpan.Start, f.Value.Span.End, within)
}

func (g *mutator) extent(from, to int, within *syntax.Node) (int, int) {
	text := string(g.file.Text)
	if strings.IndexByte("{[", text[within.Span.Start]) >= 0 {
		if rest := strings.TrimLeft(text[to:], " \n"); strings.HasPrefix(rest, ",") {
			to = len(text) - len(strings.TrimLeft(rest[1:], " \n"))
		} else if head := strings.TrimRight(text[:from], " \n"); strings.HasSuffix(head, ",") {
			from = len(head) - 1
		}
		return from, to
	}
	from = strings.LastIndexByte(text[:from], '\n') + 1
	if n := strings.IndexByte(text[to:], '\n'); n >= 0 {
		to += n + 1
	}
	return from, to
}

// value mutates a value and, of a list or a mapping of things, each of them.
func (g *mutator) value(k *key, name string, s map[string]any, v *syntax.Node) {
	switch v.Kind {
	case syntax.Scalar:
		g.scalar(k, name, s, v)
	case syntax.Sequence:
		for i, item := range v.Items {
			if len(v.Items) > 1 {
				from, to := g.extent(item.Span.Start, item.Span.End, v)
				g.put(name, "one left out", from, to, "")
			}
			if i+1 < len(v.Items) {
				g.swap(name, "two in the other order", item.Span, v.Items[i+1].Span)
			}
			if item.Kind == syntax.Scalar {
				g.scalar(k, name, s, item)
			}
		}
	case syntax.Mapping:
		if _, things := s["additionalProperties"].(map[string]any); !things {
			return
		}
		for _, f := range v.Fields {
			from, to := g.span(f, v)
			g.put(name, "one left out", from, to, "")
			if f.Value.Kind != syntax.Mapping {
				g.value(k, name, s, f.Value)
			}
		}
	}
}

// swap exchanges two places.
func (g *mutator) swap(key, how string, a, b source.Span) *mutant {
	one, other := g.file.At(a.Start, a.End).Text(), g.file.At(b.Start, b.End).Text()
	return g.put(key, how, a.Start, b.End, other+g.file.At(a.End, b.Start).Text()+one)
}

// number finds the numbers of a text.
var number = regexp.MustCompile(`[0-9]+(?:[.,][0-9]+)?`)

// scalar mutates one value.
func (g *mutator) scalar(k *key, name string, s map[string]any, v *syntax.Node) {
	_, form := s["x-form"]
	_, list := s["enum"]
	put := func(how, by string) {
		g.put(name, how, v.Span.Start, v.Span.End, quoted(by)).quantity = list || form || k.kind() != ""
	}
	again := func(how, by string) { g.again(name, how, v.Span.Start, v.Span.End, quoted(by)) }
	if words, ok := s["enum"].([]any); ok {
		for _, w := range words {
			if w := fmt.Sprint(w); w != v.Text {
				put("another word", w)
			}
		}
		return
	}
	for _, by := range otherNumbers(v.Text) {
		put("number", by)
	}
	if band, problem := quantity.ParseBand(v.Text, quantity.Point); problem == nil && band.Unit.Dimension != quantity.None {
		for _, by := range otherUnits(v.Text, band) {
			put("unit of measure", by)
		}
		for _, by := range otherSides(band) {
			put("side", by)
		}
		for _, by := range respelled(v.Text, band) {
			again("respelled", by)
		}
		return
	}
	for _, by := range turned(v.Text) {
		put("the other way", by)
	}
	if others := g.elsewhere[k]; len(others) > 1 && !strings.Contains(v.Text, " ") {
		i := slices.Index(others, v.Text)
		put("another", others[(i+1)%len(others)])
	}
	if k.kind() == "" && strings.Contains(v.Text, " ") {
		put("another text", v.Text+" now")
	}
}

// quoted is a text as YAML, in quotes where it needs them.
func quoted(text string) string {
	plain := regexp.MustCompile(`^[\pL0-9][^:#\[\]{},"'&*!|>@` + "`" + `]*$`)
	if plain.MatchString(text) && strings.TrimSpace(text) == text {
		return text
	}
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", " ").Replace(text) + `"`
}

// otherNumbers returns the text with one of its numbers another: its last digit by
// one, its first digit by one, and its decimal point one place on.
func otherNumbers(text string) []string {
	var out []string
	for _, at := range number.FindAllStringIndex(text, -1) {
		n := text[at[0]:at[1]]
		others := []string{step(n, len(n)-1), step(n, strings.IndexAny(n, "123456789"))}
		if whole, part, ok := strings.Cut(n, "."); ok && len(part) > 1 {
			others = append(others, whole+part[:1]+"."+part[1:])
		}
		for i, o := range others {
			if o != n && !slices.Contains(others[:i], o) {
				out = append(out, text[:at[0]]+o+text[at[1]:])
			}
		}
	}
	return out
}

// step returns a number with a digit one more, 8 for 9.
func step(n string, at int) string {
	if at < 0 {
		return n
	}
	d := n[at] + 1
	if d > '9' {
		d = '8'
	}
	return n[:at] + string(d) + n[at+1:]
}

// otherUnits returns the same numbers with other units of their kind.
func otherUnits(text string, b quantity.Band) []string {
	i := len(strings.TrimRight(text, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz·-°µ%/ .\"″"))
	if number.FindString(text) == "" || i == 0 || i == len(text) {
		return nil
	}
	var out []string
	for _, u := range quantity.Units(b.Unit.Dimension) {
		if u.Symbol != b.Unit.Symbol && len(out) < 3 {
			out = append(out, text[:i]+" "+u.Symbol)
		}
	}
	return out
}

// otherSides returns the band with another side open or closed.
func otherSides(b quantity.Band) []string {
	say := func(form string, n int) string { return form + b.Unit.After(b.Numbers[n].Text) }
	switch b.Form {
	case quantity.Range:
		if len(b.Numbers) == 2 {
			return []string{say("max ", 1), say("at least ", 0)}
		}
	case quantity.PlusMinus:
		if len(b.Numbers) == 2 {
			tol := strings.TrimLeft(b.Numbers[1].Text, "±")
			return []string{b.Unit.After(b.Numbers[0].Text + " +" + tol + "/-0"), b.Unit.After(b.Numbers[0].Text + " +0/-" + tol)}
		}
	case quantity.Max:
		return []string{say("at least ", 0)}
	case quantity.Min:
		return []string{say("max ", 0)}
	}
	return nil
}

// respelled returns the same band in other words and units.
func respelled(text string, b quantity.Band) []string {
	var out []string
	for _, pair := range [][2]string{{" to ", ".."}, {" to ", " – "}, {"N·m", "Nm"}, {"µm", "um"}, {"°C", "degC"}, {" ±", " +/-"}, {" mm", "  mm"}} {
		if strings.Contains(text, pair[0]) {
			out = append(out, strings.Replace(text, pair[0], pair[1], 1))
		}
	}
	if b.Form == quantity.PlusMinus && b.Low != nil && b.High != nil {
		out = append(out, quantity.Decimal(b.Low, quantity.Point)+" to "+b.Unit.After(quantity.Decimal(b.High, quantity.Point)))
	}
	if b.Form == quantity.Range || b.Form == quantity.Max || b.Form == quantity.Min {
		for _, u := range quantity.Units(b.Unit.Dimension) {
			in := b.In(u)
			if u.Symbol == b.Unit.Symbol {
				continue
			}
			var low, high string
			if in.Low != nil {
				low = quantity.Decimal(in.Low, quantity.Point)
			}
			if in.High != nil {
				high = quantity.Decimal(in.High, quantity.Point)
			}
			if len(low) > 9 || len(high) > 9 || strings.Contains(low+high, "/") {
				continue // no exact decimal
			}
			switch {
			case in.Low == nil:
				out = append(out, "max "+u.After(high))
			case in.High == nil:
				out = append(out, "at least "+u.After(low))
			default:
				out = append(out, low+" to "+u.After(high))
			}
			break
		}
	}
	// What is not read as the same band is no other spelling of it.
	return slices.DeleteFunc(out, func(by string) bool {
		o, problem := quantity.ParseBand(by, quantity.Point)
		if problem != nil {
			return true
		}
		in := o.In(b.Unit)
		return fmt.Sprint(in.Low, in.High) != fmt.Sprint(b.Low, b.High)
	})
}

// opposites are words that turn a sentence round.
var opposites = [][2]string{
	{"clockwise", "counterclockwise"}, {"left", "right"}, {"up", "down"}, {"above", "below"}, {"before", "after"}, {"inward", "outward"},
	{"tighten", "loosen"}, {"thicker", "thinner"}, {"longer", "shorter"}, {"higher", "lower"}, {"highest", "lowest"}, {"dry", "oiled"}, {"push", "pull"},
	{"on", "off"}, {"in", "out"}, {"new", "used"},
}

var word = regexp.MustCompile(`[A-Za-z-]+`)

// turned returns a text with one of its words turned round, or a "not" taken
// away.
func turned(text string) []string {
	var out []string
	for _, at := range word.FindAllStringIndex(text, -1) {
		w := text[at[0]:at[1]]
		put := func(by string) {
			if w[0] < 'a' && by != "" {
				by = strings.ToUpper(by[:1]) + by[1:]
			}
			out = append(out, text[:at[0]]+by+text[at[1]:])
		}
		for _, o := range opposites {
			switch strings.ToLower(w) {
			case o[0]:
				put(o[1])
			case o[1]:
				put(o[0])
			}
		}
		if w == "not" || w == "never" {
			put("always")
		}
	}
	return out
}

// newMutator knows the schemas and the values of a workspace.
func newMutator(t testing.TB) *mutator {
	g := &mutator{keys: map[string]*key{}, names: map[*key]string{}, elsewhere: map[*key][]string{}, schemas: map[string]*keyReader{}}
	for _, name := range schema.Names() {
		g.schemas[name] = newKeyReader(t, name, g.keys)
	}
	for name, k := range g.keys {
		g.names[k] = name
	}
	return g
}

// look notes the values that the keys of a file have.
func (g *mutator) look(kind string, t *syntax.Tree) {
	r := g.schemas[kind]
	r.use = func(k *key, f syntax.Field, _ *syntax.Node) {
		for _, n := range append([]*syntax.Node{f.Value}, f.Value.Items...) {
			if n.Kind == syntax.Scalar && !slices.Contains(g.elsewhere[k], n.Text) {
				g.elsewhere[k] = append(g.elsewhere[k], n.Text)
			}
		}
	}
	r.read("", r.root, t.Root)
}

// blocksOf calls do with each block of a procedure.
func blocksOf(doc *syntax.Doc, do func(*syntax.Block)) {
	each := func(content []syntax.Content) {
		for _, c := range content {
			if b, ok := c.(*syntax.Block); ok && b.Tree != nil {
				do(b)
			}
		}
	}
	for _, st := range doc.Stages {
		each(st.Content)
		for _, s := range st.Steps {
			each(s.Content)
		}
	}
}

// facts mutates a shop.yaml or unit.yaml.
func (g *mutator) facts(kind string, f *source.File) {
	g.file = f
	g.tree(kind, syntax.ReadTree(f, &diag.List{}))
	g.layout(kind)
}

// layout changes how a file looks, not what it says.
func (g *mutator) layout(kind string) {
	text := string(g.file.Text)
	if !bytes.Contains(g.file.Text, []byte("\r")) {
		g.again(kind, "line ends", 0, len(text), strings.ReplaceAll(text, "\n", "\r\n"))
	}
	if kind != "procedure" {
		g.again(kind, "a comment", 0, 0, "# Checked by the lead, 12 mm\n")
	}
}
