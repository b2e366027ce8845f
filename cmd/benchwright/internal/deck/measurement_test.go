package deck

import (
	"math/big"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// A spread is a table whatever bounds the readings: for each lowest reading the
// highest that may stand beside it, none past what the readings may be at all.
func TestSpreadTable(t *testing.T) {
	for _, c := range []struct {
		limits string
		want   []string
	}{
		{"limits: 0.15 to 0.19 mm\nsource: manual\nif-low: Note it.\nif-high: Note it.", []string{"0.15 0.17", "0.16 0.18", "0.17 up 0.19"}},
		{"limits: max 0.03 mm\nsource: manual\nif-high: Note it.", []string{"0.00 0.02", "0.01 up 0.03"}},
		{"limits: none\nbecause: It feeds a table.\nexpect: 6.10 to 6.13 mm", []string{"6.10 6.12", "6.11 up 6.13"}},
	} {
		d := deckOf(t, "### A\n\n```measurement\nof: Gap\ngauge: dial-indicator\nrecord: [a, b]\nuse: each\nspread: max 0.02 mm\n"+c.limits+"\n```\n")
		var got []string
		for _, s := range d.Sections {
			for _, g := range s.Groups {
				for _, e := range g.Elements {
					if table, ok := e.Content.(render.Table); ok && table.Large {
						for _, row := range table.Rows {
							got = append(got, words(row[0])+" "+words(row[1]))
						}
					}
				}
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.limits, got, c.want)
		}
	}
}

// A gauge that can be zeroed anywhere reads a spread from the lowest reading on,
// on its own marks: no table is needed, and the strip says so too. A backlash
// has a zero of its own, and keeps the table.
func TestSpreadFromLowest(t *testing.T) {
	d := deckOf(t, "### A\n\n```measurement\nof: Runout\ngauge: lever\nrecord: [a, b]\nuse: each\nspread: max 0.05 mm\nlimits: 0.15 to 0.25 mm\nsource: manual\nif-low: Note it.\nif-high: Note it.\n```\n\n"+
		"```measurement\nof: Gap\ngauge: dial-indicator\nrecord: [a, b]\nuse: each\nspread: max 0.05 mm\nlimits: 0.15 to 0.25 mm\nsource: manual\nif-low: Note it.\nif-high: Note it.\n```\n\n"+
		"```lash\nof: Lash\ngauge: lever\nmeasured: tangent\nat: 40 mm\nturned: gear\nfigure: none\nrecord: [a, b]\nuse: each\nspread: max 0.05 mm\nlimits: 0.15 to 0.25 mm\nholds: {measured: tangent, at: 40 mm, turned: gear}\nsource: manual\nif-low: Note it.\nif-high: Note it.\n```\n")
	var notes []string
	tables := 0
	for _, e := range d.Sections[1].Groups[1].Elements {
		switch c := e.Content.(type) {
		case render.Reading:
			notes = append(notes, joined(c.Lines))
		case render.Table:
			tables++
		}
	}
	if tables != 2 || len(notes) != 3 || notes[0] != "Zero the lever indicator at the lowest reading. Highest: at most 0.04 mm." || notes[1] != wordSpreadToo || !strings.HasSuffix(notes[2], wordSpreadToo) {
		t.Errorf("%d tables, %q", tables, notes)
	}
}

// Marks that allow the same are one row.
func TestByMarkJoins(t *testing.T) {
	row := func(mark int, low, high int64) card.MarkRow {
		s := quantity.Scale{Unit: quantity.MustUnit("mm"), Step: big.NewRat(1, 50)}
		return card.MarkRow{Mark: mark, Marks: &quantity.Marks{Scale: s, Low: big.NewRat(low, 50), High: big.NewRat(high, 50)}}
	}
	b := newBuilder(&card.Card{Procedure: &procedure.Procedure{}})
	got := b.byMark(&card.Measurement{Table: &unit.Table{Mark: "pinion-mark"}, Gauge: &shop.Gauge{Scale: quantity.Scale{Unit: quantity.MustUnit("mm")}},
		Rows: []card.MarkRow{row(-2, 10, 14), row(-1, 11, 14), row(0, 11, 14), row(1, 11, 14), row(2, 12, 15)}})
	var rows []string
	for _, r := range got.Rows {
		rows = append(rows, words(r[0])+": "+words(r[1]))
	}
	if want := []string{"−2: 0.20 to 0.28", "−1 to +1: 0.22 to 0.28", "+2: 0.24 to 0.30"}; !slices.Equal(rows, want) {
		t.Errorf("%q, want %q", rows, want)
	}
}

// Whether a reading has a box as found follows the writer's word, else the kind
// of card.
func TestAsFoundBoxes(t *testing.T) {
	for _, c := range []struct {
		kind  procedure.Kind
		key   string
		boxes []string
	}{
		{procedure.General, "", []string{wordAsFound, wordAsLeft}},
		{procedure.General, "as-found: yes\n", []string{wordAsFound}},
		{procedure.General, "as-found: no\n", []string{""}},
		{procedure.Strip, "", []string{wordAsFound}},
		{procedure.Strip, "as-found: no\n", []string{""}},
		{procedure.Inspect, "as-found: no\n", []string{""}},
	} {
		made := cardIn(t, "### A\n\n```measurement\nof: Gap\ngauge: dial-indicator\n"+c.key+"limits: 0.15 to 0.19 mm\nsource: manual\nif-low: Note it.\nif-high: Note it.\n```\n")
		made.Procedure.Kind = c.kind
		b := newBuilder(made)
		rows := b.measurementRows(made.Steps()[0].Items[0].(*card.Measurement))
		if got := rows[0].readings(); !slices.Equal(got, c.boxes) {
			t.Errorf("%s %q: boxes %q, want %q", c.kind, c.key, got, c.boxes)
		}
	}
}
