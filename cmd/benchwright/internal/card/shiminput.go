package card

import (
	"math/big"
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
)

// A ShimInput is an input for finding a pack: a reading of a step, a mark
// etched on a part, or the direction of change from the old pack.
type ShimInput struct {
	*Measurement        // nil for a mark or direction
	Lash         *Lash  // the block of the measurement, if it is a backlash; else nil
	Step         int    // that takes it; 0 for a mark
	Mark         string // name of the mark
	IsOldPack    bool   // the measured thickness of the pack in place
	IsDirection  bool   // thinner at −1, thicker at 1
	Scale        quantity.Scale
	Axis         bench.Axis
}

// maxMarks is the maximum number of marks of one input.
const maxMarks = 400

// inputs finds what a block's pack is computed from. If one of them is
// unusable, which is reported, there are none.
func (r *resolver) inputs(s *Step, i *Shim) {
	f := &i.From
	var out []*ShimInput
	add := func(in *ShimInput) bool { out = append(out, in); return in != nil }
	ok := true
	if f.Etched() {
		for _, name := range []string{f.OldMark.Name, f.NewMark.Name} {
			if name != "" {
				add(etched(name, f.First, f.Last))
			}
		}
	}
	if f.OldPack.Name != "" {
		if ok = ok && add(r.readingOf(s, f.OldPack, nil, f.At)); ok {
			out[len(out)-1].IsOldPack = true
		}
	}
	if f.By != nil {
		add(&ShimInput{IsDirection: true, Scale: quantity.Scale{Step: big.NewRat(2, 1)}, Axis: bench.Axis{Marks: []*big.Rat{big.NewRat(-1, 1), big.NewRat(1, 1)}}})
	}
	if f.Reading.Name != "" {
		ok = ok && add(r.readingOf(s, f.Reading, i.Span, i.KeyPlace("span")))
	}
	for _, l := range append(append([]procedure.ShimLength{}, f.Plus...), f.Minus...) {
		if l.Step.Name != "" {
			ok = ok && add(r.readingOf(s, l.Step, nil, f.At))
		}
	}
	if t := r.aimTable(i); ok && len(out) > 0 && t != nil {
		mark := etched(value.NameOf(t.Mark), t.First, t.Last)
		if len(out) == 1 { // marks are few, and go across
			out = append(out, mark)
		} else {
			out = append([]*ShimInput{mark}, out...)
		}
	}
	switch {
	case !ok:
	case len(out) == 0:
		r.msgs.Report("shim-from", f.At, "name the step that measures one of them", "all lengths are fixed, so that there is nothing to look up")
	case len(out) > 3:
		r.msgs.Report("shim-from", f.At, "measure two of them together, or make the pack from the reading over a set-up pack", "a pack of %d readings is more than tables can carry", len(out))
	default:
		i.Inputs = out
	}
}

// etched returns the input for a mark.
func etched(name string, first, last int) *ShimInput {
	out := &ShimInput{Mark: name, Scale: quantity.Scale{Step: big.NewRat(1, 1)}}
	for m := first; m <= last; m++ {
		out.Axis.Marks = append(out.Axis.Marks, big.NewRat(int64(m), 1))
	}
	return out
}

// readingOf returns the reading of a step before s, nil if it is unusable,
// which is reported. A span written in the shim block, at place at, replaces
// the reading's own.
func (r *resolver) readingOf(s *Step, id procedure.Named, span *quantity.Band, at source.Place) *ShimInput {
	item, n := r.lengthReading(s, id)
	if item == nil {
		return nil
	}
	m := ReadingOf(item)
	refuse := func(fix, format string, args ...any) *ShimInput {
		r.msgs.Report("shim-from", id.At, fix, format, args...)
		return nil
	}
	spanned := span != nil
	if span == nil {
		if span = m.Limits.Expect; span == nil {
			span = m.OnGauge()
		}
		if span == nil && m.Table == nil {
			return nil // a reading without limits has been reported
		}
	}
	if span == nil || span.Low == nil || span.High == nil {
		return refuse("add `span:` with the lowest and the highest reading that the table is for", "nothing says how far the readings of step `%s` go", id.Name)
	}
	if span.Unit.Dimension != quantity.Length {
		return nil // reported at the reading
	}
	out := &ShimInput{Measurement: m, Step: n, Scale: m.Gauge.Scale}
	out.Lash, _ = item.(*Lash)
	if marks, ok := span.Inward(m.Gauge.Scale); ok {
		for at := marks.Low; at.Cmp(marks.High) <= 0 && len(out.Axis.Marks) <= maxMarks; at = new(big.Rat).Add(at, out.Scale.Step) {
			out.Axis.Marks = append(out.Axis.Marks, at)
		}
	}
	switch n := len(out.Axis.Marks); {
	case n == 0:
		return refuse("widen the span, or read with finer marks", "the readings of step `%s` have no mark of `%s` in their span", id.Name, m.Gauge.ID)
	case n > maxMarks && spanned:
		r.msgs.Report("shim-from", at, "write the readings that may really come, as in `span: 0.03 to 0.38 mm`", "a span of more than %d marks is no table", maxMarks)
		return nil
	case n > maxMarks:
		return refuse("narrow the span, or read with coarser marks", "the readings of step `%s` have more than %d marks", id.Name, maxMarks)
	}
	return out
}

// lengthReading returns the single item of a step before s that reads a length
// on a gauge, and the step's number; nil if there is none, which is reported.
func (r *resolver) lengthReading(s *Step, id procedure.Named) (Item, int) {
	n, ok := r.number(id)
	if !ok || n == 0 {
		return nil, 0
	}
	var found []Item
	for _, i := range r.card.Steps()[n-1].Items {
		if ReadingOf(i) != nil {
			found = append(found, i)
		}
	}
	refuse := func(fix, format string, args ...any) (Item, int) {
		r.msgs.Report("shim-from", id.At, fix, format, args...)
		return nil, 0
	}
	switch {
	case n > s.Number:
		return refuse("take the reading in a step before this one", "the reading of step `%s` comes after the pack that is made from it", id.Name)
	case len(found) == 0 && slices.ContainsFunc(r.card.Steps()[n-1].Source.Items, func(i procedure.Item) bool { _, bad := i.(*procedure.Invalid); return bad }):
		return nil, 0 // its block was unreadable, which is reported
	case len(found) == 0:
		return refuse("name a step with a `measurement` or a `lash` block", "step `%s` takes no reading", id.Name)
	case len(found) > 1:
		return refuse("give each reading a step of its own", "step `%s` takes %d readings", id.Name, len(found))
	}
	m := ReadingOf(found[0])
	switch {
	case m.Gauge == nil || m.Mismatch && !m.Limits.None || m.Limits.Bad.IsSet():
		if m.GaugePlace() == m.At && r.card.Shop != nil {
			return refuse("name the gauge with `gauge:` there", "the reading of step `%s` has no gauge, and the table is read on its marks", id.Name)
		}
		return nil, 0
	case m.Gauge.Scale.Unit.Dimension != quantity.Length:
		return refuse("name a step that reads a length", "the reading of step `%s` is of %s, and a pack is a length", id.Name, m.Gauge.Scale.Unit.Dimension)
	case len(m.Record) > 1 && m.Use != procedure.Lowest:
		return refuse("write `use: lowest` there; an average would have to be worked out at the bench", "step `%s` takes several readings, and a table is read with one", id.Name)
	}
	return found[0], n
}

// findRates determines the aim, the rate, and the rates at which the wanted
// pack follows the inputs. It returns false if the unit or block lacks data,
// which a rule reports.
func (r *resolver) findRates(i *Shim) bool {
	if w := i.From.WithPack; w != nil {
		i.InPlace = i.length(w)
	}
	if i.From.Aimless() {
		i.rateByOldPack()
		return i.Pack.SafeSide != ""
	}
	if i.Rate = r.rate(i.Pack); i.Rate == nil || i.Pack.SafeSide == "" {
		return false
	}
	shows := r.gaugeFactors(i) // what the dial shows per length of the reading
	if shows == nil {
		return false
	}
	r.aim(i, shows.aim)
	if i.Rate.Mul(i.Rate, shows.rate); i.Aim == nil || i.Rate.Sign() == 0 {
		return false
	}
	i.rateByAim(r.aimTable(i), shows)
	return true
}

// rateByOldPack sets the rates of the inputs for a pack without an aim: the
// old pack plus a step, or plus the difference of the marks.
func (i *Shim) rateByOldPack() {
	step := i.length(i.From.PerMark)
	for _, in := range i.Inputs {
		switch {
		case in.IsOldPack:
			in.Axis.Rate = in.per(i.Unit)
		case in.IsDirection:
			in.Axis.Rate = i.length(i.From.By)
		case in.Mark == i.From.NewMark.Name:
			in.Axis.Rate = step
		default:
			in.Axis.Rate = new(big.Rat).Neg(step)
		}
	}
}

// rateByAim sets the rates of the inputs for a pack with an aim: it grows with
// the old pack, with readings that are subtracted, and with the mark of table
// t that the aim depends on, and falls with readings that are added.
func (i *Shim) rateByAim(t *unit.Table, shows *gaugeFactors) {
	part := new(big.Rat).Inv(i.Rate)
	var off []bool // by reading, in order: it is subtracted
	for k, l := range append(append([]procedure.ShimLength{}, i.From.Plus...), i.From.Minus...) {
		if l.Step.Name != "" {
			off = append(off, k >= len(i.From.Plus))
		}
	}
	n := 0
	for _, in := range i.Inputs {
		switch {
		case in.IsOldPack:
			in.Axis.Rate = in.per(i.Unit)
		case in.Measurement == nil: // the mark that the aim depends on
			step := quantity.Convert(t.PerMark.Value, t.PerMark.Unit, i.Unit)
			if t.Shorter {
				step.Neg(step)
			}
			in.Axis.Rate = step.Mul(step, shows.aim).Mul(step, part)
		default:
			per := in.per(i.Unit)
			per.Mul(per, part).Neg(per)
			if n < len(off) && off[n] { // a single reading is in neither list
				per.Neg(per)
			}
			n++
			in.Axis.Rate = per
		}
	}
}

// per returns one unit of the input's scale, in another unit.
func (in *ShimInput) per(u quantity.Unit) *big.Rat {
	return quantity.Convert(big.NewRat(1, 1), in.Scale.Unit, u)
}

// aimTable returns the table of marks that the aim depends on, nil for none.
func (r *resolver) aimTable(i *Shim) *unit.Table {
	return r.table(i.AimLimit)
}

// reading returns the input that reads the adjusted quantity, nil for none.
func (i *Shim) reading() *ShimInput {
	for _, in := range i.Inputs {
		if in.Measurement != nil && !in.IsOldPack {
			return in
		}
	}
	return nil
}

// gaugeFactors are what the gauge shows per unit of length: of the aim, and of
// the quantity that the rate is for.
type gaugeFactors struct{ aim, rate *big.Rat }

// gaugeFactors determines how the gauge of the reading shows what the unit
// states, nil if it cannot, which is reported.
func (r *resolver) gaugeFactors(i *Shim) *gaugeFactors {
	one := big.NewRat(1, 1)
	out := &gaugeFactors{one, one}
	if i.From.Reading.Name == "" {
		return out
	}
	in := i.reading()
	if in.Lash == nil {
		if i.Pack.RateFromGears {
			r.msgs.Report("shim-from", i.From.Reading.At, "take the reading with a `lash` block, which says where the dial stands; or give the pack the manual's own `rate:`",
				"the theory's rate holds at the pitch radius, and nothing says where this reading is taken")
			return nil
		}
		if t, ok := tilted(nil, in.Tilt); i.AimLimit.Name != "" && ok && t != nil {
			out.aim, out.rate = t, t
		}
		return out
	}
	if limit := r.card.Unit.Limit(i.AimLimit.Name); limit != nil && !limit.Bad.IsSet() {
		if limit.LashPlace == nil {
			if r.namedLimit(i.AimLimit, quantity.Length) != nil || limit.Table != nil {
				r.reportNoLimitPlace(limit)
			}
			return nil
		}
		f, lacks := lashFactor(limit.LashPlace, in.Lash.Block.DialPlace, in.Lash.Pair)
		if f == nil {
			r.reportMissingFact(in.Lash.Block, in.Lash.Pair, lacks)
			return nil
		}
		if t, ok := tilted(f, in.Tilt); ok && t != nil {
			f = t
		} else if ok {
			f = one
		}
		out.aim, out.rate = f, f
	}
	if i.Pack.RateFromGears {
		if out.rate = in.Lash.PerPitch; out.rate == nil {
			_, lacks := lashFactor(&unit.LashPlace{Turned: in.Lash.Block.DialPlace.Turned}, in.Lash.Block.DialPlace, in.Lash.Pair)
			r.reportMissingFact(in.Lash.Block, in.Lash.Pair, lacks)
			return nil
		}
	}
	return out
}

// aim determines the target of the reading, as the gauge shows it.
func (r *resolver) aim(i *Shim, shows *big.Rat) {
	if i.AimLimit.Name == "" {
		i.Aim = i.length(i.Shim.Aim)
		return
	}
	if t := r.aimTable(i); t != nil {
		i.Aim = quantity.Convert(t.Nominal.Value, t.Nominal.Unit, i.Unit)
		i.Aim.Mul(i.Aim, shows)
		return
	}
	i.Limit = r.namedLimit(i.AimLimit, quantity.Length)
	if i.Limit == nil {
		return
	}
	i.Limits = new(bench.Scaled(i.Limit.Band, shows, i.Unit))
	if target := i.Limit.Band.In(i.Unit).Target(); target != nil {
		i.Aim = new(big.Rat).Mul(target, shows)
	}
}
