package render

import (
	"crypto/sha256"
	"fmt"
	"strconv"
	"strings"
)

// Canonical is all that a deck says, before layout, as text: one line for the
// running head, a section, a group and an element, each marked technical (T)
// or wording (W). Two decks with the same text give the same faces, but for
// Running.Variant, which is left out so that the decks of two variants can be
// compared. References are left out too; how a text is cut into runs does not
// show.
func Canonical(d Deck) string {
	var b strings.Builder
	for _, l := range canonLines(d) {
		b.WriteString([...]string{Technical: "T ", Wording: "W "}[l.class])
		b.WriteString(l.text)
		b.WriteByte('\n')
	}
	return b.String()
}

// CanonicalOf is the part of Canonical that is of one class. A change of
// wording leaves the technical part as it was, and the other way round.
func CanonicalOf(d Deck, class Class) string {
	var b strings.Builder
	for _, l := range canonLines(d) {
		if l.class == class {
			b.WriteString(l.text)
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// CanonicalElement is the line of one element, without its class.
func CanonicalElement(e Element) string {
	var c canon
	c.element(e.Content)
	return c.String()
}

type canonLine struct {
	class Class
	text  string
}

func canonLines(d Deck) []canonLine {
	var lines []canonLine
	add := func(class Class, name string, fields ...any) {
		var c canon
		c.say(name, fields...)
		lines = append(lines, canonLine{class, c.String()})
	}
	r := d.Running
	add(Technical, "card", "number", r.Number, "unit", r.Unit, "revision", r.Revision, "date", r.Date, "watch", r.Watch)
	add(Wording, "card", "title", r.Title, "note", r.Note, "subject", d.Subject, "language", d.Language)
	w := d.Words
	add(Wording, "words", "continued", w.Continued, "part", w.Part, "step", w.Step, "steps", w.Steps, "face", w.Face, "revision", w.Revision, "count", w.Count)
	for _, s := range d.Sections {
		add(Technical, "section", "name", s.Name)
		for _, g := range s.Groups {
			add(Technical, "group", "anchor", g.Anchor, "join", g.Join, "breaks", g.Breaks)
			if g.Bookmark != "" {
				add(Wording, "bookmark", "text", g.Bookmark)
			}
			for _, e := range g.Elements {
				lines = append(lines, canonLine{min(e.Class, Wording), CanonicalElement(e)})
			}
		}
	}
	return lines
}

// A canon writes one line: a name, then key=value pairs. Empty values are left
// out; strings are quoted, so that no text can pass for structure.
type canon struct{ strings.Builder }

func (c *canon) say(name string, fields ...any) {
	c.WriteString(name)
	for i := 0; i+1 < len(fields); i += 2 {
		if v := canonValue(fields[i+1]); v != "" {
			fmt.Fprintf(c, " %s=%s", fields[i], v)
		}
	}
}

func canonValue(v any) string {
	switch v := v.(type) {
	case string:
		if v == "" {
			return ""
		}
		return strconv.Quote(v)
	case bool:
		return given(v, "yes")
	case int:
		return given(v != 0, strconv.Itoa(v))
	case []string:
		return canonList(v, func(s string) string { return strconv.Quote(s) })
	case []bool:
		return canonList(v, strconv.FormatBool)
	case []int:
		return canonList(v, strconv.Itoa)
	case []Run:
		return canonRuns(v)
	case [][]Run:
		return canonList(v, canonRuns)
	case [][][]Run:
		return canonList(v, func(row [][]Run) string { return canonList(row, canonRuns) })
	case []Align:
		return canonList(v, func(a Align) string { return strconv.Itoa(int(a)) })
	case ToolRow:
		if v == (ToolRow{}) {
			return ""
		}
		var c canon
		c.tool(v)
		return "(" + c.String() + ")"
	}
	return fmt.Sprintf("unknown %T", v)
}

func canonList[T any](list []T, one func(T) string) string {
	if len(list) == 0 {
		return ""
	}
	words := make([]string, len(list))
	for i, v := range list {
		words[i] = one(v)
	}
	return "[" + strings.Join(words, " ") + "]"
}

// canonRuns joins runs that are set alike.
func canonRuns(runs []Run) string {
	var joined []Run
	for _, r := range runs {
		if r.Text == "" {
			continue
		}
		if n := len(joined) - 1; n >= 0 && joined[n].Weight == r.Weight && joined[n].Code == r.Code && joined[n].Link == r.Link {
			joined[n].Text += r.Text
			continue
		}
		joined = append(joined, r)
	}
	return canonList(joined, func(r Run) string {
		s := [...]string{Regular: "", Semibold: "+", Bold: "*"}[min(r.Weight, Bold)] + given(r.Code, "#") + strconv.Quote(r.Text)
		if r.Link != "" {
			s += "@" + strconv.Quote(r.Link)
		}
		return s
	})
}

// element writes a content. A new type of content needs its case here.
func (c *canon) element(content Content) {
	switch v := content.(type) {
	case Stage:
		c.say("stage", "title", v.Title)
	case Step:
		c.say("step", "number", v.Number, "title", v.Title)
	case Text:
		c.say("text", "role", int(v.Role), "runs", v.Runs)
	case List:
		c.list(v)
	case Table:
		c.say("table", "head", v.Head, "align", v.Align, "rows", v.Rows, "marked", v.Marked, "large", v.Large, "ruled", v.Ruled, "fine", v.Fine, "grid", v.Grid, "under", v.Under)
	case Listing:
		c.say("listing", "title", v.Title, "none", v.None, "columns", v.Columns, "rows", v.Rows)
	case Facts:
		c.say("facts")
		for _, f := range v.Rows {
			c.row("fact", "label", f.Label, "runs", f.Runs)
		}
	case Callout:
		c.say("callout", "signal", int(v.Signal), "word", v.Word, "symbols", v.Symbols, "hazard", v.Hazard, "result", v.Result,
			"avoid", v.Avoid, "short", v.Short, "avoid-first", v.AvoidFirst)
	case Hazards:
		c.say("hazards", "title", v.Title, "none", v.None)
		for _, h := range v.Rows {
			c.row("hazard", "signal", int(h.Signal), "word", h.Word, "symbols", h.Symbols, "text", h.Text, "steps", h.Steps)
		}
	case Tools:
		c.say("tools")
		for _, t := range v.Rows {
			c.WriteString(" (")
			c.tool(t)
			c.WriteString(")")
		}
	case Setting:
		c.say("setting", "title", v.Title, "label", v.Label, "value", v.Value, "unit", v.Unit, "source", v.Source, "lines", v.Lines,
			"turn", int(v.Turn), "seen-from", v.SeenFrom, "boxes", v.Boxes, "box-unit", v.BoxUnit, "actions", v.Actions, "first", v.First)
		for _, p := range v.Passes {
			c.row("pass", "label", p.Label, "value", p.Value)
		}
	case Order:
		c.say("order", "shape", int(v.Shape), "numbers", v.Numbers, "lines", v.Lines)
	case Reading:
		c.say("reading", "title", v.Title, "gauge", v.Gauge, "low", v.Low, "high", v.High, "label", v.Label, "value", v.Value,
			"unit", v.Unit, "source", v.Source, "boxes", v.Boxes, "use", v.Use, "lines", v.Lines, "if-low", v.IfLow, "if-high", v.IfHigh,
			"low-label", v.LowLabel, "high-label", v.HighLabel, "plain", v.Plain)
	case Pack:
		c.say("pack", "above", v.Above, "below", v.Below, "total", v.Total, "lines", v.Lines)
		for _, l := range v.Layers {
			c.row("layer", "label", l.Label, "size", l.Size)
		}
	case Cord:
		c.say("cord", "drum", v.Drum, "cord", v.Cord, "pull", v.Pull, "lines", v.Lines)
	case Hold:
		c.say("hold", "title", v.Title, "who", v.Who, "sees", v.Sees, "before", v.Before, "boxes", v.Boxes)
	case Picture:
		c.say("picture", "name", v.Name, "sum", fmt.Sprintf("%x", sha256.Sum256(v.Data)), "alt", v.Alt, "caption", v.Caption)
		for _, o := range v.Spots {
			c.row("spot", "x", o.X, "y", o.Y, "leads", o.Leads, "to-x", o.ToX, "to-y", o.ToY, "says", o.Says)
		}
	case Contact:
		c.say("contact", "title", v.Title, "toe", v.Toe, "heel", v.Heel, "top", v.Top, "root", v.Root, "under", v.Under, "source", v.Source)
		for _, r := range v.Rows {
			c.row("row", "letter", r.Letter, "do", r.Do, "along", r.Along, "up", r.Up, "half", r.Half, "height", r.Height)
		}
	case Indicator:
		c.say("indicator", "radius", v.Radius, "locked", v.Locked, "reach", v.Reach, "square", v.Square, "pinion", v.Pinion, "lines", v.Lines)
	case Records:
		c.say("records", "title", v.Title, "columns", v.Columns)
		for _, r := range v.Rows {
			c.row("row", "step", r.Step, "what", r.What, "limits", r.Limits, "boxes", r.Boxes, "hold", r.Hold)
		}
	case End:
		c.say("end", "text", v.Text)
	default:
		fmt.Fprintf(c, "unknown %T", content)
	}
}

func (c *canon) row(name string, fields ...any) {
	c.WriteString(" (")
	c.say(name, fields...)
	c.WriteString(")")
}

func (c *canon) tool(t ToolRow) {
	c.say("tool", "verb", t.Verb, "name", t.Name, "number", t.Number, "place", t.Place, "note", t.Note)
}

func (c *canon) list(l List) {
	c.say("list", "ordered", l.Ordered)
	for _, i := range l.Items {
		c.WriteString(" (")
		c.say("item", "runs", i.Runs)
		if i.Sub != nil {
			c.WriteString(" ")
			c.list(*i.Sub)
		}
		c.WriteString(")")
	}
}

func given(yes bool, s string) string {
	if yes {
		return s
	}
	return ""
}
