package procedure

import "benchwright/cmd/benchwright/internal/quantity"

// Timed is work that must be finished within a time.
type Timed struct {
	Base
	Within   *quantity.Value
	From     string // the event from which the time counts
	IfMissed string
}

func (r reader) timed(b Base) Item {
	n := b.Node
	r.Require(n, "within")
	return &Timed{b, r.Value(n.Get("within"), quantity.Time), r.Text(n.Get("from")), r.Text(n.Get("if-missed"))}
}
