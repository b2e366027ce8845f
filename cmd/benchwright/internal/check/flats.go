package check

import (
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/unit"
)

// Unit runs the rules for a unit. Mark is the decimal mark of its numbers.
func Unit(u *unit.Unit, mark quantity.DecimalMark, msgs *diag.List) {
	for _, f := range u.Fasteners {
		flats(f, mark, msgs)
	}
}

// flats checks that a bolt has the size across flats of its thread. Nuts,
// rings and plugs have sizes of their own and are not checked.
func flats(f *unit.Fastener, mark quantity.DecimalMark, msgs *diag.List) {
	if f.AcrossFlats == nil || f.Drive == unit.Special || f.Duty != unit.Clamp && f.Duty != unit.ToYield {
		return
	}
	drive, head := bench.Hex, "a hexagon bolt"
	if f.Drive == unit.Socket {
		drive, head = bench.Socket, "the key of a socket screw"
	}
	verdict, known := bench.JudgeFlats(f.Thread, drive, *f.AcrossFlats)
	if verdict == bench.FlatListed || verdict == bench.FlatUnknown {
		return
	}
	written := func(v quantity.Value) string {
		text := v.Text
		if !strings.Contains(text, "/") {
			text = quantity.Decimal(v.Value, mark)
		}
		return text + " " + v.Unit.Symbol
	}
	var usual []string
	for _, k := range known {
		standard := k.Standard
		if k.Older {
			standard = "older, " + standard
		}
		usual = append(usual, written(k.Size)+" ("+standard+")")
	}
	fix := "look at the bolt: write `" + written(known[0].Size) + "`, or `drive: special` if its head is in no table"
	if key, _ := bench.JudgeFlats(f.Thread, bench.Socket, *f.AcrossFlats); drive == bench.Hex && key == bench.FlatListed {
		fix = "write `drive: socket` if a key turns it"
	}
	msgs.Report("flats-unusual", f.Node.Get("across-flats").Place(), fix, "%s of %s is %s across flats, not %s",
		head, f.Thread, strings.Join(usual, " or "), f.AcrossFlats.Text+" "+f.AcrossFlats.Unit.Symbol)
}
