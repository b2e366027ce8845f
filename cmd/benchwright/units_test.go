package main

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Every unit stands in the table of procedures/README.md, in the row of its kind.
func TestUnitsPage(t *testing.T) {
	page, err := os.ReadFile("../../procedures/README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, text, _ := strings.Cut(string(page), "\n# Units of measure\n")
	var got []string
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "| ") {
			got = append(got, strings.TrimSpace(line))
		}
	}
	want := []string{"| kind | units |"}
	for d := quantity.Length; d.String() != ""; d++ {
		var names []string
		for _, u := range quantity.Units(d) {
			names = append(names, "`"+u.Symbol+"`")
		}
		want = append(want, fmt.Sprintf("| %s | %s |", d, strings.Join(names, ", ")))
	}
	if !slices.Equal(got, want) {
		t.Errorf("procedures/README.md has\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
