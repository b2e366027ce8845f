package procedure

import (
	"strings"
	"unicode"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Reader turns Docs into Procedures.
type Reader struct {
	Mark quantity.Mark // the shop's decimal mark
	// Refused says that a tree broke its schema, which has been reported.
	Refused func(*syntax.Tree) bool
	Msgs    *diag.List
}

// Read returns what the doc says.
func (r *Reader) Read(doc *syntax.Doc) *Procedure {
	p := &Procedure{File: doc.File, Doc: doc}
	if doc.Front != nil {
		r.front(p, doc.Front.Root)
	}
	p.Lead = r.outside(doc, doc.Lead)
	for _, st := range doc.Stages {
		stage := &Stage{Heading: st.Heading, Items: r.outside(doc, st.Content)}
		for _, s := range st.Steps {
			stage.Steps = append(stage.Steps, &Step{Heading: s.Heading, Items: r.items(doc.File, s.Content)})
		}
		p.Stages = append(p.Stages, stage)
	}
	return p
}

func (r *Reader) front(p *Procedure, n *syntax.Node) {
	p.Number, p.Title = named(n.Get("card")), named(n.Get("title"))
	if p.Number.Name != "" {
		unit.Reader{Msgs: r.Msgs}.CardNumber(p.Number.Name, p.Number.At)
	}
	p.Revision, p.Date, p.Kind = text(n.Get("revision")), text(n.Get("date")), text(n.Get("kind"))
	if u := n.Get("unit"); u != nil && u.Kind == syntax.Mapping {
		p.InlineUnit, p.Unit = u, named(u.Get("unit"))
	} else {
		p.Unit = named(u)
	}
	if s := n.Get("shop"); s != nil && s.Kind == syntax.Mapping {
		p.InlineShop = s
	}
	p.Variants, p.After, p.Reverses = list(n.Get("variants")), list(n.Get("after")), named(n.Get("reverses"))
	p.Time, p.People, p.Skill = text(n.Get("time")), text(n.Get("people")), text(n.Get("skill"))
	p.Call, p.Source, p.Draft = text(n.Get("call")), text(n.Get("source")), text(n.Get("status")) == "draft"
	p.Conditions, p.Consumables = names(n.Get("conditions")), names(n.Get("consumables"))
	p.Parts = list(n.Get("parts"))
	for _, s := range items(n.Get("stop-points")) {
		if s.Kind == syntax.Scalar {
			p.StopPoints = append(p.StopPoints, StopPoint{After: named(s)})
		} else {
			p.StopPoints = append(p.StopPoints, StopPoint{named(s.Get("after")), text(s.Get("say"))})
		}
	}
	for _, a := range items(n.Get("accept")) {
		p.Accept = append(p.Accept, Accept{named(a.Get("slug")), named(a.Get("at")), text(a.Get("because"))})
	}
}

func (r *Reader) items(f *source.File, content []syntax.Content) []Item {
	var out []Item
	for _, c := range content {
		span := c.Place()
		base := Base{At: f.At(span.Start, span.End)}
		block, ok := c.(*syntax.Block)
		if !ok {
			out = append(out, &Prose{base, c})
			continue
		}
		base.At = f.At(block.TypeSpan.Start, block.TypeSpan.End)
		out = append(out, r.block(base, block))
	}
	return out
}

// outside reads what stands before a step: prose alone. A block there belongs to
// no step, so no rule would see it and no face would number it. Where a heading
// was refused, the block may well have had its step.
func (r *Reader) outside(doc *syntax.Doc, content []syntax.Content) []Item {
	said := doc.HeadingRefused
	var out []Item
	for _, c := range content {
		block, ok := c.(*syntax.Block)
		if !ok {
			out = append(out, r.items(doc.File, []syntax.Content{c})...)
			continue
		}
		at := doc.File.At(block.TypeSpan.Start, block.TypeSpan.End)
		if !said {
			r.Msgs.Report("block-place", at, "put it below the `### ` heading of its step", "a typed block stands before the first step of its stage")
			said = true
		}
		out = append(out, &Invalid{Base{At: at}, block.Type})
	}
	return out
}

// unmarked refuses Markdown in a block's texts: it would be printed as it
// stands.
func (r *Reader) unmarked(n *syntax.Node) {
	for _, f := range n.Fields {
		r.unmarked(f.Value)
	}
	for _, i := range n.Items {
		r.unmarked(i)
	}
	for _, mark := range []string{"](", "**"} {
		if at := strings.Index(n.Text, mark); at >= 0 {
			span := n.Sub(at, at+len(mark))
			r.Msgs.Report("text-marked", n.File.At(span.Start, span.End), "take the marks out; to send the reader to a step, write `{go: step-id, back: yes}` in `if-low:` or `if-high:`",
				"links and emphasis work in the step's own text; in a block they are printed as they stand")
			return
		}
	}
}

func (r *Reader) tool(b Base) Item {
	n := b.Node
	return &Tool{b, names(n.Get("use")), names(n.Get("assemble")), named(n.Get("as")),
		named(n.Get("take-apart")), named(n.Get("hold-still")), named(n.Get("with"))}
}

func (r *Reader) measurement(b Base) Item {
	m := r.reading(b, quantity.None, "gauge")
	return &m
}

// reading reads the keys that every reading has: of, the limits of a kind, the
// gauge under its key, what is recorded and what follows.
func (r *Reader) reading(b Base, kind quantity.Dimension, gauge string) Measurement {
	n := b.Node
	m := Measurement{Base: b, Of: text(n.Get("of")), Limits: r.limits(b, kind), Gauge: named(n.Get(gauge)),
		Record: texts(n.Get("record")), Use: text(n.Get("use")), IfLow: branch(n.Get("if-low")), IfHigh: branch(n.Get("if-high")),
		AsFound: yes(n.Get("as-found"))}
	if s := n.Get("spread"); s != nil {
		m.Spread = r.band(s, quantity.None)
		m.Limits.Bad = m.Limits.Bad || m.Spread == nil
	}
	if tilt := n.Get("tilt"); tilt != nil {
		m.Tilt = r.values().Value(tilt, quantity.Angle)
		m.Limits.Bad = m.Limits.Bad || m.Tilt == nil
	}
	return m
}

func (r *Reader) caution(b Base) Item {
	n := b.Node
	return &Caution{b, named(n.Get("level")), text(n.Get("hazard")), text(n.Get("result")), text(n.Get("avoid")),
		names(n.Get("symbol")), names(n.Get("covers"))}
}

func (r *Reader) witness(b Base) Item {
	n := b.Node
	return &Witness{b, text(n.Get("who")), text(n.Get("sees")), text(n.Get("before"))}
}

// limits reads the keys limits, source, also, because and expect.
func (r *Reader) limits(b Base, kind quantity.Dimension) Limits { return r.limitsAt(b, "limits", kind) }

// limitsAt is to limits as the key that a block has in its place.
func (r *Reader) limitsAt(b Base, key string, kind quantity.Dimension) Limits {
	n := b.Node.Get(key)
	l := Limits{At: b.KeyPlace(key), Source: text(b.Node.Get("source")), Because: text(b.Node.Get("because"))}
	r.stated(&l, n, kind)
	if also := b.Node.Get("also"); also != nil {
		kind := quantity.None
		if l.Band != nil {
			kind = l.Band.Unit.Dimension
		}
		l.Also = r.band(also, kind)
		l.Bad = l.Bad || l.Also == nil
	}
	if e := b.Node.Get("expect"); e != nil {
		l.Expect = r.band(e, kind)
		l.Bad = l.Bad || l.Expect == nil
	}
	return l
}

// stated reads limits as they are written under one key.
func (r *Reader) stated(l *Limits, n *syntax.Node, kind quantity.Dimension) {
	switch {
	case n == nil || n.Kind != syntax.Scalar:
		l.Bad = n != nil
	case n.Text == "none":
		l.None = true
	case IsName(n.Text), !strings.ContainsFunc(n.Text, func(c rune) bool { return c == ' ' || unicode.IsNumber(c) }):
		l.Named = named(n) // what has no number is no quantity
	default:
		l.Band = r.band(n, kind)
		l.Bad = l.Band == nil
	}
}

// IsName says whether text can be the id of a limit or a step: lower case
// letters, digits and single hyphens, a letter first.
func IsName(text string) bool {
	if text == "" || len(text) > 40 || text[0] < 'a' || text[0] > 'z' || strings.HasSuffix(text, "-") || strings.Contains(text, "--") {
		return false
	}
	return strings.Trim(text, "abcdefghijklmnopqrstuvwxyz0123456789-") == ""
}

// band reads a quantity, nil when it is none (reported). A kind other than
// quantity.None is required of its unit.
func (r *Reader) band(n *syntax.Node, kind quantity.Dimension) *quantity.Band {
	if n.Kind != syntax.Scalar {
		return nil
	}
	b, problem := quantity.ParseBandOf(n.Text, r.Mark, kind)
	if problem != nil {
		span := n.Sub(problem.Start, problem.End)
		r.Msgs.Report(problem.Slug, n.File.At(span.Start, span.End), problem.Help, "%s", problem.Message)
		return nil
	}
	return &b
}

func branch(n *syntax.Node) Branch {
	if n == nil {
		return Branch{}
	}
	if n.Kind == syntax.Mapping {
		return Branch{text(n.Get("say")), named(n.Get("go")), yes(n.Get("back")), n.Place()}
	}
	return Branch{Text: text(n), At: n.Place()}
}

func text(n *syntax.Node) string { return unit.Reader{}.Text(n) }

func yes(n *syntax.Node) bool { return unit.Reader{}.Yes(n) }

func named(n *syntax.Node) Named {
	if n == nil || n.Kind != syntax.Scalar {
		return Named{}
	}
	return Named{text(n), n.Place()}
}

// items returns a sequence's items; a value that stands alone is a list of one.
func items(n *syntax.Node) []*syntax.Node {
	switch {
	case n == nil:
		return nil
	case n.Kind == syntax.Sequence:
		return n.Items
	}
	return []*syntax.Node{n}
}

func names(n *syntax.Node) []Named {
	var out []Named
	for _, i := range items(n) {
		if i.Kind == syntax.Scalar && i.Text != "" {
			out = append(out, named(i))
		}
	}
	return out
}

// list returns a list of names.
func list(n *syntax.Node) []Named {
	var out []Named
	for _, i := range (unit.Reader{}).List(n) {
		out = append(out, named(i))
	}
	return out
}

func texts(n *syntax.Node) []string {
	var out []string
	for _, i := range names(n) {
		out = append(out, i.Name)
	}
	return out
}
