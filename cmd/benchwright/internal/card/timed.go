package card

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
)

// A Timed is work that must be finished within a time.
type Timed struct {
	*procedure.Timed
	Ends  *bench.Clock // latest end by the clock; nil for whole days and for counted time
	Days  int64        // whole days; 0 for less
	Short bool         // counted, not read from the clock
}

func (t *Timed) Readings() []*Measurement { return nil }
func (t *Timed) causes() []Cause          { return nil }
func (t *Timed) complete(*Card) bool      { return t.Days > 0 || t.Short || t.Ends != nil }

func (r *resolver) timed(p *procedure.Timed) Item {
	t := &Timed{Timed: p}
	within := p.Within.In(minute).Value
	var whole bool
	switch t.Days, whole = bench.WholeDays(within); {
	case whole:
		return t
	case within.Sign() <= 0:
		r.msgs.Report("quantity-malformed", p.KeyPlace("within"), "write how long the hand has, such as `10 min`", "no time is left to do the work in")
		return t
	}
	t.Days, t.Short, t.Ends = 0, within.Cmp(big.NewRat(5, 1)) < 0, bench.LatestEnds(within)
	if t.Ends == nil && !t.Short {
		r.msgs.Report("quantity-malformed", p.KeyPlace("within"), "write 12 h or less, or whole days such as `24 h`", "after `%s` the clock has gone around once and does not show it", p.Within.Unit.After(p.Within.Text))
	}
	return t
}
