// Package typeface is the type of the cards: its files, what characters it
// carries, and how wide and how tall they stand.
package typeface

import (
	"fmt"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A Font is one of the embedded faces.
type Font uint8

// The faces, by weight.
const (
	Regular Font = iota
	Semibold
	Bold
)

// Name is the face's name, in a dump and in a PDF.
func (f Font) Name() string {
	if names := [...]string{"regular", "semibold", "bold"}; int(f) < len(names) {
		return names[f]
	}
	return fmt.Sprintf("font-%d", uint8(f))
}

// tabled is the first rune behind the table of advances: the repertoire ends
// before it.
const tabled = 0x2800

// Missing marks a rune that a face does not have.
const Missing = -1

// A metric is what layout knows of one face. Lengths are thousandths of the
// em.
type metric struct {
	font    *sfnt.Font
	upem    int
	cap     int // height of a capital
	advance [tabled]int16
}

// metrics reads the three faces, once a process.
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
	for r := range rune(tabled) {
		m.advance[r] = Missing
		if Has(r) {
			m.advance[r] = int16(m.measure(&buf, r))
		}
	}
	return m, nil
}

// capital measures a capital on its outline, rounded down: what a face says of
// itself is the height of its tallest weight.
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

// thousandths turns font units into thousandths of the em, halves upward, as
// the PDF writer's own table of widths has them.
func (m *metric) thousandths(v fixed.Int26_6) int {
	return (int(v)*2000 + m.upem) / (2 * m.upem)
}

// measure asks the face itself for the advance of r, or none.
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

// Advance is how far r moves the pen in face f, in thousandths of the em, or
// none where the faces do not carry it.
func Advance(f Font, r rune) int {
	if r == faceDigit {
		r = '0'
	}
	if r < 0 || r >= tabled {
		return Missing
	}
	return int(metrics()[f].advance[r])
}

// faceDigit is a digit of FaceOf: figures are all as wide as each other.
const faceDigit = '\uE000'

// CapHeight is the height of a capital set at size.
func CapHeight(f Font, size int) int { return metrics()[f].cap * size / 1000 }

// Width is the width of s set at size; runes that the face lacks count
// nothing.
func Width(f Font, size int, s string) int {
	sum := 0
	for _, r := range s {
		sum += max(Advance(f, r), 0)
	}
	return Scaled(sum, size)
}

// Scaled turns thousandths of an em into micrometres, halves upward.
func Scaled(thousandths, size int) int { return (thousandths*size + 500) / 1000 }
