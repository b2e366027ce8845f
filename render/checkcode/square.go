package checkcode

import (
	"fmt"
	"strings"

	goqr "github.com/piglig/go-qr"

	"benchwright/render"
	"benchwright/render/sheet"
)

// Text returns what the QR code of a face holds: card number, revision, number
// of the face and check code, parted by blanks.
func Text(r render.Running, face int, c Code) string {
	return strings.Join(strings.Fields(fmt.Sprint(r.Number, " ", r.Revision, " ", face, " ", c)), " ")
}

// Square draws a text as a QR code: as large as fits an area in whole
// micrometers a module, in its middle. Nearly a third of its code words can be lost.
// The area does not include the quiet zone.
func Square(text string, area sheet.Rect) (sheet.Drawing, error) {
	q, err := goqr.EncodeText(text, goqr.High)
	if err != nil {
		return sheet.Drawing{}, fmt.Errorf("%q fits no QR code: %w", text, err)
	}
	n := q.Size()
	side := min(area.W, area.H) / n // of a module
	left, top := area.X+(area.W-n*side)/2, area.Y+(area.H-n*side)/2
	ink := sheet.Path{Fill: 0x000000, Stroke: sheet.NoColor}
	for row := range n {
		for from := 0; from < n; {
			to := from
			for to < n && q.Module(to, row) {
				to++
			}
			if to > from {
				x, y := left+from*side, top+row*side
				ink.Segs = append(ink.Segs, sheet.Seg{Verb: 'M', X: x, Y: y}, sheet.Seg{Verb: 'L', X: left + to*side, Y: y},
					sheet.Seg{Verb: 'L', X: left + to*side, Y: y + side}, sheet.Seg{Verb: 'L', X: x, Y: y + side}, sheet.Seg{Verb: 'Z'})
			}
			from = to + 1
		}
	}
	return sheet.Drawing{X: left, Y: top, W: n * side, H: n * side, Name: "check code", Alt: text, Ops: []sheet.Op{ink}}, nil
}
