package compile

import (
	"fmt"
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// procedure mutates a procedure: its keys and blocks, its steps and its prose.
func (g *mutator) procedure(f *source.File) {
	g.file = f
	doc := syntax.ReadDoc(f, &diag.List{})
	g.tree("front", doc.Front)
	blocksOf(doc, func(b *syntax.Block) { g.tree("block-"+b.Type, b.Tree) })
	g.layout("procedure")
	g.steps(doc)
	g.content("lead", doc.Lead)
	for _, st := range doc.Stages {
		g.content("stage", st.Content)
		g.put("stage", "renamed", st.Span.Start, st.Span.Start+len(st.Text), st.Text+" again")
		for _, s := range st.Steps {
			g.content("step", s.Content)
			m := g.put("step", "renamed", s.Span.Start, s.Span.Start+len(s.Text), s.Text+" again")
			m.titles = []string{m.to}
			if s.ID == "" {
				g.again("step", "an id", s.Span.End, s.Span.End, fmt.Sprintf(" {#added-%d}", s.Span.Start))
			}
		}
	}
}

// steps removes each step, exchanges it with the next, and gives it to one
// variant alone; and exchanges stages.
func (g *mutator) steps(doc *syntax.Doc) {
	type piece struct {
		syntax.Heading
		source.Span
	}
	var steps, stages []piece
	end := len(g.file.Text)
	start := func(h syntax.Heading) int { return strings.LastIndexByte(string(g.file.Text[:h.Span.Start]), '\n') + 1 }
	for i, st := range doc.Stages {
		stop := end
		if i+1 < len(doc.Stages) {
			stop = start(doc.Stages[i+1].Heading)
		}
		stages = append(stages, piece{st.Heading, source.Span{Start: start(st.Heading), End: stop}})
		for j, s := range st.Steps {
			last := stop
			if j+1 < len(st.Steps) {
				last = start(st.Steps[j+1].Heading)
			}
			steps = append(steps, piece{s.Heading, source.Span{Start: start(s.Heading), End: last}})
		}
	}
	ended := func(s string) string { return strings.TrimRight(s, "\n") + "\n\n" }
	for i, s := range steps {
		m := g.put("step", "step removed", s.Span.Start, s.Span.End, "")
		m.titles = []string{s.Text}
		for _, v := range g.variants {
			if len(s.Only) > 0 {
				continue
			}
			attr := "{only=" + v + "}"
			at, to := s.Heading.Span.End, s.Heading.Span.End
			if s.ID != "" {
				attr, at = "{#"+s.ID+" only="+v+"}", s.IDSpan.Start-2
				to = s.IDSpan.End + 1
			}
			m := g.put("step", "step for one variant", at, to, " "+attr)
			m.titles = []string{s.Text}
		}
		if i+1 < len(steps) {
			n := steps[i+1]
			text := g.file.At(s.Span.Start, s.Span.End).Text()
			other := g.file.At(n.Span.Start, n.Span.End).Text()
			between := g.file.At(s.Span.End, n.Span.Start).Text()
			m := g.put("step", "steps exchanged", s.Span.Start, n.Span.End, ended(other)+between+ended(text))
			m.titles = []string{s.Text, n.Text}
		}
	}
	for i := range len(stages) - 1 {
		a, b := stages[i], stages[i+1]
		m := g.put("stage", "stages exchanged", a.Span.Start, b.Span.End,
			ended(g.file.At(b.Span.Start, b.Span.End).Text())+ended(g.file.At(a.Span.Start, a.Span.End).Text()))
		for _, s := range steps {
			if s.Span.Start >= a.Span.Start && s.Span.End <= b.Span.End {
				m.titles = append(m.titles, s.Text)
			}
		}
	}
}

// link matches what in prose is no prose: a link's target, a picture, a card's number.
var link = regexp.MustCompile(`!\[[^\]]*\]\([^)]*\)|\]\([^)]*\)|\b[A-Z][A-Z0-9]*-[0-9]+\b`)

// content mutates what stands in a step: each element left out, exchanged with
// the next, and the words and numbers of its prose.
func (g *mutator) content(where string, all []syntax.Content) {
	kind := func(c syntax.Content) string {
		if b, ok := c.(*syntax.Block); ok {
			return "block-" + b.Type
		}
		return "prose"
	}
	for i, c := range all {
		span := c.Place()
		g.put(kind(c), "left out of a "+where, span.Start, span.End, "")
		if i+1 < len(all) {
			g.swap(kind(c), "exchanged with the next in a "+where, span, all[i+1].Place())
		}
		if _, block := c.(*syntax.Block); block {
			g.put(kind(c), "said twice", span.End, span.End, "\n\n"+g.file.At(span.Start, span.End).Text())
			continue
		}
		text := g.file.At(span.Start, span.End).Text()
		mask := link.ReplaceAllStringFunc(text, func(s string) string { return strings.Repeat("_", len(s)) })
		splice := func(how string, others []string) {
			for _, by := range others {
				// Only the place that differs is put back into what stands there.
				from := 0
				for from < len(mask) && from < len(by) && mask[from] == by[from] {
					from++
				}
				tail := 0
				for tail < len(mask)-from && tail < len(by)-from && mask[len(mask)-1-tail] == by[len(by)-1-tail] {
					tail++
				}
				g.put("prose", how, span.Start+from, span.Start+len(mask)-tail, by[from:len(by)-tail])
			}
		}
		splice("number", otherNumbers(mask))
		splice("the other way", turned(mask))
		if p, ok := c.(*syntax.Paragraph); ok {
			if cut := strings.Index(mask, ". "); cut >= 0 {
				g.put("prose", "sentence left out", p.Span.Start, p.Span.Start+cut+2, "")
			}
			if cut := strings.IndexByte(mask, ' '); cut >= 0 {
				g.again("prose", "wrapped", p.Span.Start+cut, p.Span.Start+cut+1, "\n")
				g.put("prose", "another text", p.Span.Start+cut, p.Span.Start+cut+1, " now ")
			}
		}
	}
}
