package compile

import (
	"fmt"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/schema"
)

// What the schema accepts is read as the text that was typed. The forms are those
// that YAML 1.1 and 1.2 make numbers, switches, dates and nothing of.
func TestReadAsTyped(t *testing.T) {
	for _, text := range []string{"6", "06", "+6", "-6", "6.", "6.0", "0x6", "0o6", "0b110", "6e0", "1e1", "1_0", "6:00", "12", "999999", "1000000",
		"'6'", "' 6 '", "'0x6'", ".inf", "yes", "True", "~", "null", "''", "2026-10-02", "1.10", "017"} {
		var msgs diag.List
		tree := syntax.ReadTree(source.NewFile("unit.yaml", fmt.Appendf(nil,
			"unit: u\ntitle: t\nparts: {nut: {count: %s}, pin: {number: %[1]s}}\n", text)), &msgs)
		if tree == nil {
			t.Fatal(text)
		}
		nut, _ := tree.Root.Get("parts").Field("nut")
		pin, _ := tree.Root.Get("parts").Field("pin")
		refused := map[string]bool{}
		for _, v := range schema.Validate("unit", tree.Root.Value(), nil) {
			refused[v.Path[1]] = true
		}
		u := unit.Read(tree, quantity.Point, &msgs)
		if want := nut.Value.Get("count").Value(); !refused["nut"] && fmt.Sprint(u.Part("nut").Count) != want {
			t.Errorf("a count of %s is accepted as %q and read as %d", text, want, u.Part("nut").Count)
		}
		if want := pin.Value.Get("number").Value(); !refused["pin"] && u.Part("pin").Number != want {
			t.Errorf("a number of %s is accepted as %q and read as %q", text, want, u.Part("pin").Number)
		}
	}
}
