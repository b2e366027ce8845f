package render

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
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

func (m maker) runs(most int) []Run {
	var all []Run
	for range 1 + m.IntN(3) {
		all = append(all, Run{Text: m.words(most) + " ", Weight: Weight(m.IntN(3)), Code: m.IntN(9) == 0})
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

func (m maker) table(rows, columns int) [][][]Run {
	var all [][][]Run
	for range 1 + m.IntN(rows) {
		var row [][]Run
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

func (m maker) content() Content {
	codes := func() string { all := SymbolCodes(); return all[m.IntN(len(all))] }
	signal := Signal(m.IntN(4))
	word := []string{"DANGER", "AVERTISSEMENT", "VORSICHT", "NOTICE"}[signal]
	label := func() string { return m.words(2) }
	tool := ToolRow{m.maybe("Hold still"), m.words(4), m.maybe("FL-114"), m.maybe("board B, hook 4"), m.maybe(m.words(4))}
	switch m.IntN(19) {
	case 0:
		return Text{Role(m.IntN(5)), m.runs(20)}
	case 1:
		l := List{Ordered: m.IntN(2) == 0}
		for range m.IntN(5) {
			l.Items = append(l.Items, Item{m.runs(8), &List{m.IntN(2) == 0, []Item{{Runs: m.runs(5)}}}})
		}
		return l
	case 2:
		n := 1 + m.IntN(4)
		return Table{Head: m.table(2, n+1)[0], Rows: m.table(6, n), Align: []Align{Left, Right, Center}, Marked: []bool{false, true}, Large: n%2 == 1, Ruled: n%2 == 0, Fine: []bool{false, true}, Grid: n%3 == 1, Under: m.runs(6)}
	case 3:
		return Listing{m.words(3), "none", m.some(3, label), m.table(6, 1+m.IntN(3))}
	case 4:
		var f Facts
		for range m.IntN(6) {
			f.Rows = append(f.Rows, Fact{m.words(2), m.runs(4)})
		}
		return f
	case 5:
		return Callout{signal, word, m.some(3, codes), m.runs(10), m.runs(8), m.runs(12), m.IntN(2) == 0, m.IntN(2) == 0}
	case 6:
		h := Hazards{Title: m.words(3), None: "none"}
		for range m.IntN(4) {
			h.Rows = append(h.Rows, HazardRow{signal, word, m.some(2, codes), m.runs(6), "steps 3, 7–9"})
		}
		return h
	case 7:
		return Tools{[]ToolRow{tool, tool}}
	case 8, 9:
		s := Setting{Title: m.runs(6), Label: m.words(4), Value: m.maybe("95 to 105"), Unit: "N·m", Source: m.runs(6), Lines: [][]Run{m.runs(5)},
			Turn: Turn(m.IntN(3)), SeenFrom: m.maybe("seen from input end"), Boxes: m.some(5, label), BoxUnit: m.maybe("N·m")}
		if m.IntN(2) == 0 {
			s.Passes, s.Actions, s.First = []Pass{{"Pass 1", "30"}, {"Pass 2", "100"}, {"Once round", "100"}}[:1+m.IntN(3)], [][]Run{m.runs(4), m.runs(8)}, m.IntN(4)
		}
		return s
	case 10, 11:
		return Reading{m.runs(6), tool, m.maybe("0.15"), m.maybe("0.25"), m.maybe(m.words(2)), m.maybe("0.15 to 0.25"), "mm", m.runs(6), m.some(9, label), m.runs(3),
			[][]Run{m.runs(6)}, m.runs(8), m.runs(8), "Below 0.15", "Above 0.25", m.IntN(4) == 0}
	case 16:
		o := Order{Shape: Shape(m.IntN(3)), Lines: [][]Run{m.runs(6), m.runs(4)}}
		for i := range 2 * (1 + m.IntN(6)) {
			o.Numbers = append(o.Numbers, 1+i)
		}
		return o
	case 18:
		p := Pack{Above: m.maybe("gear race"), Below: m.maybe("case"), Total: m.maybe("1.05\u00a0mm"), Lines: [][]Run{m.runs(6)}}
		for range m.IntN(6) {
			p.Layers = append(p.Layers, Layer{m.maybe("0.50"), m.IntN(100)})
		}
		return p
	case 12:
		return Cord{m.maybe("drum radius 40\u00a0mm"), m.maybe("cord 3\u00a0mm"), m.maybe("24 to 36\u00a0kg"), [][]Run{m.runs(9), m.runs(6)}}
	case 13:
		return Indicator{m.maybe("72\u00a0mm"), m.words(1), 300 + m.IntN(1500), m.IntN(2) == 0, m.IntN(2) == 0, [][]Run{m.runs(9), m.runs(6)}}
	case 14:
		return Hold{m.words(4), m.runs(3), m.runs(6), m.runs(5), m.some(4, label)}
	}
	if m.IntN(2) == 0 {
		if m.IntN(2) == 0 {
			return m.contact()
		}
		return m.picture()
	}
	var rows []RecordRow
	for range m.IntN(6) {
		row := RecordRow{Step: fmt.Sprint(m.IntN(200)), What: m.runs(4), Hold: m.IntN(5) == 0}
		if m.IntN(3) > 0 {
			row.Limits = says("0.15 to 0.25\u00a0mm")
		}
		for range 3 {
			row.Boxes = append(row.Boxes, m.IntN(3) > 0)
		}
		rows = append(rows, row)
	}
	return Records{m.maybe("Record"), []string{"Step", "What", "Limits", "As found", "As left", "Initials"}, rows}
}

func (m maker) contact() Contact {
	c := Contact{Title: m.runs(8), Toe: "toe", Heel: "heel", Top: "top", Root: "root", Under: [][]Run{m.runs(9)}, Source: m.runs(5)}
	for i := range 1 + m.IntN(5) {
		c.Rows = append(c.Rows, ContactRow{string(rune('A' + i)), [][]Run{m.runs(5), m.runs(4)}, 300 + m.IntN(400), 500, 100, 100})
	}
	return c
}

// picture is one with spots far enough apart, on the edges too.
func (m maker) picture() Picture {
	p := Picture{Name: "cartridge.png", Data: samplePicture(), Alt: "Cartridge", Caption: m.runs(4)}
	for i := range m.IntN(10) {
		p.Spots = append(p.Spots, Spot{X: i % 3 * 500, Y: i / 3 * 500, Leads: i == 4, ToX: 700, ToY: 700, Says: m.runs(6)})
	}
	return p
}

// Whatever a deck says, its faces keep the rules of every face.
func TestAnyDeckKeepsTheRules(t *testing.T) {
	all := allOptions()
	for seed := range uint64(300) {
		m := maker{rand.New(rand.NewPCG(seed, 48))}
		o := all[m.IntN(len(all))]
		d := Deck{Running: Running{Number: "MD48-20", Title: m.words(7), Unit: m.words(4), Variant: m.maybe("early"), Revision: "B", Watch: m.maybe("DRAFT"), Note: m.maybe(m.words(6))}}
		s := Section{Name: "Steps"}
		for i := range 4 {
			g := Group{Breaks: m.IntN(3) == 0, Join: m.IntN(4) == 0}
			if m.IntN(3) > 0 {
				g.Elements = elements(Step{98 + i, m.runs(5)})
			}
			for range 1 + m.IntN(2) {
				g.Elements = append(g.Elements, Element{Ref: Ref(seed), Content: m.content()})
			}
			s.Groups = append(s.Groups, g)
		}
		d.Sections = []Section{s}
		sheets, problems := Layout(d, o)
		broken := false
		for _, p := range problems {
			broken = broken || p.Kind == TooTall || p.Kind == TooWide
			if p.Kind == MissingGlyph || p.Kind == NoSymbol {
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
				codeFree(t, o, sheet)
			})
		}
	}
}
