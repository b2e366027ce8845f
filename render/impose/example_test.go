package impose_test

import (
	"fmt"

	"benchwright/render/impose"
	"benchwright/render/sheet"
)

// Three A5 faces, two up on A4: 1 and 3 on the front, 2 behind 1.
func ExampleSheets() {
	faces := []sheet.Sheet{
		{Name: "1", Width: 148000, Height: 210000},
		{Name: "2", Width: 148000, Height: 210000},
		{Name: "3", Width: 148000, Height: 210000},
	}
	a4 := sheet.Paper{Name: "A4", Width: 210000, Height: 297000}
	sheets, err := impose.Sheets(faces, impose.Plan{Paper: a4, Up: 2, Flip: impose.ShortEdge})
	for _, s := range sheets {
		fmt.Println(s.Width, s.Height, s.Name)
	}
	_, tooLarge := impose.Sheets(faces, impose.Plan{Paper: a4, Up: 4})
	fmt.Println(err, tooLarge)
	// Output:
	// 297000 210000 Sheet 1 front: 1 | 3
	// 297000 210000 Sheet 1 back: 2
	// <nil> 4 pages of 148 × 210 mm do not fit on A4 (210 × 297 mm)
}
