package compile

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"benchwright/cmd/benchwright/internal/compare"
)

// BenchmarkCompare compares two workspaces of 1 000 procedures made from the
// demo's, in one of which a single limit of one unit is another, and prints the
// seconds and their ratio to those of a check of one of the two. No test depends
// on them.
func BenchmarkCompare(b *testing.B) {
	before, after := generate(b, 1000), generate(b, 1000)
	name := filepath.Join(after, "set-500", "md-48", "unit.yaml")
	text, err := os.ReadFile(name)
	was, is := "band: 20 to 24 N·m, source: \"workshop", "band: 21 to 24 N·m, source: \"workshop"
	if err != nil || strings.Count(string(text), was) != 1 {
		b.Fatalf("%s has no %q to change (%v)", name, was, err)
	}
	if err := os.WriteFile(name, []byte(strings.Replace(string(text), was, is, 1)), 0o666); err != nil {
		b.Fatal(err)
	}
	measure(b, generate(b, 10), false) // fonts, schemas and patterns are made once a process
	check := measure(b, after, false)
	runtime.GC()
	start := time.Now()
	var sides [2][]compare.Procedure
	var wg sync.WaitGroup
	for i, root := range []string{before, after} {
		wg.Go(func() { sides[i] = side(b, root) })
	}
	wg.Wait()
	report := compare.Sides(sides[0], sides[1])
	took := time.Since(start).Seconds()
	if n := report.Count(compare.Safety); n == 0 || len(report.Cards) != 1 {
		b.Fatalf("%d cards, %d changes of class safety", len(report.Cards), n)
	}
	fmt.Printf("\n1 000 procedures, one limit changed: compare %.2f s, check %.2f s, ratio %.2f\n", took, check.seconds, took/check.seconds)
	b.ReportMetric(took/check.seconds, "check-ratio")
}
