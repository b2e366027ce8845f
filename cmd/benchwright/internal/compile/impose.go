package compile

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/render"
)

// Check says what is wrong with the options themselves, nil for nothing.
func (o Options) Check() error {
	names := strings.Join(Papers(), ", ")
	if p, ok := PaperOf(o.Paper); o.Paper != "" && (!ok || slices.Contains(sheetOnly, p.Name)) {
		return fmt.Errorf("no face is called `%s`: the sizes are %s", o.Paper, names)
	}
	if _, ok := PaperOf(o.Sheet); !ok && o.Sheet != "" {
		return fmt.Errorf("no sheet is called `%s`: the sheets are %s, %s", o.Sheet, names, strings.Join(sheetOnly, ", "))
	}
	if o.Turn != "" && o.Sheet == "" {
		return fmt.Errorf("--turn says how a larger sheet is turned: name the sheet with --sheet")
	}
	if o.Turn != "" && o.Turn != "long" && o.Turn != "short" {
		return fmt.Errorf("`%s` is no edge: write --turn long or --turn short, as the printer is set", o.Turn)
	}
	if o.On != "" && !shop.IsDate(o.On) {
		return fmt.Errorf("`%s` is no date: write --on as year-month-day, as in --on 2026-11-25", o.On)
	}
	return nil
}

// impose puts faces two up on the larger sheet.
func impose(faces []render.Sheet, o Options) ([]render.Sheet, error) {
	paper, _ := PaperOf(o.Sheet)
	i := render.Imposition{Paper: paper, Up: 2, Flip: render.LongEdge}
	if o.Turn == "short" {
		i.Flip = render.ShortEdge
	}
	return render.Impose(faces, i)
}
