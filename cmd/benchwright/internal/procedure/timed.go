package procedure

import "benchwright/cmd/benchwright/internal/quantity"

// Timed is work that must be done before a time runs out.
type Timed struct {
	Base
	Within   *quantity.Value
	From     string // the moment from which it counts
	IfMissed string
}

func (r reader) timed(b Base) Item {
	n := b.Node
	r.Require(n, "within")
	return &Timed{b, r.Value(n.Get("within"), quantity.Time), r.Text(n.Get("from")), r.Text(n.Get("if-missed"))}
}
