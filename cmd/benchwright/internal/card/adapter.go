package card

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/shop"
)

// An Adapter is what stands between wrench and fastener.
type Adapter struct {
	bench.Adapter
	Tool  *shop.Item
	Angle string // as written, "30°"; "" in line
}

// adapter looks the adapter up and puts it in the kit, nil where it is not
// known, which is reported.
func (r *resolver) adapter(a *procedure.Adapter) *Adapter {
	if a.Bad.IsSet() {
		return nil
	}
	tool := r.find(a.Tool)
	if tool == nil {
		return nil
	}
	out := &Adapter{Tool: tool, Adapter: bench.Adapter{Length: *a.Length, Angle: new(big.Rat)}}
	if a.Angle != nil {
		out.Adapter.Angle = degrees(a.Angle)
		out.Angle = a.Angle.Unit.After(a.Angle.Text)
	}
	return out
}
