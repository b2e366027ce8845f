package pdf

import (
	"sync"

	"github.com/go-pdf/fpdf"

	"benchwright/render/typeface"
)

// cutFonts are the faces cut to the repertoire, once a process: the PDF
// library parses a face anew for every file, so what it parses should be
// small. The cut gives every face a full metrics table, which is what makes
// sharing the bytes between goroutines safe: the library appends to the slice
// of a face whose table is shorter than its glyph count.
var cutFonts = [...]func() []byte{
	typeface.Regular:  cutOnce(typeface.Regular),
	typeface.Semibold: cutOnce(typeface.Semibold),
	typeface.Bold:     cutOnce(typeface.Bold),
}

func cutOnce(f typeface.Font) func() []byte {
	return sync.OnceValue(func() []byte { return fpdf.UTF8CutFont(typeface.File(f), typeface.Repertoire()) })
}
