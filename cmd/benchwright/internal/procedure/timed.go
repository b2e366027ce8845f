package procedure

import "benchwright/cmd/benchwright/internal/quantity"

// Timed is work that must be done before a time runs out.
type Timed struct {
	Base
	Within   *quantity.Value // nil where it could not be read, which is reported
	From     string          // the moment from which it counts
	IfMissed string
}

func (r *Reader) timed(b Base) Item {
	var bad bool
	n := b.Node
	return &Timed{b, r.value(n.Get("within"), quantity.Time, &bad), text(n.Get("from")), text(n.Get("if-missed"))}
}
