package procedure

import (
	"regexp"

	"benchwright/cmd/benchwright/internal/quantity"
)

// leastTime matches the words of a shortest time, which a cure or a soak has.
var leastTime = regexp.MustCompile(`(?i)^(?:(?:at least|min\.|not less than|more than|longer than|(?:min|minimum|over|above)\b)\s*|[≥>]=?\s*)`)

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
	if within := n.Get("within"); leastTime.MatchString(r.Text(within)) {
		r.Refuse("quantity-malformed", within.Place(), "say in the words of the step how long to wait, and take this block out",
			"`within:` is the most time that work may take, and cannot say `%s`", within.Text)
		return &Timed{Base: b, From: r.Text(n.Get("from")), IfMissed: r.Text(n.Get("if-missed"))}
	}
	return &Timed{b, r.Value(n.Get("within"), quantity.Time), r.Text(n.Get("from")), r.Text(n.Get("if-missed"))}
}
