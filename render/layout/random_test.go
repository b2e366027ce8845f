package layout

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/compose"
	"benchwright/render/specimen"
	"benchwright/render/symbol"
)

// A maker makes decks of anything, the same ones in every run.
type maker struct{ *rand.Rand }

var vocabulary = strings.Fields("the nut housing ring cartridge a to of 0.15 100\u00a0N·m right-angle MD-48 Sicherungsring " +
	"Kegelradgetriebe backlash seal M24×1.5 half turn until free 8-5/16\u00a0in — °C slowly-turning")

func (m maker) words(most int) string {
	var all []string
	for range 1 + m.IntN(most) {
		all = append(all, vocabulary[m.IntN(len(vocabulary))])
	}
	return strings.Join(all, " ")
}

func (m maker) runs(most int) []render.Run {
	var all []render.Run
	for range 1 + m.IntN(3) {
		all = append(all, render.Run{Text: m.words(most) + " ", Weight: render.Weight(m.IntN(3)), Code: m.IntN(9) == 0})
	}
	return all
}

func (m maker) some(most int, one func() string) []string {
	var all []string
	for range m.IntN(most + 1) {
		all = append(all, one())
	}
	return all
}

func (m maker) table(rows, columns int) [][][]render.Run {
	var all [][][]render.Run
	for range 1 + m.IntN(rows) {
		var row [][]render.Run
		for range columns {
			row = append(row, m.runs(2))
		}
		all = append(all, row)
	}
	return all
}

func (m maker) maybe(s string) string {
	if m.IntN(3) == 0 {
		return ""
	}
	return s
}

func (m maker) content() render.Content {
	codes := func() string { all := symbol.Codes(); return all[m.IntN(len(all))] }
	signal := render.Signal(m.IntN(4))
	word := []string{"DANGER", "AVERTISSEMENT", "VORSICHT", "NOTICE"}[signal]
	label := func() string { return m.words(2) }
	tool := render.ToolRow{Verb: m.maybe("Hold still"), Name: m.words(4), Number: m.maybe("FL-114"), Place: m.maybe("board B, hook 4"), Note: m.maybe(m.words(4))}
	switch m.IntN(19) {
	case 0:
		return render.Text{Role: render.Role(m.IntN(5)), Runs: m.runs(20)}
	case 1:
		l := render.List{Ordered: m.IntN(2) == 0}
		for range m.IntN(5) {
			l.Items = append(l.Items, render.Item{Runs: m.runs(8), Sub: &render.List{Ordered: m.IntN(2) == 0, Items: []render.Item{{Runs: m.runs(5)}}}})
		}
		return l
	case 2:
		n := 1 + m.IntN(4)
		return render.Table{Head: m.table(2, n+1)[0], Rows: m.table(6, n), Align: []render.Align{render.Left, render.Right, render.Center}, Marked: []bool{false, true}, Large: n%2 == 1, Ruled: n%2 == 0, Fine: []bool{false, true}, Grid: n%3 == 1, Under: m.runs(6)}
	case 3:
		return render.Listing{Title: m.words(3), None: "none", Columns: m.some(3, label), Rows: m.table(6, 1+m.IntN(3))}
	case 4:
		var f render.Facts
		for range m.IntN(6) {
			f.Rows = append(f.Rows, render.Fact{Label: m.words(2), Runs: m.runs(4)})
		}
		return f
	case 5:
		return render.Callout{Signal: signal, Word: word, Symbols: m.some(3, codes), Hazard: m.runs(10), Result: m.runs(8), Avoid: m.runs(12), Short: m.IntN(2) == 0, AvoidFirst: m.IntN(2) == 0}
	case 6:
		h := render.Hazards{Title: m.words(3), None: "none"}
		for range m.IntN(4) {
			h.Rows = append(h.Rows, render.HazardRow{Signal: signal, Word: word, Symbols: m.some(2, codes), Text: m.runs(6), Steps: "steps 3, 7–9"})
		}
		return h
	case 7:
		return render.Tools{Rows: []render.ToolRow{tool, tool}}
	case 8, 9:
		s := render.Setting{Title: m.runs(6), Tools: []render.ToolRow{tool, tool}[:m.IntN(3)], Label: m.words(4), Value: m.maybe("95 to 105"), Unit: "N·m", Source: m.runs(6), Lines: [][]render.Run{m.runs(5)},
			Turn: render.Turn(m.IntN(3)), SeenFrom: m.maybe("seen from input end"), Boxes: m.some(5, label), BoxUnit: m.maybe("N·m")}
		if m.IntN(2) == 0 {
			s.Passes, s.Actions, s.First = []render.Pass{{Label: "Pass 1", Value: "30"}, {Label: "Pass 2", Value: "100"}, {Label: "Once round", Value: "100"}}[:1+m.IntN(3)], [][]render.Run{m.runs(4), m.runs(8)}, m.IntN(4)
		}
		return s
	case 10, 11:
		return render.Reading{Title: m.runs(6), Tools: []render.ToolRow{tool}, Low: m.maybe("0.15"), High: m.maybe("0.25"), Label: m.maybe(m.words(2)), Value: m.maybe("0.15 to 0.25"), Unit: "mm", Source: m.runs(6), Boxes: m.some(9, label), Use: m.runs(3),
			Lines: [][]render.Run{m.runs(6)}, IfLow: m.runs(8), IfHigh: m.runs(8), LowLabel: "Below 0.15", HighLabel: "Above 0.25", Plain: m.IntN(4) == 0}
	case 16:
		o := render.Order{Shape: render.Shape(m.IntN(3)), Lines: [][]render.Run{m.runs(6), m.runs(4)}}
		for i := range 2 * (1 + m.IntN(6)) {
			o.Numbers = append(o.Numbers, 1+i)
		}
		return o
	case 18:
		p := render.Pack{Above: m.maybe("gear race"), Below: m.maybe("case"), Total: m.maybe("1.05\u00a0mm"), Lines: [][]render.Run{m.runs(6)}}
		for range m.IntN(6) {
			p.Layers = append(p.Layers, render.Layer{Label: m.maybe("0.50"), Size: m.IntN(100)})
		}
		return p
	case 12:
		return render.Cord{Drum: m.maybe("drum radius 40\u00a0mm"), Cord: m.maybe("cord 3\u00a0mm"), Pull: m.maybe("24 to 36\u00a0kg"), Lines: [][]render.Run{m.runs(9), m.runs(6)}}
	case 13:
		return render.Indicator{Radius: m.maybe("72\u00a0mm"), Locked: m.words(1), Reach: 300 + m.IntN(1500), Square: m.IntN(2) == 0, Pinion: m.IntN(2) == 0, Lines: [][]render.Run{m.runs(9), m.runs(6)}}
	case 14:
		return render.Hold{Title: m.words(4), Who: m.runs(3), Sees: m.runs(6), Before: m.runs(5), Boxes: m.some(4, label)}
	}
	if m.IntN(2) == 0 {
		if m.IntN(2) == 0 {
			return m.contact()
		}
		return m.picture()
	}
	var rows []render.RecordRow
	for range m.IntN(6) {
		row := render.RecordRow{Step: fmt.Sprint(m.IntN(200)), What: m.runs(4), Hold: m.IntN(5) == 0}
		if m.IntN(3) > 0 {
			row.Limits = compose.Says("0.15 to 0.25\u00a0mm")
		}
		row.Boxes = m.some(6, func() string { return m.maybe(m.words(2)) })
		row.Tail = []bool{m.IntN(3) > 0, true}
		rows = append(rows, row)
	}
	return render.Records{Title: m.maybe("Record"), Step: "Step", What: "What", Readings: "Readings", Tail: []string{"Instrument", "Initials"}, Rows: rows}
}

func (m maker) contact() render.Contact {
	c := render.Contact{Title: m.runs(8), Toe: "toe", Heel: "heel", Top: "top", Root: "root", Under: [][]render.Run{m.runs(9)}, Source: m.runs(5)}
	for i := range 1 + m.IntN(5) {
		c.Rows = append(c.Rows, render.ContactRow{Letter: string(rune('A' + i)), Do: [][]render.Run{m.runs(5), m.runs(4)}, Along: 300 + m.IntN(400), Up: 500, Half: 100, Height: 100})
	}
	return c
}

// picture returns one with spots far enough apart, some on its edges.
func (m maker) picture() render.Picture {
	p := render.Picture{Name: "cartridge.png", Data: specimen.Picture(), Alt: "Cartridge", Caption: m.runs(4)}
	if m.IntN(2) == 0 {
		p.Name, p.Data = "cartridge.svg", specimen.Drawing()
	}
	for i := range m.IntN(10) {
		p.Spots = append(p.Spots, render.Spot{X: i % 3 * 500, Y: i / 3 * 500, Leads: i == 4, ToX: 700, ToY: 700, Says: m.runs(6)})
	}
	return p
}

// Whatever a deck says, its faces keep the rules of every face.
func TestAnyDeckKeepsTheRules(t *testing.T) {
	all := allOptions()
	for seed := range uint64(300) {
		m := maker{rand.New(rand.NewPCG(seed, 48))}
		o := all[m.IntN(len(all))]
		d := render.Deck{Running: render.Running{Number: "MD48-20", Title: m.words(7), Unit: m.words(4), Variant: m.maybe("early"), Revision: "B", Watch: m.maybe("DRAFT"), Note: m.maybe(m.words(6)), Boxes: m.some(3, func() string { return m.words(1) })}}
		s := render.Section{Name: "Steps"}
		for i := range 4 {
			g := render.Group{Breaks: m.IntN(3) == 0, Join: m.IntN(4) == 0}
			if m.IntN(3) > 0 {
				g.Elements = specimen.Elements(render.Step{Number: 98 + i, Title: m.runs(5)})
			}
			for range 1 + m.IntN(2) {
				g.Elements = append(g.Elements, render.Element{Ref: render.Ref(seed), Content: m.content()})
			}
			s.Groups = append(s.Groups, g)
		}
		d.Sections = []render.Section{s}
		sheets, problems := Faces(d, o)
		broken := false
		for _, p := range problems {
			switch p.Kind {
			case render.TooTall, render.WordTooWide, render.TableTooWide, render.FigureTooWide:
				broken = true
			}
			if p.Kind == render.MissingGlyph || p.Kind == render.NoSymbol {
				t.Errorf("seed %d: %+v", seed, p)
			}
		}
		if broken {
			continue
		}
		for i, sheet := range sheets {
			t.Run(fmt.Sprintf("%d on %s, face %d", seed, o.Paper.Name, i+1), func(t *testing.T) {
				insideTrim(t, o, sheet)
				tallEnough(t, o, sheet)
				noOverlap(t, o, sheet)
				outOfBoxes(t, o, sheet)
				boxesApart(t, o, sheet)
				codeAlone(t, o, sheet)
			})
		}
	}
}
