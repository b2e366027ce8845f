package card

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/shop"
)

// An Adapter fits between wrench and fastener.
type Adapter struct {
	bench.Adapter
	Tool  *shop.Item
	Angle string // as written, "30°"; "" for in line
}

// adapter looks up the adapter and adds it to the kit. It returns nil if it is
// unknown, which it reports.
func (r *resolver) adapter(a *procedure.Adapter) *Adapter {
	if a.Bad.IsSet() {
		return nil
	}
	tool := r.findTool(a.Tool)
	if tool == nil {
		return nil
	}
	out := &Adapter{Tool: tool, Adapter: bench.Adapter{Length: *a.Length, Angle: new(big.Rat)}}
	if a.Angle != nil {
		out.Adapter.Angle = inDegrees(a.Angle)
		out.Angle = a.Angle.Unit.After(a.Angle.Text)
	}
	return out
}
