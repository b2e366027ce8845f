package card

import (
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
)

// A thing that is both part and fastener is offered once.
func TestHeldUnknown(t *testing.T) {
	msgs := &diag.List{}
	u := unit.Read(syntax.ReadTree(source.NewFile("unit.yaml", []byte(testUnit)), msgs), quantity.Point, msgs)
	r := &resolver{card: &Card{Unit: u}, msgs: msgs}
	r.heldName(procedure.Named{Name: "zebra", At: source.NewFile("f.md", []byte("zebra")).At(0, 5)})
	got := msgs.Sorted()
	if len(got) != 1 || !strings.Contains(got[0].Fix, "one of: pinion-nut, pinion-race, cover-bolts;") {
		t.Errorf("%v", got)
	}
}
