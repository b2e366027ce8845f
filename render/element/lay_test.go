package element

import (
	"os"
	"regexp"
	"slices"
	"testing"
)

// Every content of the model has its case in Lay.
func TestLayKnowsEveryContent(t *testing.T) {
	names := func(file, pattern string) []string {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, m := range regexp.MustCompile(pattern).FindAllStringSubmatch(string(text), -1) {
			all = append(all, m[1])
		}
		slices.Sort(all)
		return all
	}
	model, here := names("../model.go", `(?m)^func \((\w+)\) +content\(\)`), names("lay.go", `case render\.(\w+):`)
	if len(model) < 20 || !slices.Equal(model, here) {
		t.Errorf("contents of the model %q\nthat have a case %q", model, here)
	}
}
