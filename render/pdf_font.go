package render

import (
	"sync"

	"github.com/go-pdf/fpdf"
)

// cutFonts are the faces cut to the repertoire, once a process: the PDF
// library parses a face anew for every file, so what it parses should be
// small. The cut gives every face a full metrics table, which is what makes
// sharing the bytes between goroutines safe: the library appends to the slice
// of a face whose table is shorter than its glyph count.
var cutFonts = [...]func() []byte{
	FontRegular:  cutOnce(FontRegular),
	FontSemibold: cutOnce(FontSemibold),
	FontBold:     cutOnce(FontBold),
}

func cutOnce(f Font) func() []byte {
	return sync.OnceValue(func() []byte { return fpdf.UTF8CutFont(fontFile(f), cutset()) })
}
