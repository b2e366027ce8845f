package compile

import (
	"context"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render/sheet"
)

// What the strip asks to write down has a box in its step too: a reading is
// written where it is taken. A wrench is set and gives none, a pattern is ticked,
// a hold point signed.
func TestEveryReadingHasABoxInItsStep(t *testing.T) {
	spaces, err := workspace.Load(".", []string{"../../../../procedures"}, nil, &diag.List{})
	if err != nil {
		t.Fatal(err)
	}
	none := regexp.MustCompile(`Hold point:|Set |until |Contact pattern`)
	var mu sync.Mutex
	boxes, rows := map[string]bool{}, map[string]string{}
	emit := func(m *Made) error {
		mu.Lock()
		defer mu.Unlock()
		deck := m.Card + " " + strings.Join(m.Variants, "+") + " "
		for _, s := range m.Sheets {
			for _, k := range s.Marks {
				step := ""
				for _, op := range s.Ops[k.From:k.To] {
					g, is := op.(sheet.Glyphs)
					if !is || k.Kind != "records" {
						continue
					}
					if _, err := strconv.Atoi(g.Text); err == nil && g.X == k.X {
						step = g.Text
					} else if step != "" {
						rows[deck+"step "+step] += g.Text + " "
					}
				}
			}
			for _, g := range s.Groups {
				for _, op := range s.Ops[g.From:g.To] {
					if r, is := op.(sheet.Rect); is && r.Role == sheet.WriteBox {
						boxes[deck+g.Name] = true
					}
				}
			}
		}
		return nil
	}
	for _, w := range spaces {
		Run(context.Background(), w, Options{Emit: emit}, &diag.List{})
	}
	seen := 0
	for step, says := range rows {
		if none.MatchString(says) {
			continue
		}
		if seen++; !boxes[step] {
			t.Errorf("%s has no box for: %s", step, says)
		}
	}
	if seen < 20 {
		t.Errorf("only %d steps with readings were seen", seen)
	}
}
