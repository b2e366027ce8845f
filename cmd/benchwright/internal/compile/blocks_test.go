package compile

import (
	"slices"
	"testing"

	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/schema"
)

// Each block type that is built has its schema, and there is no schema but
// these and those of the files.
func TestEveryBlockHasItsSchema(t *testing.T) {
	want := []string{"front", "shop", "unit"}
	for _, kind := range procedure.Built {
		want = append(want, "block-"+kind)
	}
	slices.Sort(want)
	if got := schema.Names(); !slices.Equal(got, want) {
		t.Errorf("the schemas are %q, want %q", got, want)
	}
}
