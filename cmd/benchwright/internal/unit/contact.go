package unit

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// A Side is the flank of the gear's teeth that is loaded: in drive or in
// coast.
type Side string

const (
	Drive Side = "drive"
	Coast Side = "coast"
)

// The flanks of a curved tooth, as values of Pair.DriveSide.
const (
	Convex  = "convex"
	Concave = "concave"
)

// A Contact tells how the contact pattern of one side is judged and corrected,
// according to the unit's manual. Manuals give opposite corrections for the
// same fault, because the pack may be on either side of its race, so no
// correction is assumed.
type Contact struct {
	RightPosition PatternPosition
	Corrections   map[Fault]*Correction
	Source        string
}

// A PatternPosition is the position of a correct contact pattern on its flank.
type PatternPosition string

const (
	Central    PatternPosition = "central"
	TowardToe  PatternPosition = "toward-toe"
	TowardHeel PatternPosition = "toward-heel"
)

// A Fault is the position of a wrong contact pattern.
type Fault string

// The faults: near the tip of the tooth, near its root, toward its small end,
// toward its large end.
const (
	High Fault = "high"
	Low  Fault = "low"
	Toe  Fault = "toe"
	Heel Fault = "heel"
)

// Faults lists the faults in the order in which they are corrected: depth
// first, because it changes the backlash too.
var Faults = []Fault{High, Low, Toe, Heel}

// Opposite returns the fault that needs the opposite correction.
func (f Fault) Opposite() Fault {
	return map[Fault]Fault{High: Low, Low: High, Toe: Heel, Heel: Toe}[f]
}

// A Correction is the pack to change, and the direction.
type Correction struct {
	Pack    *Pack
	Thicker bool // else thinner
	At      source.Place
}

// contacts reads the contact patterns of a gear pair. It must run after the
// packs, which they name. Incomplete patterns are left out.
func (r reader) contacts(g *Pair) {
	n := g.Node.Get("contact")
	whole := r.forPart()
	for _, f := range whole.Fields(n) {
		in := r.forPart()
		if c := in.contact(f.Value); !in.Bad().IsSet() {
			if g.Contact == nil {
				g.Contact = map[Side]*Contact{}
			}
			g.Contact[Side(f.Key)] = c
		} else {
			whole.Fail(in.Bad())
		}
	}
	g.ContactBad = whole.Bad()
}

// contact reads the contact pattern of one side.
func (r reader) contact(n *syntax.Node) *Contact {
	c := &Contact{RightPosition: value.OneOf(r.Reader, n.Get("right"), Central, TowardToe, TowardHeel), Corrections: map[Fault]*Correction{}, Source: r.Text(n.Get("source"))}
	if !r.Require(n, "right", "source", string(High), string(Low), string(Toe), string(Heel)) {
		return nil
	}
	for _, f := range Faults {
		k := n.Get(string(f))
		change := value.OneOf(r.Reader, k.Get("change"), "thicker", "thinner")
		if !r.Require(k, "pack", "change") || !r.KnownName("part-unknown", "pack", k.Get("pack"), r.unit.PackIDs(), "packs") {
			return nil
		}
		c.Corrections[f] = &Correction{r.unit.Pack(r.Text(k.Get("pack"))), change == "thicker", k.Get("change").Place()}
		if o := c.Corrections[f.Opposite()]; o != nil && o.Pack == c.Corrections[f].Pack && o.Thicker == c.Corrections[f].Thicker {
			d := r.Refuse("contact-alike", c.Corrections[f].At, "check both again: one of the two is "+map[bool]string{true: "thinner", false: "thicker"}[o.Thicker],
				"`%s` and `%s` are opposite faults and call for the same change", f.Opposite(), f)
			d.Related = append(d.Related, diag.Related{At: o.At, Message: "the other one"})
			return nil
		}
	}
	return c
}
