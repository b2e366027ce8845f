package compile

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/unit"
)

// consequences drops from the messages about a card those that rest on a file
// with an error: a misspelt key takes a whole list of tools away, a block that
// cannot be read takes its callout along.
func (lib *Library) consequences(p *procedure.Procedure, u *unit.Unit, msgs *diag.List) {
	var unsound diag.Basis
	if u != nil && lib.faults[u.File] > 0 {
		unsound |= diag.OnUnit
	}
	if s := lib.Shop; s != nil && lib.faults[s.File] > 0 {
		unsound |= diag.OnShop
	}
	if lib.faults[p.File] > 0 {
		unsound |= diag.OnProcedure
	}
	msgs.Keep(func(d diag.Diagnostic) bool { return d.Rests&unsound == 0 })
}
