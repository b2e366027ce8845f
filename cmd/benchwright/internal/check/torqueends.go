package check

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
)

var newtonMeter = quantity.MustUnit("N·m")

// smallTorque is below that of an M4 bolt. Manuals give wide bands to what is so
// small: 5 to 15 lbf·in (TM 9-2320-289-34, p. 6-119).
const smallTorque = 3 // N·m

// torqueEnds refuses a torque with one end and warns of one whose ends lie far
// apart: what is set then depends on which wrench the shop has.
func torqueEnds(p *pass) {
	each(p, func(_ *card.Step, t *card.Torque) {
		for _, g := range t.Tightenings() {
			if g.Limit == nil || !positive(g.Limit.Band) {
				continue
			}
			b := g.Limit.Band
			ended := t.Until.Reading.Name != "" && g == &t.Tightening // a reading ends it, and limits only bound it
			var d *diag.Diagnostic
			switch {
			case b.Low == nil || b.High == nil:
				if t.Because == "" && !ended {
					d = p.msgs.Report("torque-one-sided", g.StatedAt, "write both ends as the manual gives them, or say in `because:` why one is enough",
						"%s has one end only, and the setting would be whatever the wrench can do", b.Written)
				}
			case !ended && b.High.Cmp(new(big.Rat).Mul(b.Low, big.NewRat(2, 1))) > 0 && b.In(newtonMeter).High.Cmp(big.NewRat(smallTorque, 1)) > 0:
				d = p.msgs.Report("torque-wide", g.StatedAt, "look both ends up again, the digits and the unit of measure", "the high end of %s is over twice its low end", b.Written)
			}
			if d != nil && g.Limit.At != g.StatedAt {
				d.Related = append(d.Related, related(g.Limit.At, "the limits stand here"))
			}
		}
	})
}
