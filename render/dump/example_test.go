package dump_test

import (
	"os"

	"benchwright/render/dump"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

func ExampleWrite() {
	dump.Write(os.Stdout, []sheet.Sheet{{
		Width: 148000, Height: 210000, Name: "Step 1 of 1",
		Groups: []sheet.Group{{Name: "step 1", Area: sheet.Area{X: 10000, Y: 24500, W: 128000, H: 10800}, From: 0, To: 2}},
		Ops: []sheet.Op{
			sheet.Glyphs{X: 20800, Y: 32200, Width: 39000, Size: 6061, Font: typeface.Bold, Text: "Loosen the nut"},
			sheet.Rect{X: 129300, Y: 26000, W: 8400, H: 8400, Fill: sheet.NoColor, StrokeWidth: 600, Role: sheet.TickBox},
		},
	}})
	// Output:
	// sheet 148000×210000 "Step 1 of 1"
	// step 1 at 10000,24500 size 128000×10800, 2 ops
	//   text 10800,7700 bold 6061 w 39000 "Loosen the nut"
	//   tick-box 119300,1500 8400×8400 stroke 000000 600
}
