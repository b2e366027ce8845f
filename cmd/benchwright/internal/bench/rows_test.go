package bench

import "testing"

func TestCheckRows(t *testing.T) {
	rows := func(list ...string) (out []Row) {
		for i := 0; i < len(list); i += 2 {
			out = append(out, Row{num(t, list[i]), num(t, list[i+1])})
		}
		return out
	}
	for _, c := range []struct {
		why   string
		rows  []Row
		fault RowFault
		at    int
	}{
		// Published, but wrong: a public truck manual has these rows beside each
		// other; an inch reader at 0.191 has no row.
		{"the inches of a truck manual", rows("0.180", "0.190", "0.192", "0.201"), RowHole, 1},
		{"its millimeters", rows("4.574", "4.843", "4.844", "5.113"), RowsGood, 0},
		{"fixed", rows("0.180", "0.190", "0.191", "0.201"), RowsGood, 0},
		{"a mark in both", rows("0.180", "0.190", "0.190", "0.201"), RowOverlap, 1},
		{"falling", rows("0.191", "0.201", "0.180", "0.190"), RowOverlap, 1},
		{"backward", rows("0.180", "0.190", "0.201", "0.191"), RowBackward, 1},
		{"none", nil, RowsGood, 0},
	} {
		if fault, at := CheckRows(c.rows, num(t, "0.001")); fault != c.fault || at != c.at {
			t.Errorf("%s: fault %d at %d", c.why, fault, at)
		}
	}
}
