package compile

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"runtime/metrics"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/workspace"
)

// BenchmarkWorkspace checks and builds workspaces of 10, 100 and 1 000
// procedures made from the demo's, and prints what one procedure costs in each.
// Time and allocations per procedure at 1 000 are to be at most 1.5 × those at
// 10: the ratio is printed, and no test depends on it. The ten stand before and
// behind the thousand, because the machine may not be as free then as before.
// One run takes far more than a benchmark's second, so it does not repeat itself.
func BenchmarkWorkspace(b *testing.B) {
	measure(b, generate(b, 10), true) // fonts, schemas and patterns are made once a process
	fmt.Printf("\n%12s %12s %14s %10s %12s %10s %10s\n", "procedures", "checked/s", "faces built/s", "ms each", "allocs each", "KB each", "peak MB")
	var ten, thousand cost
	for _, n := range []int{10, 100, 1000, 10} {
		root := generate(b, n)
		var check, build cost // each procedure's share
		rounds := max(1, 100/n)
		for range rounds {
			check.add(measure(b, root, false), n*rounds)
			build.add(measure(b, root, true), n*rounds)
		}
		fmt.Printf("%12d %12.0f %14.0f %10.2f %12.0f %10.0f %10.0f\n", n, 1/check.seconds, build.faces/build.seconds,
			1000*build.seconds, build.allocs, build.bytes/1024, build.peak/(1<<20))
		switch n {
		case 10:
			ten.add(build, 2)
		case 1000:
			thousand = build
		}
	}
	seconds, allocs := thousand.seconds/ten.seconds, thousand.allocs/ten.allocs
	fmt.Printf("at 1 000 over at 10: time × %.2f, allocations × %.2f (at most 1.50)\n", seconds, allocs)
	b.ReportMetric(seconds, "time-ratio")
	b.ReportMetric(allocs, "allocs-ratio")
}

// A cost is what one run over a workspace took; bytes are all that were
// allocated, and peak the most that were in use at a time.
type cost struct {
	seconds, allocs, bytes, faces, peak float64
}

// add adds one of parts of d to c; of the peaks the higher one stays.
func (c *cost) add(d cost, parts int) {
	n := float64(parts)
	c.seconds += d.seconds / n
	c.allocs += d.allocs / n
	c.bytes += d.bytes / n
	c.faces += d.faces / n
	c.peak = max(c.peak, d.peak)
}

// measure checks a workspace once, or builds it.
func measure(b *testing.B, root string, build bool) cost {
	runtime.GC()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	var faces atomic.Int64
	peak := watch()
	start := time.Now()
	msgs := &diag.List{}
	spaces, err := workspace.Load(root, []string{root}, nil, msgs)
	if err != nil {
		b.Fatal(err)
	}
	o := Options{}
	if build {
		o.Emit = func(m *Made) error {
			faces.Add(int64(m.Faces))
			_, err := m.PDF()
			return err
		}
	}
	for _, w := range spaces {
		Run(context.Background(), w, o, msgs)
	}
	took := time.Since(start).Seconds()
	most := peak()
	runtime.ReadMemStats(&after)
	if msgs.Errors() > 0 {
		b.Fatalf("the generated workspace has errors: %s", msgs.Sorted()[0].Message)
	}
	return cost{took, float64(after.Mallocs - before.Mallocs), float64(after.TotalAlloc - before.TotalAlloc), float64(faces.Load()), most}
}

// watch samples the heap until the function that it returns is called, which
// gives the most that was in use. It reads the runtime's counters, which unlike
// ReadMemStats does not stop the workers.
func watch() func() float64 {
	stop, done := make(chan struct{}), make(chan uint64)
	go func() {
		var most uint64
		use := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}, {Name: "/memory/classes/heap/unused:bytes"}}
		tick := time.NewTicker(5 * time.Millisecond)
		defer tick.Stop()
		for {
			metrics.Read(use)
			most = max(most, use[0].Value.Uint64()+use[1].Value.Uint64())
			select {
			case <-stop:
				done <- most
				return
			case <-tick.C:
			}
		}
	}()
	return func() float64 { close(stop); return float64(<-done) }
}

// generate writes a workspace of n procedures, a multiple of ten: the demo's,
// over and over, each time as another unit with other card numbers.
func generate(tb testing.TB, n int) string {
	tb.Helper()
	demo := filepath.Join("..", "..", "..", "..", "procedures")
	root := tb.TempDir()
	write := func(name, text string) {
		path := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			tb.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			tb.Fatal(err)
		}
	}
	type file struct{ name, text string }
	var procedures, others []file
	err := filepath.WalkDir(demo, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		name, _ := filepath.Rel(demo, path)
		switch {
		case name == "shop.yaml":
			write(name, string(text))
		case filepath.Ext(name) == ".md" && filepath.Base(name) != "README.md":
			procedures = append(procedures, file{name, string(text)})
		default:
			others = append(others, file{name, string(text)})
		}
		return err
	})
	if err != nil {
		tb.Fatal(err)
	}
	// Every ten are the demo's whole set, and the unit that has one card, which
	// refers to no other, until there are ten: each size has the same mix.
	for set := range n {
		again := strings.NewReplacer("MD48-", fmt.Sprintf("MD48Q%d-", set), "AG3-", fmt.Sprintf("AG3Q%d-", set),
			"SD2-", fmt.Sprintf("SD2Q%d-", set), "unit: sifter-drive", fmt.Sprintf("unit: sifter-drive-q%d", set),
			"unit: md-48", fmt.Sprintf("unit: md-48-q%d", set), "unit: auger-hub", fmt.Sprintf("unit: auger-hub-q%d", set))
		folder := fmt.Sprintf("set-%d", set)
		if 0 < set%10 && set%10 < len(procedures) {
			continue // one of the whole set's own
		}
		for _, f := range append(slices.Clone(others), procedures...) {
			if set%10 > 0 && !strings.HasPrefix(f.name, "auger-hub") {
				continue
			}
			text := f.text
			switch filepath.Ext(f.name) {
			case ".yaml", ".md":
				text = again.Replace(text)
			default:
				text += folder // behind a picture's end: each set has its own
			}
			write(filepath.Join(folder, f.name), text)
		}
	}
	return root
}
