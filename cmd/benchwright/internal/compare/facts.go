package compare

import (
	"crypto/sha256"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/deck"
	"benchwright/cmd/benchwright/internal/hazard"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/render"
)

// A fact is what one field of an element says, line by line.
type fact struct {
	what  string
	class Class
	lines []string
}

// A reader is a card's decks, read to be compared.
type reader struct {
	card   *card.Card
	deck   *deck.Deck
	mark   quantity.DecimalMark
	layOut []render.Element
	lead   []render.Element
	stages []string
	steps  []*step
	strip  []render.Element
	text   string            // all that the decks say
	kit    []string          // names of tools, wrenches and gauges
	risky  map[string]string // ids of those that carry a hazard, by name
}

func read(c *card.Card) *reader {
	r := &reader{card: c, deck: deck.Build(c, nil), mark: c.Shop.Mark(), risky: map[string]string{}}
	for _, k := range c.Kit {
		r.kit = append(r.kit, tidy(k.Item.Name))
		if len(k.Item.Hazards) > 0 {
			r.risky[tidy(k.Item.Name)] = k.Item.ID
		}
	}
	anchored := map[string]*step{}
	for _, st := range c.Stages {
		r.stages = append(r.stages, st.Source.Text)
		for _, s := range st.Steps {
			at := &step{id: s.Source.ID, title: s.Source.Text, stage: st.Source.Text, number: s.Number, source: s.Source, at: s.Place(c), incomplete: c.Incomplete(s), reads: r, items: s.Items}
			r.steps, anchored[card.Anchor(s.Number)] = append(r.steps, at), at
		}
	}
	for i, s := range r.deck.Sections {
		for _, g := range s.Groups {
			switch at := anchored[g.Anchor]; {
			case i == 0:
				r.layOut = append(r.layOut, g.Elements...)
			case at != nil:
				at.elements = g.Elements
			default:
				r.lead = append(r.lead, g.Elements...)
			}
		}
	}
	strip := deck.Strip(c)
	r.text = render.Canonical(r.deck.Deck) + render.Canonical(strip.Deck)
	for _, s := range strip.Sections {
		for _, g := range s.Groups {
			r.strip = append(r.strip, g.Elements...)
		}
	}
	return r
}

// lacks reports whether an error keeps something of a step from being made, or
// without a step something of the card.
func (r *reader) lacks(s *step) bool {
	if s == nil {
		return r.card.FirstIncomplete() != nil
	}
	return s.incomplete
}

// facts returns what an element says.
func (r *reader) facts(e render.Element) []fact {
	v := reflect.ValueOf(e.Content)
	if !v.IsValid() {
		return nil
	}
	var out []fact
	for i := range v.NumField() {
		f := fields[v.Type().Name()+"."+v.Type().Field(i).Name]
		if f.skip != "" {
			continue
		}
		lines := lines(v.Field(i))
		if len(lines) == 0 {
			continue
		}
		if f.with != "" {
			lines[0] = strings.TrimSpace(lines[0] + " " + v.FieldByName(f.with).String())
		}
		if f.what == "signs" {
			lines = []string{signs(lines)}
		}
		if f.whole {
			lines = []string{strings.Join(lines, ", ")}
		}
		class := f.class
		switch {
		case class != "":
		case e.Class == render.Technical:
			class = Safety
		default:
			class = Wording
		}
		out = append(out, fact{f.what, class, lines})
	}
	return out
}

// grave returns the class of a fact that only one side has. Prose that states a
// number is safety, because it may be set or accepted, and so is a tool that
// carries a hazard.
func (r *reader) grave(f fact) Class {
	switch {
	case f.class == Wording && len(numbers(strings.Join(f.lines, " "))) > 0, f.class == Method && slices.ContainsFunc(f.lines, func(l string) bool { return r.risks(l) != nil }):
		return Safety
	}
	return f.class
}

// risks returns the ids of the tools with a hazard that a line names, nil without
// one: a tool that has another name is the same.
func (r *reader) risks(line string) []string {
	var out []string
	for _, name := range r.kit {
		if id := r.risky[name]; id != "" && strings.Contains(line, name) {
			out = append(out, id)
		}
	}
	return out
}

// takes reports whether a line names a tool, wrench or gauge.
func (r *reader) takes(line string) bool {
	return slices.ContainsFunc(r.kit, func(name string) bool { return strings.Contains(line, name) })
}

// lines returns what a value of a deck says, line by line; none where it is
// empty.
func lines(v reflect.Value) []string {
	if v.IsZero() {
		return nil
	}
	switch x := v.Interface().(type) {
	case []render.Run:
		return []string{plain(x)}
	case []byte:
		sum := sha256.Sum256(x)
		return []string{fmt.Sprintf("%d KB, checksum %x", (len(x)+1023)/1024, sum[:4])}
	case render.Turn:
		return []string{[...]string{"", "clockwise", "counterclockwise"}[x]}
	case render.Shape:
		return []string{[...]string{"circle", "rectangle", "row"}[x]}
	case render.HazardRow: // its steps follow from the callouts
		says := x.Word + ": " + plain(x.Text)
		if len(x.Symbols) > 0 {
			says += " (" + signs(x.Symbols) + ")"
		}
		return []string{says}
	case render.RecordRow: // its step is found by its own callouts and panels
		return []string{strings.TrimSpace(plain(x.What) + ", " + plain(x.Limits) + " " + strings.Join(x.Boxes, ", "))}
	case render.Layer: // its size follows from its label
		x.Size = 0
		v = reflect.ValueOf(x)
	case render.Spot:
		return []string{fmt.Sprintf("%s at %d, %d", plain(x.Says), x.X+x.ToX, x.Y+x.ToY)}
	case render.Item:
		out := []string{plain(x.Runs)}
		if x.Sub != nil {
			for _, i := range x.Sub.Items {
				out = append(out, lines(reflect.ValueOf(i))...)
			}
		}
		return out
	}
	switch v.Kind() {
	case reflect.String:
		return []string{tidy(v.String())}
	case reflect.Bool:
		return []string{"yes"}
	case reflect.Int, reflect.Uint8:
		return []string{fmt.Sprint(v.Interface())}
	case reflect.Pointer:
		return lines(v.Elem())
	case reflect.Struct:
		var cells []string
		for i := range v.NumField() {
			cells = append(cells, lines(v.Field(i))...)
		}
		return []string{strings.Join(cells, " ")}
	case reflect.Slice:
		var out []string
		for i := range v.Len() {
			thing := v.Index(i)
			if _, row := thing.Interface().([][]render.Run); row {
				out = append(out, rowLines(thing.Interface().([][]render.Run))...)
				continue
			}
			out = append(out, lines(thing)...)
		}
		return out
	}
	panic(fmt.Sprintf("compare: a deck says nothing by a %s", v.Type()))
}

// signs names safety signs by what they say, with their codes.
func signs(codes []string) string {
	var out []string
	for _, code := range codes {
		if s, ok := hazard.FindSymbol(code); ok {
			code = s.Meaning + ", " + code
		}
		out = append(out, code)
	}
	return strings.Join(out, "; ")
}

// apart stands between things of a list that are set behind one another.
const apart = " · "

// rowLines returns the lines of one row of cells: the row, or where its last
// cell sets several things behind one another, each of them with the first.
func rowLines(cells [][]render.Run) []string {
	var texts []string
	for _, c := range cells {
		texts = append(texts, plain(c))
	}
	last := len(texts) - 1
	if last < 0 || !strings.Contains(texts[last], apart) {
		return []string{strings.Join(texts, ": ")}
	}
	var out []string
	for thing := range strings.SplitSeq(texts[last], apart) {
		out = append(out, strings.Join(append(slices.Clone(texts[:last]), thing), ": "))
	}
	return out
}

func plain(runs []render.Run) string {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	return tidy(b.String())
}

// tidy returns a text on one line, with plain single spaces.
func tidy(text string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(text, render.FaceOf, "")), " ")
}
