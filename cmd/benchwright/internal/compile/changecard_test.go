package compile

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render/sheet"
)

// A change card sums up on its first page, with a place to sign. Behind it stand
// the changed pages alone: a bar at each changed step, the old value struck
// through, the new one beside it in bold, and no check code.
func TestChangeCard(t *testing.T) {
	load := func(dir string) (*workspace.Workspace, []compare.Procedure) {
		spaces, err := workspace.Load(dir, []string{"."}, nil, &diag.List{})
		if err != nil {
			t.Fatal(err)
		}
		return spaces[0], Resolve(spaces[0], &diag.List{})
	}
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../../../procedures")); err != nil {
		t.Fatal(err)
	}
	change(t, dir, "md-48/unit.yaml", "late: {band: 115 ±5 N·m", "late: {band: 118 ±5 N·m")
	change(t, dir, "md-48/receive.md", "### Photograph the drive from six sides", "### Photograph the drive from seven sides")
	_, old := load("../../../../procedures")
	w, now := load(dir)
	report := compare.Sides(old, now)
	sheets := changeSheets(w, report)
	texts := func(s sheet.Sheet) string {
		var b strings.Builder
		for _, op := range s.Ops {
			if g, is := op.(sheet.Glyphs); is {
				b.WriteString(g.Text + "\n")
			}
		}
		return b.String()
	}
	first := texts(sheets[0])
	for _, say := range []string{"CHANGE CARD", "Take off the bench", "Print and hang", "Signature", "Unsafe without a new revision"} {
		if !strings.Contains(first, say) {
			t.Errorf("the first page does not say %q", say)
		}
	}
	struck := 0
	for _, s := range sheets[1:] {
		bar := false
		for i, op := range s.Ops {
			if r, is := op.(sheet.Rect); is && r.Fill == 0 && r.W < r.H && r.X > 7000 {
				bar = true
			}
			l, is := op.(sheet.Line)
			if !is || i == 0 {
				continue
			}
			if g, is := s.Ops[i-1].(sheet.Glyphs); is && l.X1 == g.X && l.X2 == g.X+g.Width && l.Y1 < g.Y && l.Y1 > g.Y-g.Size/2 {
				struck++
				if !strings.Contains(g.Text, "115") && !strings.Contains("Photograph the drive from six sides", g.Text) {
					t.Errorf("%q is struck through", g.Text)
				}
			}
		}
		if text := texts(s); !bar || !strings.Contains(text, "CHANGE CARD") || s.Code != "" {
			t.Errorf("page %q: bar %v, code %q", s.Name, bar, s.Code)
		}
	}
	if struck < 5 || len(sheets) != 4 { // receive; set-up and rebuild, late alone
		t.Errorf("%d texts are struck through on %d pages", struck, len(sheets))
	}
	text, n, err := ChangeCard(w, report)
	if err != nil || n != len(sheets) || !bytes.HasPrefix(text, []byte("%PDF")) {
		t.Errorf("%d pages, %v", n, err)
	}
}
