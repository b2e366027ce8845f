package unit

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/value"
)

// A Side is one flank of the gear's teeth, by what loads it.
type Side string

// The sides.
const (
	Drive Side = "drive"
	Coast Side = "coast"
)

// The sides of a curved tooth. A unit may say in words of its own which side
// drives.
const (
	Convex  = "convex"
	Concave = "concave"
)

// A Contact is how one side's contact pattern is judged and corrected, as the
// unit's manual has it. Manuals give opposite words for the same fault, for the
// pack may sit on either side of its race: nothing of it is assumed.
type Contact struct {
	Right  Lie
	By     map[Fault]*Correction
	Source string
}

// A Lie is where a right pattern lies on its flank.
type Lie string

// Where a right pattern lies.
const (
	Central    Lie = "central"
	TowardToe  Lie = "toward-toe"
	TowardHeel Lie = "toward-heel"
)

// A Fault is where a wrong pattern lies.
type Fault string

// The faults: near the top of the tooth, near its root, toward its small end,
// toward its large end.
const (
	High Fault = "high"
	Low  Fault = "low"
	Toe  Fault = "toe"
	Heel Fault = "heel"
)

// Faults lists the faults in the order in which they are corrected: the depth
// first, which moves the backlash too.
var Faults = []Fault{High, Low, Toe, Heel}

// Opposite returns the fault that calls for the opposite correction.
func (f Fault) Opposite() Fault {
	return map[Fault]Fault{High: Low, Low: High, Toe: Heel, Heel: Toe}[f]
}

// A Correction is the pack that is changed, and which way.
type Correction struct {
	Pack    *Pack
	Thicker bool // else thinner
	At      source.Place
}

// contacts reads the contact patterns of a gear pair. It stands after the packs
// that they name; what is not whole is left out.
func (r reader) contacts(g *Pair) {
	n := g.Node.Get("contact")
	whole := r.thing()
	for _, f := range whole.Fields(n) {
		in := r.thing()
		if c := in.contact(f.Value); !in.Bad().Is() {
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

// contact reads one side's pattern.
func (r reader) contact(n *syntax.Node) *Contact {
	c := &Contact{Right: value.Word(r.Reader, n.Get("right"), Central, TowardToe, TowardHeel), By: map[Fault]*Correction{}, Source: r.Text(n.Get("source"))}
	if !r.Need(n, "right", "source", string(High), string(Low), string(Toe), string(Heel)) {
		return nil
	}
	for _, f := range Faults {
		k := n.Get(string(f))
		change := value.Word(r.Reader, k.Get("change"), "thicker", "thinner")
		if !r.Need(k, "pack", "change") || !r.Known("part-unknown", "pack", k.Get("pack"), r.unit.PackIDs(), "packs") {
			return nil
		}
		c.By[f] = &Correction{r.unit.Pack(r.Text(k.Get("pack"))), change == "thicker", k.Get("change").Place()}
		if o := c.By[f.Opposite()]; o != nil && o.Pack == c.By[f].Pack && o.Thicker == c.By[f].Thicker {
			d := r.Refuse("contact-alike", c.By[f].At, "look both up again: one of the two is "+map[bool]string{true: "thinner", false: "thicker"}[o.Thicker],
				"`%s` and `%s` are opposite faults and call for the same change", f.Opposite(), f)
			d.Related = append(d.Related, diag.Related{At: o.At, Message: "the other one"})
			return nil
		}
	}
	return c
}
