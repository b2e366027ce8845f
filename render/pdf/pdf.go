// Package pdf writes sheets as a PDF. Equal sheets give equal bytes.
package pdf

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/go-pdf/fpdf"

	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// Info is the metadata of a PDF. Empty fields are left out.
type Info struct {
	Title, Author, Subject, Keywords string
	Language                         string // BCP 47
}

// Write writes the sheets as a PDF, one page for each. The bytes depend only
// on the arguments and the Go version. It is safe for concurrent use.
//
// For anything that layout should have refused (a character outside the
// repertoire, a link without an anchor, an image not made by package raster),
// it writes nothing and returns an error that names it.
func Write(w io.Writer, info Info, sheets []sheet.Sheet) error {
	if len(sheets) == 0 {
		return errors.New("pdf: no sheets")
	}
	p := &writer{anchors: map[string]int{}, images: map[string]placedImage{}, widths: map[int]bool{}}
	if err := p.open(info, sheets); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	for i, s := range sheets {
		if err := p.sheet(s); err != nil {
			return fmt.Errorf("pdf: sheet %d (%s): %w", i+1, s.Name, err)
		}
	}
	if err := p.outline(sheets); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	var plain bytes.Buffer
	if err := p.f.Output(&plain); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	if err := deflatePages(w, plain.Bytes(), len(sheets)); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// A writer draws on an fpdf document whose unit is the point. The library then
// computes only differences of numbers rounded here, so that fused arithmetic
// on another machine changes no digit.
type writer struct {
	f       *fpdf.Fpdf
	anchors map[string]int // the library's link numbers by name
	images  map[string]placedImage
	widths  map[int]bool // pixel widths of the images so far

	// The page's graphics state, so that only changes are written.
	text  textState
	pen   penState
	fill  sheet.Color
	miter bool // the miter limit is set
}

type textState struct {
	font typeface.Font
	size int
}

type penState struct {
	color      sheet.Color
	width      int
	dash       [4]int
	roundEnds  bool // ends
	roundJoins bool // joins are round
}

// maxSide is the longest side, in micrometers, that PDF readers accept: 14 400
// points.
const maxSide = 5_080_000

// languageTag matches a BCP 47 tag; the library writes it unescaped.
var languageTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)

func (p *writer) open(info Info, sheets []sheet.Sheet) error {
	for i, s := range sheets {
		if s.Width <= 0 || s.Height <= 0 || s.Width > maxSide || s.Height > maxSide {
			return fmt.Errorf("sheet %d (%s) is %s", i+1, s.Name, sheet.Millimeters(s.Width, s.Height))
		}
	}
	first := sheets[0]
	p.f = fpdf.NewCustom(&fpdf.InitType{
		OrientationStr: "P",
		UnitStr:        "pt",
		Size:           fpdf.SizeType{Wd: points(first.Width), Ht: points(first.Height)},
	})
	f := p.f
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetCatalogSort(true)
	f.SetCompression(false) // deflatePages compresses
	f.SetCreationDate(time.Unix(0, 0).UTC())
	f.SetModificationDate(time.Unix(0, 0).UTC())
	f.SetProducer("benchwright", true)
	for _, field := range []struct {
		name, value string
		set         func(string, bool)
	}{
		{"title", info.Title, f.SetTitle},
		{"author", info.Author, f.SetAuthor},
		{"subject", info.Subject, f.SetSubject},
		{"keywords", info.Keywords, f.SetKeywords},
	} {
		if err := checkText(field.value); err != nil {
			return fmt.Errorf("%s: %w", field.name, err)
		}
		if field.value != "" {
			field.set(field.value, true)
		}
	}
	if info.Language != "" {
		if !languageTag.MatchString(info.Language) {
			return fmt.Errorf("language %q is not a language tag", info.Language)
		}
		f.SetLang(info.Language)
	}
	for i, s := range sheets {
		for _, a := range s.Anchors {
			if _, twice := p.anchors[a.Name]; twice {
				return fmt.Errorf("anchor %q stands twice", a.Name)
			}
			p.anchors[a.Name] = f.AddLink()
			f.SetLink(p.anchors[a.Name], points(turnY(s, a.Y)), i+1)
		}
	}
	return f.Error()
}

// sheet draws one page.
func (p *writer) sheet(s sheet.Sheet) error {
	p.f.AddPageFormat("P", fpdf.SizeType{Wd: points(s.Width), Ht: points(s.Height)})
	p.text, p.pen, p.fill, p.miter = textState{}, penState{}, sheet.NoColor, false
	if s.Turned {
		p.f.RawWriteStr(fmt.Sprintf("q -1 0 0 -1 %.2f %.2f cm", points(s.Width), points(s.Height)))
	}
	for i, op := range s.Ops {
		if err := p.draw(s, op); err != nil {
			return fmt.Errorf("operation %d: %w", i, err)
		}
	}
	if s.Turned {
		p.f.RawWriteStr("Q")
	}
	return p.f.Error()
}

// outline writes the bookmarks. It runs after the pages, because bookmarks of
// imposed sheets are in the order of the faces, not of the pages.
func (p *writer) outline(sheets []sheet.Sheet) error {
	type entry struct {
		sheet.Bookmark
		page int
	}
	var all []entry
	for i, s := range sheets {
		for _, b := range s.Bookmarks {
			if err := checkText(b.Text); err != nil {
				return fmt.Errorf("bookmark %q: %w", b.Text, err)
			}
			all = append(all, entry{b, i + 1})
		}
	}
	if len(all) == 0 {
		return nil
	}
	slices.SortStableFunc(all, func(a, b entry) int { return cmp.Compare(a.Order, b.Order) })
	p.setFont(textState{font: typeface.Regular, size: 10_000}) // the library encodes bookmarks for the current font
	last := points(sheets[len(sheets)-1].Height)
	level := -1
	for _, b := range all {
		level = min(max(b.Level, 0), level+1) // a child needs a parent
		s := sheets[b.page-1]
		// The library measures every bookmark from the bottom of the last
		// page.
		y := last - points(s.Height) + points(turnY(s, b.Y))
		if y == -1 { // the library takes −1 for the current text position
			y = -1.01
		}
		p.f.SetPage(b.page)
		p.f.Bookmark(b.Text, level, y)
	}
	p.f.SetPage(len(sheets))
	return p.f.Error()
}

// turnY returns the position of y on the page of s.
func turnY(s sheet.Sheet, y int) int {
	if s.Turned {
		return s.Height - y
	}
	return y
}

// checkText refuses what would make the library panic, or is not allowed in a
// PDF string.
func checkText(s string) error {
	if !utf8.ValidString(s) {
		return fmt.Errorf("%q is not valid UTF-8", s)
	}
	for _, r := range s {
		if r > 0xFFFF || r < ' ' || r == 0x7F {
			return fmt.Errorf("character %q (%U) cannot stand in a PDF string", r, r)
		}
	}
	return nil
}

// checkGlyphs refuses characters that the fonts lack.
func checkGlyphs(s string) error {
	if !utf8.ValidString(s) {
		return fmt.Errorf("%q is not valid UTF-8", s)
	}
	if i := strings.IndexFunc(s, func(r rune) bool { return !typeface.Has(r) }); i >= 0 {
		r, _ := utf8.DecodeRuneInString(s[i:])
		return fmt.Errorf("character %q (%U) in %q is not in the embedded faces", r, r, s)
	}
	return nil
}

// points converts micrometers to points, rounded to 1/100 point: 25 400 µm are
// 72 points.
func points(um int) float64 {
	n := um * 72
	if n < 0 {
		return -points(-um)
	}
	return float64((n+127)/254) / 100
}
