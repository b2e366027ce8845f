package deck

import (
	"slices"
	"testing"

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
