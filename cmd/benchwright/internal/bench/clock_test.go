package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

func TestLatestEnds(t *testing.T) {
	for _, c := range []struct {
		within string
		rows   int
		at     int // a row
		want   ClockRow
	}{
		{"4", 0, 0, ClockRow{}},
		{"5", 30, 0, ClockRow{0, 5}},
		{"10", 30, 26, ClockRow{52, 2}}, // over the hour
		{"15/2", 30, 1, ClockRow{2, 9}}, // half a minute is cut off
		{"20", 12, 1, ClockRow{5, 25}},
		{"90", 48, 47, ClockRow{1410, 60}}, // 23:30 → 1:00
		{"240", 24, 8, ClockRow{480, 720}}, // 8:00 → 12:00
		{"720", 24, 0, ClockRow{0, 720}},
		{"721", 0, 0, ClockRow{}},
	} {
		got := LatestEnds(num(t, c.within))
		switch {
		case got == nil && c.rows == 0:
		case got == nil || len(got.Rows) != c.rows || got.Rows[c.at] != c.want:
			t.Errorf("%s min: %+v", c.within, got)
		}
	}
	if d, ok := WholeDays(num(t, "2880")); !ok || d != 2 {
		t.Errorf("48 h are %d days", d)
	}
	if d, ok := WholeDays(num(t, "2160")); ok {
		t.Errorf("36 h are %d days", d)
	}
}

// Whoever starts anywhere and reads the row at or before it has time left, and
// never more than is allowed.
func TestLatestEndsProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 12))
	for range 300 {
		within := big.NewRat(10+r.Int64N(1430), 2)
		c := LatestEnds(within)
		if c == nil {
			continue
		}
		round := 60
		if c.Hours {
			round = 24 * 60
		}
		start := r.IntN(round)
		row := c.Rows[0]
		for _, next := range c.Rows {
			if next.Start <= start {
				row = next
			}
		}
		whole := ((row.End-row.Start)%round + round) % round
		if left := whole - (start - row.Start); left <= 0 || big.NewRat(int64(whole), 1).Cmp(within) > 0 {
			t.Fatalf("started at %d within %s: the row %+v leaves %d min", start, within, row, left)
		}
	}
}
