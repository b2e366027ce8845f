// Package typeface holds the fonts of the cards: files, available characters,
// widths and heights.
package typeface

import (
	"fmt"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A Font is an embedded font.
type Font uint8

const (
	Regular Font = iota
	Semibold
	Bold
)

// Name returns the font's name in a dump and a PDF.
func (f Font) Name() string {
	if names := [...]string{"regular", "semibold", "bold"}; int(f) < len(names) {
		return names[f]
	}
	return fmt.Sprintf("font-%d", uint8(f))
}

// tableEnd is the first rune beyond the table of advances, and beyond the
// repertoire.
const tableEnd = 0x2800

// Missing is the advance of a rune that a font lacks.
const Missing = -1

// A metric holds the metrics of a font, in thousandths of the em.
type metric struct {
	font    *sfnt.Font
	upem    int
	cap     int // height of a capital
	advance [tableEnd]int16
}

// metrics parses the three fonts, once per process.
var metrics = sync.OnceValue(func() [3]*metric {
	var all [3]*metric
	for i := range all {
		m, err := readMetric(File(Font(i)))
		if err != nil {
			panic(fmt.Sprintf("render: embedded face %d: %v", i, err))
		}
		all[i] = m
	}
	return all
})

func readMetric(ttf []byte) (*metric, error) {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		return nil, err
	}
	var buf sfnt.Buffer
	m := &metric{font: f, upem: int(f.UnitsPerEm())}
	if m.cap, err = m.capital(&buf); err != nil {
		return nil, err
	}
	for r := range rune(tableEnd) {
		m.advance[r] = Missing
		if Has(r) {
			m.advance[r] = int16(m.measure(&buf, r))
		}
	}
	return m, nil
}

// capital measures the height of a capital's outline, rounded down. The height
// in the font's own tables is that of the family's tallest weight.
func (m *metric) capital(buf *sfnt.Buffer) (int, error) {
	g, err := m.font.GlyphIndex(buf, 'H')
	if err != nil {
		return 0, err
	}
	outline, err := m.font.LoadGlyph(buf, g, fixed.Int26_6(m.upem), nil)
	if err != nil {
		return 0, err
	}
	return int(-outline.Bounds().Min.Y) * 1000 / m.upem, nil
}

// thousandths converts font units to thousandths of the em, rounded half up,
// like the table of widths of the PDF writer.
func (m *metric) thousandths(v fixed.Int26_6) int {
	return (int(v)*2000 + m.upem) / (2 * m.upem)
}

// measure returns the advance of r from the font file, or Missing.
func (m *metric) measure(buf *sfnt.Buffer, r rune) int {
	g, err := m.font.GlyphIndex(buf, r)
	if err != nil || g == 0 {
		return Missing
	}
	a, err := m.font.GlyphAdvance(buf, g, fixed.Int26_6(m.upem), font.HintingNone)
	if err != nil {
		return Missing
	}
	return m.thousandths(a)
}

// Advance returns the advance of r in font f, in thousandths of the em, or
// Missing if the repertoire lacks it.
func Advance(f Font, r rune) int {
	if r == faceDigit {
		r = '0'
	}
	if r < 0 || r >= tableEnd {
		return Missing
	}
	return int(metrics()[f].advance[r])
}

// faceDigit is a rune of FaceOf; all digits have the same width.
const faceDigit = '\uE000'

// CapHeight returns the height of a capital at a size.
func CapHeight(f Font, size int) int { return metrics()[f].cap * size / 1000 }

// Width returns the width of s at a size; runes that the font lacks count as
// zero.
func Width(f Font, size int, s string) int {
	sum := 0
	for _, r := range s {
		sum += max(Advance(f, r), 0)
	}
	return Scaled(sum, size)
}

// Scaled converts thousandths of an em to micrometers, rounded half up.
func Scaled(thousandths, size int) int { return (thousandths*size + 500) / 1000 }
