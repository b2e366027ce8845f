package compile

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

// TestSlips reads testdata/slips.md: slips that no page shows, written as the
// pages' examples are. Each gives one message at its mark.
func TestSlips(t *testing.T) {
	text, err := os.ReadFile("testdata/slips.md")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]int{}
	slug, section, fenced := "", "", false
	run := func() {
		if slug == "" {
			return
		}
		seen[slug]++
		name, s := fmt.Sprintf("%s-%d", slug, seen[slug]), pieces(section)
		slug := slug
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			one(t, slug, s)
		})
	}
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "~~~") {
			fenced = !fenced
		}
		if heading, ok := strings.CutPrefix(line, "## "); ok && !fenced {
			run()
			slug, section = strings.TrimSpace(heading), ""
			continue
		}
		section += line
	}
	run()
}
