package compile

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render/impose"
	"benchwright/render/sheet"
)

// Check returns an error for invalid options.
func (o Options) Check() error {
	names := strings.Join(Papers(), ", ")
	if p, ok := PaperOf(o.Paper); o.Paper != "" && (!ok || slices.Contains(sheetPapers, p.Name)) {
		return fmt.Errorf("no page size is called `%s`: the sizes are %s", o.Paper, names)
	}
	if _, ok := PaperOf(o.Sheet); !ok && o.Sheet != "" {
		return fmt.Errorf("no sheet is called `%s`: the sheets are %s, %s", o.Sheet, names, strings.Join(sheetPapers, ", "))
	}
	if o.Flip != "" && o.Sheet == "" {
		return fmt.Errorf("--flip says over which edge a larger sheet is flipped: name the sheet with --sheet")
	}
	if o.Flip != "" && o.Flip != "long" && o.Flip != "short" {
		return fmt.Errorf("`%s` is not an edge: write --flip long or --flip short, as the printer is set", o.Flip)
	}
	if o.WorkDate != "" && !shop.IsDate(o.WorkDate) {
		return fmt.Errorf("`%s` is not a date: write --on as year-month-day, as in --on 2026-11-25", o.WorkDate)
	}
	return nil
}

// imposeFaces puts faces on the larger sheet, four up if they fit, else two
// up.
func imposeFaces(faces []sheet.Sheet, o Options) ([]sheet.Sheet, error) {
	paper, _ := PaperOf(o.Sheet)
	i := impose.Plan{Paper: paper, Up: 4, Flip: impose.LongEdge}
	if o.Flip == "short" {
		i.Flip = impose.ShortEdge
	}
	if out, err := impose.Sheets(faces, i); err == nil {
		return out, nil
	}
	i.Up = 2
	return impose.Sheets(faces, i)
}

// sheetPapers are papers too large for a face, which carry several.
var sheetPapers = []string{"A3"}

// Papers returns the names of the face sizes.
func Papers() []string {
	var out []string
	for _, p := range sheet.Papers {
		if !slices.Contains(sheetPapers, p.Name) {
			out = append(out, p.Name)
		}
	}
	return out
}

// PaperOf returns the paper with a name, in any case.
func PaperOf(name string) (sheet.Paper, bool) {
	for _, p := range sheet.Papers {
		if strings.EqualFold(p.Name, name) {
			return p, true
		}
	}
	return sheet.Paper{}, false
}

func (lib *library) paper(o Options) sheet.Paper {
	names := []string{o.Paper}
	if lib.shop != nil {
		names = append(names, lib.shop.Paper)
	}
	for _, n := range append(names, "A4") {
		if p, ok := PaperOf(n); ok {
			return p
		}
	}
	panic("the paper A4 is gone")
}

// stripPapers are the papers of the record strip by face paper; A4 for others.
var stripPapers = map[string]string{"Letter": "Letter", "half-Letter": "Letter"}

func stripPaper(face sheet.Paper) sheet.Paper {
	p, _ := PaperOf(cmp.Or(stripPapers[face.Name], "A4"))
	return p
}
