package compile

import (
	"slices"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/unit"
)

// What a slip in one file makes wrong elsewhere: a misspelt key takes a whole
// list of tools away, a block that cannot be read takes its callout along.
// Such messages wait until the file is sound, so that one slip gives one.
var (
	afterUnit = []string{"limit-unknown", "part-unknown", "fastener-unknown", "variant-unknown", "limits-missing"}
	afterShop = []string{"tool-unknown", "wrench-unknown", "gauge-unknown", "wrench-none", "torque-tolerance",
		"hazard-uncovered", "covers-idle"}
	afterOwn = []string{"step-unknown", "step-left-out", "tool-unknown", "assembly-not-there", "assembly-left",
		"hazard-uncovered", "covers-idle", "why-missing", "accept-unused"}
)

// consequences drops from the messages about a card those that an error in
// the files it is made of may have caused. A name with a near one is a slip of
// its own.
func (lib *Library) consequences(p *procedure.Procedure, u *unit.Unit, msgs *diag.List) {
	var after []string
	if u != nil && lib.faults[u.File] > 0 {
		after = append(after, afterUnit...)
	}
	if s := lib.Shop; s != nil && lib.faults[s.File] > 0 {
		after = append(after, afterShop...)
	}
	if lib.faults[p.File] > 0 {
		after = append(after, afterOwn...)
	}
	msgs.Keep(func(d diag.Diagnostic) bool { return d.Fix != nil || !slices.Contains(after, d.Slug) })
}
