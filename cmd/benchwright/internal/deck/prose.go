package deck

import (
	"fmt"
	"strings"
	"unicode"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/render"
)

// picture builds a picture of a writer's text.
func (b *builder) picture(p *card.Picture) []render.Element {
	if p.Data == nil {
		return nil
	}
	return []render.Element{b.technical(p.Place(), render.Picture{Name: p.Name, Data: p.Data, Alt: p.Alt, Caption: plain(p.Title)})}
}

// prose builds a piece of a writer's text.
func (b *builder) prose(p *card.Prose) []render.Element {
	var content render.Content
	switch c := p.Content.(type) {
	case *syntax.Paragraph:
		content = render.Text{Role: render.Instruction, Runs: runs(c.Runs)}
	case *syntax.Note:
		if c.Kind == syntax.Why {
			content = render.Text{Role: render.Why, Runs: runs(c.Runs)}
		} else {
			content = render.Text{Role: render.Tip, Runs: append([]render.Run{{Text: wordTip + ". ", Weight: render.Semibold}}, runs(c.Runs)...)}
		}
	case *syntax.List:
		content = list(c)
	case *syntax.Table:
		t := render.Table{Head: cells(c.Head)}
		for _, a := range c.Align {
			t.Align = append(t.Align, render.Align(a))
		}
		for _, r := range c.Rows {
			t.Rows = append(t.Rows, cells(r))
		}
		return []render.Element{b.technical(p.Place(), t)}
	default:
		panic(fmt.Sprintf("no face knows a %T", c))
	}
	// A number in the text is something to set, count or accept, so a change
	// of it is technical.
	if strings.ContainsFunc(p.Place().Text(), unicode.IsDigit) {
		return []render.Element{b.technical(p.Place(), content)}
	}
	return []render.Element{b.wording(p.Place(), content)}
}

func list(l *syntax.List) render.List {
	out := render.List{Ordered: l.Ordered}
	for _, i := range l.Items {
		item := render.Item{Runs: runs(i.Runs)}
		if i.Sub != nil {
			sub := list(i.Sub)
			item.Sub = &sub
		}
		out.Items = append(out.Items, item)
	}
	return out
}

func cells(cells []syntax.Cell) [][]render.Run {
	var out [][]render.Run
	for _, c := range cells {
		out = append(out, runs(c.Runs))
	}
	return out
}

// runs converts runs; emphasis is set in semibold, never in italics.
func runs(in []syntax.Run) []render.Run {
	out := make([]render.Run, 0, len(in))
	var q quotes
	for _, r := range in {
		o := render.Run{Text: r.Text, Link: r.Link}
		switch r.Style {
		case syntax.Strong:
			o.Weight = render.Bold
		case syntax.Emphasis:
			o.Weight = render.Semibold
		case syntax.Code:
			o.Code = true
		}
		if set := q.set(o.Text); !o.Code { // a name is printed exactly as engraved
			o.Text = bind(set)
		}
		out = append(out, o)
	}
	return out
}

// plain returns a run of plain text.
func plain(text string) []render.Run {
	if text == "" {
		return nil
	}
	return []render.Run{{Text: typeset(text)}}
}

func strong(text string) []render.Run {
	return []render.Run{{Text: typeset(text), Weight: render.Semibold}}
}

// labeled returns a line of a label and the writer's text, nil for "".
func labeled(word, text string) [][]render.Run {
	if text == "" {
		return nil
	}
	return [][]render.Run{{{Text: word + ": ", Weight: render.Semibold}, {Text: strings.TrimSuffix(text, ".") + "."}}}
}
