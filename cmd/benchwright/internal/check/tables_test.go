package check

import (
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
)

// Each table is its head and its rows; ¦ parts two columns.
func TestTableHoles(t *testing.T) {
	for _, c := range []struct {
		shop, table, at, message string // "" where nothing is wrong
	}{
		// Published, but wrong: two rows of a public truck manual, in inches
		// alone, beside the millimeters and behind them.
		{"", "Reading, in; 0.180 to 0.190; 0.192 to 0.201", "0.192 to 0.201", "0.191 in lies in no row of this table"},
		{"", "Reading; 0.180–0.190 in; 0.192–0.201 in", "0.192–0.201 in", "0.191 in lies in no row of this table"},
		{"", "mm ¦ in; 4.574-4.843 ¦ 0.180-0.190; 4.844-5.113 ¦ 0.192-0.201", "0.192-0.201", "0.191 in lies in no row of this table"},
		{"", "Reading (in) ¦ Reading (mm); 0.180..0.190 ¦ 4.574..4.843; 0.192..0.201 ¦ 4.844..5.113", "0.192..0.201", "0.191 in lies in no row of this table"},
		{"", "Reading, mm; 4.574 to 4.843; 4.844 to 5.113", "", ""},
		{"", "Reading, in; 0.180 to 0.190; 0.191 to 0.201", "", ""},
		// Falling rows, no unit, a comma, a hole of several marks, open ends.
		{"", "Gap; 0.23 to 0.27; 0.18 to 0.21; 0.14 to 0.17", "0.23 to 0.27", "0.22 lies in no row of this table"},
		{"decimal: comma\n", "Gap, mm; 0,18 to 0,22; 0,23 to 0,27; 0,33 to 0,37", "0,33 to 0,37", "0,28 to 0,32 mm lie in no row of this table"},
		{"", "Gap, mm; below 0.18; 0.18 to 0.22; 0.24 to 0.28; 0.29 and over", "0.24 to 0.28", "0.23 mm lies in no row of this table"},
		{"", "Gap, mm; 0 to 0.05; 0.07 to 0.15", "0.07 to 0.15", "0.06 mm lies in no row of this table"},
		{"", "Gap, mm; 0.18 to 0.20; 0.22 to 0.30", "", ""}, // a mark beside a row of three: wide
		{"", "Gap, mm; 0 to 0.05; 0.06 to 0.10; 0.12 to 0.15", "0.12 to 0.15", "0.11 mm lies in no row of this table"},
		{"", "Gap, mm; 0.10 to 0.10; 0.11 to 0.20; 0.22 to 0.30", "0.22 to 0.30", "0.21 mm lies in no row of this table"},
		{"", "Shaft, mm; over 10 to 18; over 19 to 30", "over 19 to 30", "19 mm lies in no row of this table"},
		{"", "Gap, mm; 0.10 to 0.17; 0.20 to 0.27", "0.20 to 0.27", "0.18 to 0.19 mm lie in no row of this table"}, // a quarter of either row
		{"", "Gap, mm; 0.10 to 0.16; 0.19 to 0.25", "", ""},                                                        // more
		// Overlaps.
		{"", "Gap, mm; 0.10 to 0.15; 0.15 to 0.20; 0.20 to 0.25", "0.15 to 0.20", "0.15 mm lies in two rows of this table"},
		{"", "Gap, mm; 0.10 to 0.15; 0.16 to 0.20; 0.19 to 0.25", "0.19 to 0.25", "0.19 to 0.20 mm lie in two rows of this table"},
		{"", "Oven; 20 to 60 °C; 61 to 90 °C; 90 to 110 °C", "90 to 110 °C", "90 °C lies in two rows of this table"},
		// No row of these is looked up: they are limits of several things, rows
		// that share on purpose, or have no marks.
		{"", "Shaft, mm; over 10 to 18; over 18 to 30; over 30 to 50", "", ""},
		{"", "Air ¦ Oil; -10 to 30 °C ¦ thin; 10 to 45 °C ¦ thick", "", ""},
		{"", "Air ¦ Oil; -10 to 30 °C ¦ thin; 31 to 40 °C ¦ mid; 35 to 50 °C ¦ thick", "", ""},
		{"", "Torque ¦ Bolt; 20 to 25 N·m ¦ cover; 28 to 34 N·m ¦ flange; 95 to 105 N·m ¦ nut", "", ""},
		{"", "Torque ¦ Bolt; 20 to 25 N·m ¦ cover; 95 to 105 N·m ¦ nut; 28 to 34 N·m ¦ flange", "", ""},
		{"", "Limit; 0.180 to 0.190 in; 4.8 to 5.1 mm", "", ""},
		{"", "Limit, in; 0.180 to 0.190 mm; 0.192 to 0.201 mm", "", ""},
		{"", "Limit; 0.180 to 0.190 doors; 0.192 to 0.201 doors", "", ""},
		{"", "Limit, mm; 0.18 to 0.2; 0.22 to 0.3", "", ""},
		{"", "Limit, mm; 0,10 to 0,20; 0,22 to 0,40", "", ""}, // no number here
		{"", "Limit, mm; 0.10 to 0.50; 0.20 to 0.30; 0.31 to 0.60", "", ""},
		{"", "Limit, mm; 0.18 to 0.20; none; 0.22 to 0.30", "", ""},
		{"", "Limit, mm; 0.18 to 0.20; 0.18 to 0.20", "", ""},
		{"", "Limit, mm; 0.20 to 0.18; 0.30 to 0.22", "", ""},
		{"", "Limit, mm; 0.18 to 0.20", "", ""},
		{"", "Mark; 1; 2; 4", "", ""},
		{"", "mm ¦ in; 4.574 to 4.843 ¦ 0.180 to 0.183; 4.844 to 5.113 ¦ 0.191 to 0.194; 5.114 to 5.383 ¦ 0.195 to 0.198", "", ""}, // not the same again
		{"", "Pack, mm ¦ Over it, mm; 0.10 to 0.20 ¦ 0.94 to 0.97; 0.21 to 0.30 ¦ 0.99 to 1.02", "", ""},
		{"", "Gap, in ¦ Pack, mm; 0.010 to 0.020 ¦ 0.70 to 0.80; 0.021 to 0.030 ¦ 0.82 to 0.92", "", ""},
	} {
		rows := strings.Split(c.table, "; ")
		columns := strings.Count(rows[0], "¦") + 1
		text := testFront + "### Look\n\n| " + strings.ReplaceAll(rows[0], "¦", "|") + " |\n|" + strings.Repeat("---|", columns) + "\n"
		for _, r := range rows[1:] {
			text += "| " + strings.ReplaceAll(r, "¦", "|") + " |\n"
		}
		m := cardOf(t, c.shop+testShop, text, "")
		list := &diag.List{}
		tableHoles(&pass{Card: m.card, msgs: list})
		at, message := "", ""
		for _, d := range list.Sorted() {
			at, message = at+strings.TrimSpace(d.At.Text()), message+d.Message
		}
		if message != c.message || at != c.at {
			t.Errorf("%s\n got %q at %q\nwant %q at %q", c.table, message, at, c.message, c.at)
		}
	}
}
