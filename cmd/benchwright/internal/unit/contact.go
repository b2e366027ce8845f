package unit

import (
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
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
	Right  string // where a right pattern lies: central, toward-toe or toward-heel
	By     map[Fault]*Correction
	Source string
}

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
	for _, side := range []Side{Drive, Coast} {
		if c := n.Get(string(side)); c != nil {
			if out := r.contact(c); out != nil {
				if g.Contact == nil {
					g.Contact = map[Side]*Contact{}
				}
				g.Contact[side] = out
			}
		}
	}
	g.ContactBad = n != nil && len(g.Contact) < len(r.Fields(n))
}

// contact reads one side's pattern, nil where something of it is wrong, which is
// reported here or by the schema.
func (r reader) contact(n *syntax.Node) *Contact {
	c := &Contact{Right: r.Text(n.Get("right")), By: map[Fault]*Correction{}, Source: r.Text(n.Get("source"))}
	for _, f := range Faults {
		k := n.Get(string(f))
		pack, change := k.Get("pack"), r.Text(k.Get("change"))
		if r.Text(pack) == "" || change != "thicker" && change != "thinner" || !r.Known("part-unknown", "pack", pack, r.unit.PackIDs(), "packs") {
			return nil
		}
		c.By[f] = &Correction{r.unit.Pack(r.Text(pack)), change == "thicker", k.Get("change").Place()}
		if o := c.By[f.Opposite()]; o != nil && o.Pack == c.By[f].Pack && o.Thicker == c.By[f].Thicker {
			d := r.Msgs.Report("contact-alike", c.By[f].At, "look both up again: one of the two is "+map[bool]string{true: "thinner", false: "thicker"}[o.Thicker],
				"`%s` and `%s` are opposite faults and call for the same change", f.Opposite(), f)
			d.Related = append(d.Related, diag.Related{At: o.At, Message: "the other one"})
			return nil
		}
	}
	if c.Right == "" || c.Source == "" {
		return nil
	}
	return c
}
