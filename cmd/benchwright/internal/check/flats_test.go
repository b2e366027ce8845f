package check

import (
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// The sizes are those of the tables in bench/flats_test.go.
func TestFlats(t *testing.T) {
	for _, c := range []struct{ fastener, message, fix string }{
		{"thread: M10, across-flats: 16 mm, duty: clamp", "", ""},
		{"thread: M10, across-flats: 17 mm, duty: clamp", "", ""}, // older, and in use
		{"thread: M10x1.25, across-flats: 15 mm, duty: clamp", "a hexagon bolt of M10×1.25 is 16 mm (ISO 4014) or 17 mm (older, DIN 933) across flats, not 15 mm",
			"look at the bolt: write `16 mm`, or `drive: special` if its head is in no table"},
		{"thread: M10x1.25, across-flats: 15 mm, duty: clamp, drive: special", "", ""},
		{"thread: 3/8-16 UNC, across-flats: 9/16 in, duty: clamp", "", ""},
		{"thread: 3/8-16 UNC, across-flats: 14 mm, duty: clamp", "a hexagon bolt of 3/8-16 UNC is 9/16 in (ASME B18.2.1) across flats, not 14 mm",
			"look at the bolt: write `9/16 in`, or `drive: special` if its head is in no table"},
		{"thread: M8, across-flats: 1/2 in, duty: to-yield", "a hexagon bolt of M8 is 13 mm (ISO 4014) across flats, not 1/2 in",
			"look at the bolt: write `13 mm`, or `drive: special` if its head is in no table"},
		{"thread: M8, across-flats: 6 mm, duty: clamp", "a hexagon bolt of M8 is 13 mm (ISO 4014) across flats, not 6 mm", "write `drive: socket` if a key turns it"},
		{"thread: M8, across-flats: 6 mm, duty: clamp, drive: socket", "", ""},
		{"thread: M8, across-flats: 5 mm, duty: clamp, drive: socket", "the key of a socket screw of M8 is 6 mm (ISO 4762) across flats, not 5 mm",
			"look at the bolt: write `6 mm`, or `drive: special` if its head is in no table"},
		// What is no bolt has no row, nor has a thread that the tables leave out.
		{"thread: M24x1.5, across-flats: 41 mm, duty: bearing-nut", "", ""},
		{"thread: M18x1.5, across-flats: 24 mm, duty: plug", "", ""},
		{"thread: M10, across-flats: 15 mm", "", ""},
		{"thread: M160x2, across-flats: 180 mm, duty: clamp", "", ""},
		{"thread: M10, duty: clamp", "", ""},
		{"across-flats: 15 mm, duty: clamp", "", ""},
	} {
		msgs := &diag.List{}
		u := unit.Read(syntax.ReadTree(source.NewFile("unit.yaml", []byte("unit: a\ntitle: A\nfasteners:\n  b: {"+c.fastener+"}\n")), msgs), quantity.Point, msgs)
		Unit(u, quantity.Point, msgs)
		message, fix := "", ""
		for _, d := range msgs.Sorted() {
			message, fix = message+d.Message, fix+d.Fix
		}
		if message != c.message || fix != c.fix {
			t.Errorf("%s\n got %q, %q\nwant %q, %q", c.fastener, message, fix, c.message, c.fix)
		}
	}
}
