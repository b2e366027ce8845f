package render

import (
	_ "embed"
	"sync"

	"github.com/go-pdf/fpdf"
)

// The faces as their makers gave them (fonts/LICENSE_FONT, SIL OFL 1.1).
var (
	//go:embed fonts/SourceSans3_400Regular.ttf
	regularTTF []byte
	//go:embed fonts/SourceSans3_600SemiBold.ttf
	semiboldTTF []byte
	//go:embed fonts/SourceSans3_700Bold.ttf
	boldTTF []byte
)

// fontFile is the uncut TrueType file of a face. It is shared: read only.
func fontFile(f Font) []byte {
	switch f {
	case FontSemibold:
		return semiboldTTF
	case FontBold:
		return boldTTF
	}
	return regularTTF
}

// fontNames are the faces' names, in a dump and in a PDF.
var fontNames = [...]string{
	FontRegular:  "regular",
	FontSemibold: "semibold",
	FontBold:     "bold",
}

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
