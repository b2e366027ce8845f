package procedure

import (
	"strings"
	"unicode"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// A Reader converts Docs to Procedures.
type Reader struct {
	Mark quantity.DecimalMark // of the shop
	Msgs *diag.List
}

// A reader reads a front matter or a block. An unreadable value makes the
// whole block Invalid; parts that are marked as bad on their own have their
// own reader.
type reader struct{ *value.Reader }

func (r *Reader) of(t *syntax.Tree) reader {
	return reader{&value.Reader{Mark: r.Mark, Msgs: r.Msgs, SchemaRefused: t.Refused}}
}

// forPart returns a reader for a part that is marked as bad on its own.
func (r reader) forPart() reader { return reader{r.ForPart()} }

// Read converts a Doc.
func (r *Reader) Read(doc *syntax.Doc) *Procedure {
	p := &Procedure{File: doc.File, Doc: doc}
	if doc.Front != nil {
		r.of(doc.Front).front(p, doc.Front.Root)
	}
	p.Lead = r.stageItems(doc, doc.Lead)
	for _, st := range doc.Stages {
		stage := &Stage{Heading: st.Heading, Items: r.stageItems(doc, st.Content)}
		for _, s := range st.Steps {
			stage.Steps = append(stage.Steps, &Step{Heading: s.Heading, Items: r.items(doc.File, s.Content)})
		}
		p.Stages = append(p.Stages, stage)
	}
	return p
}

func (r reader) front(p *Procedure, n *syntax.Node) {
	p.Number, p.Title = r.named(n.Get("card")), r.named(n.Get("title"))
	if p.Number.Name != "" {
		r.CardNumber(p.Number.Name, p.Number.At)
	}
	p.Revision, p.Date, p.Kind = r.Text(n.Get("revision")), r.Text(n.Get("date")), value.OneOf(r.Reader, n.Get("kind"), cardKinds...)
	if u := n.Get("unit"); u != nil && u.Kind == syntax.Mapping {
		p.InlineUnit, p.Unit = u, r.named(u.Get("unit"))
	} else {
		p.Unit = r.named(u)
	}
	r.Mapping(n.Get("shop"))
	p.Variants, p.After, p.Reverses = r.list(n.Get("variants")), r.list(n.Get("after")), r.named(n.Get("reverses"))
	p.Time, p.People, p.Skill = r.Text(n.Get("time")), r.Text(n.Get("people")), r.Text(n.Get("skill"))
	p.Call, p.Source, p.Draft = r.Text(n.Get("call")), r.Text(n.Get("source")), value.OneOf(r.Reader, n.Get("status"), "draft", "released") == "draft"
	p.Conditions, p.Consumables = r.names(n.Get("conditions")), r.names(n.Get("consumables"))
	p.Parts = r.list(n.Get("parts"))
	for _, s := range r.Items(n.Get("stop-points")) {
		if s.Kind == syntax.Mapping {
			p.StopPoints = append(p.StopPoints, StopPoint{r.named(s.Get("after")), r.Text(s.Get("say"))})
		} else {
			p.StopPoints = append(p.StopPoints, StopPoint{After: r.named(s)})
		}
	}
	for _, a := range r.Items(n.Get("accept")) {
		r.Mapping(a)
		p.Accept = append(p.Accept, Accept{r.named(a.Get("message")), r.named(a.Get("at")), r.Text(a.Get("because"))})
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

// stageItems converts what stands before a step, which may only be prose. A
// block there belongs to no step, so no rule would check it and no face would
// number it. If a heading was refused, the block may belong below that
// heading, and is not reported.
func (r *Reader) stageItems(doc *syntax.Doc, content []syntax.Content) []Item {
	said := doc.HeadingRefused
	var out []Item
	for _, c := range content {
		block, ok := c.(*syntax.Block)
		if !ok {
			out = append(out, r.items(doc.File, []syntax.Content{c})...)
			continue
		}
		at := doc.File.At(block.TypeSpan.Start, block.TypeSpan.End)
		if !said.IsSet() {
			said = r.Msgs.Report("block-place", at, "put it below the `### ` heading of its step", "a typed block comes before the first step of its stage").Proof()
		}
		out = append(out, invalid(Base{At: at}, block.Type, said))
	}
	return out
}

// refuseMarkup reports Markdown in the texts of a block, which would be
// printed unconverted.
func (r reader) refuseMarkup(n *syntax.Node) {
	for _, f := range n.Fields {
		r.refuseMarkup(f.Value)
	}
	for _, i := range n.Items {
		r.refuseMarkup(i)
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

func (r reader) tool(b Base) Item {
	n := b.Node
	return &Tool{b, r.names(n.Get("use")), r.names(n.Get("assemble")), r.named(n.Get("as")),
		r.named(n.Get("take-apart")), r.named(n.Get("hold-still")), r.named(n.Get("with"))}
}

func (r reader) measurement(b Base) Item {
	m := r.reading(b, quantity.None, "gauge")
	return &m
}

// reading reads the keys that every reading has: of, limits of dimension kind,
// the gauge under key gauge, what to record and what follows. Unreadable
// numbers make the limits bad.
func (r reader) reading(b Base, kind quantity.Dimension, gauge string) Measurement {
	n, in := b.Node, r.forPart()
	m := Measurement{Base: b, Of: r.Text(n.Get("of")), Limits: in.limits(b, "limits", kind), Gauge: r.named(n.Get(gauge)),
		Record: r.texts(n.Get("record")), Use: value.OneOf(r.Reader, n.Get("use"), Lowest, Each, Average), IfLow: r.branch(n.Get("if-low")), IfHigh: r.branch(n.Get("if-high")),
		AsFound: r.Switch(n.Get("as-found")), Spread: in.Band(n.Get("spread"), quantity.None), Tilt: in.Value(n.Get("tilt"), quantity.Angle)}
	m.Limits.Bad = in.Bad()
	return m
}

func (r reader) caution(b Base) Item {
	n := b.Node
	return &Caution{b, r.named(n.Get("level")), r.Text(n.Get("hazard")), r.Text(n.Get("result")), r.Text(n.Get("avoid")),
		r.names(n.Get("symbol")), r.names(n.Get("covers"))}
}

func (r reader) holdPoint(b Base) Item {
	n := b.Node
	return &HoldPoint{b, r.Text(n.Get("who")), r.Text(n.Get("sees")), r.Text(n.Get("before"))}
}

// limits reads the limits under key, and source, also, because and expect.
func (r reader) limits(b Base, key string, kind quantity.Dimension) Limits {
	n := b.Node
	l := Limits{At: b.KeyPlace(key), Source: r.Text(n.Get("source")), Because: r.Text(n.Get("because"))}
	r.readLimits(&l, n.Get(key), kind)
	like := quantity.None
	if l.Band != nil {
		like = l.Band.Unit.Dimension
	}
	l.Also, l.Expect = r.Band(n.Get("also"), like), r.Band(n.Get("expect"), kind)
	l.Bad = r.Bad()
	return l
}

// readLimits reads the limits written in n.
func (r reader) readLimits(l *Limits, n *syntax.Node, kind quantity.Dimension) {
	switch text := r.Text(n); {
	case text == "":
	case text == "none":
		l.None = true
	case syntax.WellFormed(text), !strings.ContainsFunc(text, func(c rune) bool { return c == ' ' || unicode.IsNumber(c) }):
		l.Named = r.named(n) // without a digit it is a name
	default:
		l.Band = r.Band(n, kind)
	}
	l.Bad = l.Bad.Or(r.Bad())
}

func (r reader) branch(n *syntax.Node) Branch {
	if n == nil {
		return Branch{}
	}
	if n.Kind == syntax.Mapping {
		return Branch{r.Text(n.Get("say")), r.named(n.Get("go")), r.Switch(n.Get("back")), n.Place()}
	}
	return Branch{Text: r.Text(n), At: n.Place()}
}

func (r reader) named(n *syntax.Node) Named {
	if n == nil {
		return Named{}
	}
	return Named{r.Text(n), n.Place()}
}

// names reads texts, each of which may contain commas.
func (r reader) names(n *syntax.Node) []Named {
	var out []Named
	for _, i := range r.Items(n) {
		if name := r.named(i); name.Name != "" {
			out = append(out, name)
		}
	}
	return out
}

// list reads a list of names.
func (r reader) list(n *syntax.Node) []Named {
	var out []Named
	for _, i := range r.List(n) {
		out = append(out, r.named(i))
	}
	return out
}

func (r reader) texts(n *syntax.Node) []string {
	var out []string
	for _, i := range r.names(n) {
		out = append(out, i.Name)
	}
	return out
}
