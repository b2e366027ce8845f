package compare

import (
	"strconv"
	"strings"
)

// revised reports whether the revision of a card was raised from one side to
// the other, or need not be: the old side has no such card, or only a draft.
func revised(a, b *Made) bool {
	if a == nil || b == nil || len(a.Cards) == 0 || len(b.Cards) == 0 {
		return a == nil || b == nil
	}
	x, y := a.Cards[0].Procedure, b.Cards[0].Procedure
	return x.Draft || raised(x.Revision, y.Revision)
}

// raised reports whether a revision comes after another: numbers by their size,
// others by their length and then by the alphabet, so that AA comes after Z.
func raised(old, new string) bool {
	x, errX := strconv.Atoi(old)
	y, errY := strconv.Atoi(new)
	if errX == nil && errY == nil {
		return y > x
	}
	old, new = strings.ToUpper(old), strings.ToUpper(new)
	if len(old) != len(new) {
		return len(new) > len(old)
	}
	return new > old
}
