package pdf

import (
	"sync"

	"github.com/go-pdf/fpdf"

	"benchwright/render/typeface"
)

// cutFonts are the fonts subset to the repertoire, made once per process: the
// PDF library parses the fonts again for every file, so they should be small.
// Each subset has a complete metrics table, which makes it safe to share the
// bytes between goroutines: the library appends to the slice of a font whose
// table is shorter than its glyph count.
var cutFonts = [...]func() []byte{
	typeface.Regular:  cutOnce(typeface.Regular),
	typeface.Semibold: cutOnce(typeface.Semibold),
	typeface.Bold:     cutOnce(typeface.Bold),
}

func cutOnce(f typeface.Font) func() []byte {
	return sync.OnceValue(func() []byte { return fpdf.UTF8CutFont(typeface.File(f), typeface.Repertoire()) })
}
