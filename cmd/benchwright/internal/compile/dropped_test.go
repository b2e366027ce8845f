package compile

import (
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// A card without an error left is not written where one was reported and taken
// off the list again.
func TestNothingDropped(t *testing.T) {
	for slug, want := range map[string]bool{"value-kind": true, "prose-long": false} {
		var msgs diag.List
		msgs.Report(slug, source.Place{}, "", "wrong")
		msgs.Keep(func(diag.Diagnostic) bool { return false })
		func() {
			defer func() {
				if got := recover() != nil; got != want {
					t.Errorf("%s: a panic %v, want %v", slug, got, want)
				}
			}()
			panicIfDropped(&diag.List{}, &msgs)
		}()
	}
}
