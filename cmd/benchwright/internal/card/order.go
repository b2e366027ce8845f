package card

import "benchwright/cmd/benchwright/internal/bench"

// order returns the order in which a set is tightened: the one written, if it
// names each position once, else the usual one for the pattern; nil if there
// is nothing to say.
func order(t *Torque) []int {
	if !t.Set() {
		return nil
	}
	f := t.Fastener
	if written := t.Torque.Order; len(written) > 0 {
		if !bench.CheckOrder(f.Count, written).Good() {
			return nil // a rule reports it
		}
		return written
	}
	p, ok := bench.ParseBoltPattern(string(f.Pattern))
	if !ok || f.Count < 3 {
		return nil
	}
	return bench.OrderOf(p, f.Count)
}

// Drawn reports whether the order is drawn in the pattern of the fasteners. A
// rectangle is two equal rows.
func (t *Torque) Drawn() bool {
	if t.Order == nil {
		return false
	}
	p, ok := bench.ParseBoltPattern(string(t.Fastener.Pattern))
	return ok && (p != bench.BoltRectangle || t.Fastener.Count%2 == 0)
}
