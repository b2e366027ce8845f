package pdf_test

import (
	"bytes"
	"fmt"

	"benchwright/render/pdf"
	"benchwright/render/sheet"
)

// What the faces of the type cannot draw is refused, and nothing is written.
func ExampleWrite() {
	for _, text := range []string{"⌀ 32", "Ø 32"} {
		var file bytes.Buffer
		err := pdf.Write(&file, pdf.Info{Title: "Bore"}, []sheet.Sheet{{
			Width: 105000, Height: 148000, Name: "Bore",
			Ops: []sheet.Op{sheet.Glyphs{X: 8000, Y: 20000, Size: 4000, Text: text}},
		}})
		fmt.Printf("%q %v\n", file.Next(8), err)
	}
	// Output:
	// "" pdf: sheet 1 (Bore): operation 0: character '⌀' (U+2300) in "⌀ 32" is not in the embedded faces
	// "%PDF-1.3" <nil>
}
