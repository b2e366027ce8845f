package compile

import (
	"context"
	"strings"
	"sync"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render/layout"
	"benchwright/render/sheet"
)

// A step is never parted, so that columns end early; where a page ends, less than
// 15 % of its body may be left on A4. The test prints what is left at the ends of
// all columns too, and for A5.
func TestLittleWhiteIsLeft(t *testing.T) {
	spaces, err := workspace.Load(".", []string{"../../../../procedures"}, nil, &diag.List{})
	if err != nil {
		t.Fatal(err)
	}
	for _, paper := range []string{"A4", "A5"} {
		p, _ := PaperOf(paper)
		columns := layout.Columns(layout.Options{Paper: p})
		var body, atColumns, atPages int
		var mu sync.Mutex
		emit := func(m *Made) error {
			mu.Lock()
			defer mu.Unlock()
			for _, s := range m.Sheets {
				if m.Strip || !strings.HasPrefix(s.Name, "Step") {
					continue
				}
				for i, c := range columns {
					left := c.Y + c.H - lowest(s, c)
					body, atColumns = body+c.H, atColumns+left
					if i == len(columns)-1 {
						atPages += left
					}
				}
			}
			return nil
		}
		for _, w := range spaces {
			Run(context.Background(), w, Options{Paper: paper, Emit: emit}, &diag.List{})
		}
		percent := func(n int) float64 { return 100 * float64(n) / float64(body) }
		t.Logf("%s: %.1f %% white where pages end, %.1f %% where columns end", paper, percent(atPages), percent(atColumns))
		if body == 0 || paper == "A4" && percent(atPages) > 15 {
			t.Errorf("%s: too much white", paper)
		}
	}
}

// lowest is how far down groups stand in a column.
func lowest(s sheet.Sheet, column sheet.Rect) int {
	y := column.Y
	for _, g := range s.Groups {
		if g.X+g.W > column.X && g.X < column.X+column.W {
			y = max(y, g.Y+g.H)
		}
	}
	return y
}
