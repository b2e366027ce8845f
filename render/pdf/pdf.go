// Package pdf writes sheets as a PDF, the same bytes for the same sheets.
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

// Info is what a PDF says about itself. Empty fields are left out.
type Info struct {
	Title, Author, Subject, Keywords string
	Language                         string // BCP 47
}

// Write writes the sheets as one PDF, a page a sheet. The bytes depend on
// nothing but the arguments and the Go version. It may run in several
// goroutines at once.
//
// What layout should have refused (a character outside the Repertoire, a link
// to no anchor, a foreign image) comes back as an error that names it;
// nothing is written then.
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

// A pdfWriter draws on one fpdf document, whose unit is the point. All that
// the library computes is then a difference of numbers that were rounded here,
// so that fused arithmetic on another machine changes no digit.
type writer struct {
	f       *fpdf.Fpdf
	anchors map[string]int // name to the library's link number
	images  map[string]placedImage
	widths  map[int]bool // pixel widths taken by images

	// What the page's graphics state is, so that only changes are written.
	text  textState
	pen   penState
	fill  sheet.Color
	miter bool // the limit of pointed joins is set
}

type textState struct {
	font typeface.Font
	size int
}

type penState struct {
	color sheet.Color
	width int
	dash  [4]int
	round bool // ends
	bent  bool // joins are round
}

// The longest side that PDF readers agree on: 14 400 points.
const maxSide = 5_080_000

// languageTag is the shape of a BCP 47 tag; the library writes it unescaped.
var languageTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)

func (p *writer) open(info Info, sheets []sheet.Sheet) error {
	for i, s := range sheets {
		if s.Width <= 0 || s.Height <= 0 || s.Width > maxSide || s.Height > maxSide {
			return fmt.Errorf("sheet %d (%s) is %s", i+1, s.Name, sheet.Millimetres(s.Width, s.Height))
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
	f.SetCompression(false) // deflatePages does it
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

// outline writes the bookmarks. It comes after the pages, because bookmarks of
// imposed sheets stand in the order of the faces and not of the pages.
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
	p.setFont(textState{font: typeface.Regular, size: 10_000}) // the library encodes a bookmark as the current face asks
	last := points(sheets[len(sheets)-1].Height)
	level := -1
	for _, b := range all {
		level = min(max(b.Level, 0), level+1) // a child needs a parent
		s := sheets[b.page-1]
		// The library measures every bookmark from the foot of the last page.
		y := last - points(s.Height) + points(turnY(s, b.Y))
		if y == -1 { // its word for "where the text cursor is"
			y = -1.01
		}
		p.f.SetPage(b.page)
		p.f.Bookmark(b.Text, level, y)
	}
	p.f.SetPage(len(sheets))
	return p.f.Error()
}

// turnY is where the height y of s comes to lie on its page.
func turnY(s sheet.Sheet, y int) int {
	if s.Turned {
		return s.Height - y
	}
	return y
}

// checkText refuses what the library would panic at, or what no PDF string
// should hold.
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

// checkGlyphs refuses what the faces cannot draw.
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

// points converts micrometres to points, rounded to 1/100 point: 25 400 µm are
// 72 points.
func points(um int) float64 {
	n := um * 72
	if n < 0 {
		return -points(-um)
	}
	return float64((n+127)/254) / 100
}
