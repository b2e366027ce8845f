package card

import (
	"math/big"
	"sync"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/unit"
)

// A Shim is a shim pack to be made, with the table of stacks. Lengths of shims
// and packs are in Unit, readings in that of the reading's gauge.
type Shim struct {
	*procedure.Shim
	Pack       *unit.Pack  // nil when unknown, which is reported
	Stock      *shop.Stock // nil when unknown, which is reported
	Unit       quantity.Unit
	Micrometer *shop.Gauge // nil when unknown, which is reported
	Read       *Reading    // nil when it cannot be used, which is reported
	Limit      *unit.LimitBand
	Aim        *big.Rat // of the reading; nil when it is not known, which a rule reports
	Rate       *big.Rat // of the reading for each length of shim, below zero where more shim makes it less; nil when not known
	Rows       []ShimRow
	Miss       *bench.PackMiss // why there are no rows
	Stacks     *bench.Stacks
	Shown      int      // the row of the worked line
	ShownAt    *big.Rat // and its reading
}

// A Reading is a reading that a table is read with.
type Reading struct {
	*Measurement
	Lash  *Lash // nil for a reading that is no backlash
	Step  int
	Marks quantity.Marks // the span of the table
}

// A ShimRow is a row of the table of stacks.
type ShimRow struct {
	bench.PackRow
	Over    *quantity.Marks // what the micrometer may show over the finished pack; nil where no mark is left, which a rule reports
	InPlace bool            // the pack is as thick as the one in place
}

// mostMarks is how many marks a table is made for at most: about twenty faces.
const mostMarks = 400

// shim looks up what a shim block names. Its table waits until all steps are
// there.
func (r *resolver) shim(i *procedure.Shim) Item {
	out := &Shim{Shim: i}
	if u := r.card.Unit; u != nil {
		if out.Pack = u.Pack(i.Pack.Name); out.Pack == nil {
			r.unknown("pack-unknown", "pack", i.Pack, u.PackIDs(), "packs in the unit")
		} else if !in(out.Pack.Only, r.card.VariantID()) {
			r.msgs.Report("pack-left-out", i.Pack.At, "limit this block to the variants that have it", "pack `%s` is left out here", i.Pack.Name)
			out.Pack = nil
		}
	}
	s := r.card.Shop
	if s == nil {
		r.msgs.Report("stock-unknown", i.Stock.At, "give the file a `shop:` with its `stock:`, or put it into a workspace", "without a shop there are no shims to make a pack from")
		return out
	}
	if out.Stock = s.StockOf(i.Stock.Name); out.Stock == nil {
		r.unknown("stock-unknown", "stock", i.Stock, s.StockIDs(), "stock in shop.yaml")
	} else if len(out.Stock.Shims) > 0 {
		out.Unit = out.Stock.Shims[0].Thickness.Unit
		r.kit(&shop.Item{ID: out.Stock.ID, Name: out.Stock.Name, Place: out.Stock.Place, At: out.Stock.At}, out.Stock)
	}
	if g, ok := s.Find(i.Micrometer.Name).(*shop.Gauge); !ok {
		r.unknown("gauge-unknown", "gauge", i.Micrometer, gaugeIDs(s), "gauges in shop.yaml")
	} else if !g.Bad {
		r.superseded(i.Micrometer, &g.Item)
		if g.Scale.Unit.Dimension != quantity.Length {
			r.msgs.Report("unit-kind", i.Micrometer.At, "name a gauge that reads length", "`%s` reads %s, and a pack is a length", g.ID, g.Scale.Unit.Dimension)
			return out
		}
		out.Micrometer = g
		r.kit(&g.Item, g)
	}
	return out
}

// shims makes the tables of the card's shim blocks.
func (r *resolver) shims() {
	for _, s := range r.card.Steps() {
		for _, i := range s.Items {
			if i, ok := i.(*Shim); ok {
				r.stacks(s, i)
			}
		}
	}
}

// stacks computes the table of one block as far as its facts go.
func (r *resolver) stacks(s *Step, i *Shim) {
	if i.Read = r.readingOf(s, i.From.Reading, i.Span); i.Read == nil || i.Bad || i.Pack == nil || i.Stock == nil || i.Micrometer == nil {
		return
	}
	r.aim(i)
	i.Rate = r.rate(i)
	if i.Aim == nil || i.Rate == nil || i.Pack.SafeSide == "" || i.From.WithPack == nil || i.Within == nil || i.OverPack == nil || len(i.Stock.Shims) == 0 {
		return
	}
	within := func(v *quantity.Value) *big.Rat {
		if v == nil {
			return nil
		}
		return quantity.Convert(v.Value, v.Unit, i.Unit)
	}
	if i.Stacks = r.lib.stacksOf(i.Stock, i.AtLeast, i.AtMost); i.Stacks == nil {
		return
	}
	rule := bench.PackRule{Stacks: i.Stacks, Within: within(i.Within), Over: within(i.OverPack), Round: within(i.Round), Safe: bench.Thinner}
	if i.Pack.SafeSide == "more" {
		rule.Safe = bench.Thicker
	}
	inPlace := within(i.From.WithPack)
	rows, miss := bench.PackRows(i.Read.marks(), func(mark *big.Rat) *big.Rat {
		change, _ := bench.ShimChange(i.Aim, mark, i.Rate)
		want := quantity.Convert(change, i.Read.Gauge.Scale.Unit, i.Unit)
		return want.Add(want, inPlace)
	}, rule)
	i.Miss = miss
	for _, row := range rows {
		out := ShimRow{PackRow: row, InPlace: row.Total.Cmp(inPlace) == 0}
		if over, ok := (quantity.Band{Low: row.From, High: row.To, Unit: i.Unit}).Inward(i.Micrometer.Scale); ok {
			out.Over = &over
		}
		i.Rows = append(i.Rows, out)
	}
	i.show()
}

// readingOf finds the reading of a step before s, nil when it cannot be used,
// which is reported. A span narrows or widens what its own expectation says.
func (r *resolver) readingOf(s *Step, id procedure.Named, span *quantity.Band) *Reading {
	n, ok := r.number(id)
	if !ok || n == 0 {
		return nil
	}
	var found []*Measurement
	var lash *Lash
	for _, i := range r.card.Steps()[n-1].Items {
		if m := ReadingOf(i); m != nil {
			found = append(found, m)
			lash, _ = i.(*Lash)
		}
	}
	refuse := func(help, format string, args ...any) *Reading {
		r.msgs.Report("shim-from", id.At, help, format, args...)
		return nil
	}
	switch {
	case n > s.Number:
		return refuse("take the reading in a step before this one", "the reading of step `%s` comes after the pack that is made from it", id.Name)
	case len(found) == 0:
		return refuse("name a step with a `measurement` or a `lash` block", "step `%s` takes no reading", id.Name)
	case len(found) > 1:
		return refuse("give each reading a step of its own", "step `%s` takes %d readings", id.Name, len(found))
	}
	m := found[0]
	switch {
	case m.Gauge == nil || m.Mismatch || m.Limits.Bad:
		if m.GaugePlace() == m.At && r.card.Shop != nil {
			return refuse("name the gauge with `gauge:` there", "the reading of step `%s` has no gauge, and the table is read on its marks", id.Name)
		}
		return nil
	case m.Gauge.Scale.Unit.Dimension != quantity.Length:
		return refuse("name a step that reads a length", "the reading of step `%s` is of %s, and a pack is a length", id.Name, m.Gauge.Scale.Unit.Dimension)
	case len(m.Record) > 1 && m.Use != "lowest":
		return refuse("write `use: lowest` there; an average would have to be worked out at the bench", "step `%s` takes several readings, and a table is read with one", id.Name)
	}
	if span == nil {
		if span = m.Limits.Expect; span == nil {
			span = m.OnGauge()
		}
		if span == nil {
			return nil // a reading without limits has been reported
		}
	}
	if span.Low == nil || span.High == nil {
		return refuse("add `span:` with the lowest and the highest reading that the table is for", "nothing says how far the readings of step `%s` go", id.Name)
	}
	marks, ok := span.Inward(m.Gauge.Scale)
	out := &Reading{m, lash, n, marks}
	if count := 0; ok {
		if count = len(out.marks()); count <= mostMarks {
			return out
		}
		return refuse("narrow the span, or read with coarser marks", "the readings of step `%s` have %d marks, and a table is made for %d at most", id.Name, count, mostMarks)
	}
	return refuse("widen the span, or read with finer marks", "the readings of step `%s` have no mark of `%s` in their span", id.Name, m.Gauge.ID)
}

// marks returns the marks of the table, from the lowest to the highest; no more
// than one above mostMarks.
func (r *Reading) marks() []*big.Rat {
	var out []*big.Rat
	for m := r.Marks.Low; m.Cmp(r.Marks.High) <= 0 && len(out) <= mostMarks; m = new(big.Rat).Add(m, r.Gauge.Scale.Step) {
		out = append(out, m)
	}
	return out
}

// aim finds what the reading is to be, in the unit of its gauge.
func (r *resolver) aim(i *Shim) {
	u := i.Read.Gauge.Scale.Unit
	if i.AimAt.Name == "" {
		if i.Shim.Aim != nil {
			i.Aim = quantity.Convert(i.Shim.Aim.Value, i.Shim.Aim.Unit, u)
		}
		return
	}
	i.Limit = r.limit(&procedure.Limits{Named: i.AimAt, At: i.AimAt.At}, quantity.Length)
	if i.Limit == nil {
		return
	}
	shows := r.shows(i, r.holdsAt(i))
	if i.Read.Lash != nil && r.holdsAt(i) == nil {
		d := r.msgs.Report("key-missing", i.AimAt.At, "add "+holdsForm+" to `"+i.AimAt.Name+"` in the unit, as the manual has it", "nothing says where `%s` holds", i.AimAt.Name)
		d.Related = append(d.Related, diag.Related{At: r.card.Unit.Limit(i.AimAt.Name).At, Message: "the limit is declared here"})
		shows = nil
	}
	if shows == nil {
		i.Limit = nil
		return
	}
	on := *i.Limit // as the gauge shows it
	on.Band = bench.Scaled(on.Band, shows, u)
	on.Band.Written = i.Limit.Band.Written
	i.Limit, i.Aim = &on, on.Band.Target()
}

// holdsAt is where the limit of the aim holds, nil where it does not say.
func (r *resolver) holdsAt(i *Shim) *unit.LashPlace {
	if l := r.card.Unit.Limit(i.AimAt.Name); l != nil {
		return l.Holds
	}
	return nil
}

// shows returns how much of what holds somewhere the reading's gauge shows: a
// dial elsewhere shows another backlash, and a tilted lever more. A nil holds is
// at the dial. It is nil where that cannot be told.
func (r *resolver) shows(i *Shim, holds *unit.LashPlace) *big.Rat {
	factor := big.NewRat(1, 1)
	if l := i.Read.Lash; l != nil && holds != nil {
		if factor, _ = lashFactor(holds, l.Block.Dial, l.Pair); factor == nil {
			return nil
		}
	}
	if i.Read.Tilt == nil {
		return factor
	}
	shown, _ := bench.TiltedReading(factor, degrees(i.Read.Tilt))
	return shown
}

// rate returns how far the reading moves on its gauge for each length of shim,
// with its sign, nil when the unit does not say. The theory's rate is along the
// turn at the pitch radius, a manual's own of the limits that it states.
func (r *resolver) rate(i *Shim) *big.Rat {
	p := i.Pack
	rate, holds := p.Rate, r.holdsAt(i)
	if p.Theory {
		rate = TheoryRate(r.card.Unit, p)
		if l := i.Read.Lash; l != nil {
			holds = &unit.LashPlace{Turned: l.Block.Dial.Turned}
		}
	}
	shows := r.shows(i, holds)
	if rate == nil || shows == nil || p.MoreShim.Sign() == 0 {
		return nil
	}
	rate = new(big.Rat).Mul(rate, shows)
	return rate.Mul(rate, big.NewRat(int64(p.MoreShim.Sign()), 1))
}

// TheoryRate returns how much backlash a pack opens or closes for each length of
// shim, along the turn at the pitch radius, nil where the unit lacks what it
// takes.
func TheoryRate(u *unit.Unit, p *unit.Pack) *big.Rat { return axialRate(u.Gear(p.Gears), p.Moves) }

// axialRate is the theory's rate for the member of a pair that moves, nil where
// the unit lacks what it takes.
func axialRate(g *unit.Gear, moves unit.Member) *big.Rat {
	if g == nil || moves == "" || g.PressureAngle == nil || g.Teeth[0] == 0 || g.Teeth[1] == 0 {
		return nil
	}
	b := bench.Bevel{Teeth: g.Teeth[0], Mate: g.Teeth[1], Pressure: degrees(g.PressureAngle), Spiral: new(big.Rat)}
	if moves == unit.LargeGear {
		b.Teeth, b.Mate = b.Mate, b.Teeth
	}
	if g.Spiral != nil {
		b.Spiral = degrees(g.Spiral)
	}
	return b.AxialRate()
}

// show chooses the worked line: the writer's own, or one that is no row's first
// reading and not that of the pack in place.
func (i *Shim) show() {
	if i.Miss != nil || len(i.Rows) == 0 {
		return
	}
	if e := i.Example; e != nil && e.Reading != nil {
		i.ShownAt = quantity.Convert(e.Reading.Value, e.Reading.Unit, i.Read.Gauge.Scale.Unit)
		for n, row := range i.Rows {
			if row.Low.Cmp(i.ShownAt) <= 0 && i.ShownAt.Cmp(row.High) <= 0 {
				i.Shown = n
				return
			}
		}
		i.ShownAt = nil // a rule reports it
		return
	}
	i.Shown = len(i.Rows) * 2 / 3
	for n := i.Shown; n < len(i.Rows); n++ {
		if !i.Rows[n].InPlace {
			i.Shown = n
			break
		}
	}
	row := i.Rows[i.Shown]
	i.ShownAt = row.High
	if before := new(big.Rat).Sub(row.High, i.Read.Gauge.Scale.Step); before.Cmp(row.Low) >= 0 {
		i.ShownAt = before
	}
}

// A stackKey names one set of stacks.
type stackKey struct {
	stock       *shop.Stock
	least, most int
}

// stacksOf returns what a stock can make, computed once for all cards; nil
// where there is too much of it.
func (l *Library) stacksOf(s *shop.Stock, least, most int) *bench.Stacks {
	made, _ := l.stacks.LoadOrStore(stackKey{s, least, most}, sync.OnceValue(func() *bench.Stacks {
		var all []bench.Thickness
		u := s.Shims[0].Thickness.Unit
		for _, shim := range s.Shims {
			t := shim.Thickness
			all = append(all, bench.Thickness{Value: quantity.Convert(t.Value, t.Unit, u), AtMost: shim.AtMost})
		}
		stacks, ok := bench.NewStacks(all, least, most)
		if !ok {
			return nil
		}
		return stacks
	}))
	return made.(func() *bench.Stacks)()
}

func (i *Shim) causes() []Cause {
	if i.Stock == nil {
		return nil
	}
	out := []Cause{{"sharp", i.Stock.Name, i.KeyPlace("stock")}}
	if i.Micrometer != nil {
		out = append(out, carried(&i.Micrometer.Item, i.At)...)
	}
	return out
}

func (i *Shim) hasTable() bool { return len(i.Rows) > 0 }
