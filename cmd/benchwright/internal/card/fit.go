package card

import (
	"math/big"
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/cmd/benchwright/internal/value"
)

// A Fit is a part that is put in or drawn from its seat by heat, cold or
// force.
type Fit struct {
	*procedure.Fit
	Part        Member
	Mate        Member // the part that it goes into or onto, or comes out of or off
	Heat, Chill *Warmth
	Press, Pull *Push
	Depth       *Measurement // of the seat; nil if not measured
	heavy       *unit.Part   // Part, if too heavy for one person; else nil
	size        *size
	bad         bool // a number of its size is wrong, which is reported
}

// A Member is one of the two parts of a fit.
type Member struct {
	Name string
	Part *unit.Part // nil if it is only words, or unknown, which is reported
	At   procedure.Named
}

// Outer returns the outer part.
func (f *Fit) Outer() Member {
	if f.Direction.Inner() {
		return f.Mate
	}
	return f.Part
}

// Inner returns the inner part.
func (f *Fit) Inner() Member {
	if f.Direction.Inner() {
		return f.Part
	}
	return f.Mate
}

// Readings returns the temperatures, forces and depths of the fit, in the
// order of the work.
func (f *Fit) Readings() []*Measurement {
	var out []*Measurement
	for _, w := range f.Warmths() {
		out = append(out, w.Measurement)
	}
	for _, p := range f.Pushes() {
		if p.HasReading {
			out = append(out, p.Measurement)
		}
	}
	if f.Depth != nil {
		out = append(out, f.Depth)
	}
	return out
}

// Warmths returns the parts that are heated or chilled.
func (f *Fit) Warmths() []*Warmth { return nonNil(f.Heat, f.Chill) }

// Pushes returns the press and pull operations.
func (f *Fit) Pushes() []*Push { return nonNil(f.Press, f.Pull) }

func nonNil[T any](all ...*T) []*T {
	var out []*T
	for _, t := range all {
		if t != nil {
			out = append(out, t)
		}
	}
	return out
}

func (f *Fit) causes() []Cause {
	var out []Cause
	add := func(id string, m *procedure.Method, with []*shop.Item) {
		out = append(out, Cause{id, m.At})
		for _, i := range with {
			out = append(out, toolCauses(i, m.At)...)
		}
	}
	if w := f.Heat; w != nil {
		add("hot", w.Method, w.With)
	}
	if w := f.Chill; w != nil {
		add("cold", w.Method, w.With)
	}
	for _, p := range f.Pushes() {
		add("press", p.Method, p.With)
	}
	if f.heavy != nil {
		out = append(out, Cause{lifting, f.Part.At.At})
	}
	if f.Sealant != "" {
		out = append(out, Cause{"chemical", f.KeyPlace("sealant")})
	}
	for _, m := range f.Readings() {
		out = append(out, m.causes()...)
	}
	return out
}

func (f *Fit) complete(c *Card) bool {
	whole := !f.bad && f.Part.complete(c) && f.Mate.complete(c)
	for _, m := range f.Readings() {
		whole = whole && m.complete(c)
	}
	for _, w := range f.Warmths() {
		whole = whole && len(w.With) == len(w.Method.With)
	}
	for _, p := range f.Pushes() {
		whole = whole && len(p.With) == len(p.Method.With)
	}
	return whole
}

// complete reports whether the part was found, or is only words.
func (m Member) complete(c *Card) bool {
	return m.Part != nil || c.Unit == nil || !syntax.WellFormed(m.At.Name)
}

func (r *resolver) fit(p *procedure.Fit) Item {
	f := &Fit{Fit: p, Part: r.member(p.Part), Mate: r.member(p.Mate), bad: p.Bad.IsSet()}
	f.heavy = r.tooHeavy(f.Part)
	f.measure(r)
	f.Chill = r.warmth(f, p.Chill, false)
	f.Heat = r.warmth(f, p.Heat, true)
	f.Press, f.Pull = r.push(f, p.Press), r.push(f, p.Pull)
	if p.Depth != nil {
		f.Depth = r.measurement(p.Depth)
	}
	return f
}

// member looks up a part of the unit. A text that is not an id, and any text
// without a unit, stands for itself.
func (r *resolver) member(n procedure.Named) Member {
	u := r.card.Unit
	switch {
	case !syntax.WellFormed(n.Name):
		return Member{n.Name, nil, n}
	case u == nil:
		return Member{value.NameOf(n.Name), nil, n}
	}
	part := u.Part(n.Name)
	if part == nil {
		r.reportUnknown(diag.OnUnit, "part-unknown", "part", n, u.PartIDs(), "parts in the unit")
		return Member{value.NameOf(n.Name), nil, n}
	}
	return Member{part.Name, part, n}
}

// toolsNamed looks up the tools of a method.
func (r *resolver) toolsNamed(names []procedure.Named) []*shop.Item {
	var out []*shop.Item
	for _, n := range names {
		if item := r.findTool(n); item != nil {
			out = append(out, item)
		}
	}
	return out
}

// A size is the diameter of a seat and its interference, in mm.
type size struct {
	diameter *big.Rat
	min, max *big.Rat // interference; min is nil if only max is known
}

// Size returns the maximum interference and the diameter in mm, nil if not
// stated.
func (f *Fit) Size() (most, diameter *big.Rat) {
	if f.size == nil {
		return nil, nil
	}
	return f.size.max, f.size.diameter
}

// HasSize reports whether the fit states its interference and diameter.
func (f *Fit) HasSize() bool { return f.size != nil }

// A need is a key that a computation takes, and whether it is given.
type need struct {
	key   string
	given bool
}

// missingKeys names the keys that a computation of the fit lacks, "" for none.
// All computations take the interference and the diameter, either of which may
// come from a tolerance.
func (f *Fit) missingKeys(more ...need) string {
	size := f.Tolerance.Name != ""
	var out []string
	for _, n := range append([]need{{"interference", size || f.Interference != nil}, {"diameter", size || f.Diameter != nil}}, more...) {
		if !n.given {
			out = append(out, "`"+n.key+"`")
		}
	}
	return strings.Join(out, ", ")
}

// measure resolves diameter and interference.
func (f *Fit) measure(r *resolver) {
	switch {
	case f.Tolerance.Name != "":
		hole, shaft, err := quantity.ParseFit(f.Tolerance.Name, r.card.Shop.Mark())
		var least, most *big.Rat
		if err == nil {
			least, most, err = bench.Interference(hole, shaft)
		}
		if err != nil {
			fix := "write the fit as `50 H7/p6`, or the interference as a band with its unit of measure"
			if m := shaftFirst.FindStringSubmatch(f.Tolerance.Name); m != nil {
				fix = "write the hole first: `" + m[1] + m[3] + "/" + m[2] + "`"
			}
			r.msgs.Report("quantity-malformed", f.Tolerance.At, fix, "`%s` does not say what the interference is: %s", f.Tolerance.Name, err)
			f.bad = true
			return
		}
		if f.Diameter != nil && inMillimeters(f.Diameter).Cmp(hole.Size) != 0 {
			r.msgs.Report("quantity-malformed", f.KeyPlace("diameter"), "take `diameter:` out: the fit has the size", "`%s` is not the size of `%s`", f.Diameter.Unit.After(f.Diameter.Text), f.Tolerance.Name)
			f.bad = true
			return
		}
		if r.hasPlay(f, most, f.Tolerance.Name) {
			return
		}
		thousand := big.NewRat(1000, 1)
		f.size = &size{hole.Size, least.Quo(least, thousand), most.Quo(most, thousand)}
	case f.Interference == nil || f.Diameter == nil:
	case f.Interference.High == nil:
		r.msgs.Report("limits-bare", f.KeyPlace("interference"), "write a band, such as `0.010 to 0.035 mm`, or `max` before it", "`%s` does not say how much the interference is at most", f.Interference.Written)
		f.bad = true
	case r.hasPlay(f, f.Interference.High, f.Interference.Written):
	default:
		b := f.Interference.In(millimeter)
		f.size = &size{inMillimeters(f.Diameter), b.Low, b.High}
	}
}

// shaftFirst matches a fit with the shaft before the hole.
var shaftFirst = regexp.MustCompile(`^(.*[0-9] ?)([a-z]{1,2}[0-9]{1,2}) ?/ ?([A-Z]{1,2}[0-9]{1,2})$`)

// hasPlay reports a fit with clearance even at its tightest.
func (r *resolver) hasPlay(f *Fit, most *big.Rat, written string) bool {
	if most.Sign() > 0 {
		return false
	}
	r.msgs.Report("quantity-malformed", f.KeyPlace("interference"), "check it again: a fit that holds is such as `50 H7/p6`", "`%s` leaves play, and nothing holds the part", written)
	f.bad = true
	return true
}
