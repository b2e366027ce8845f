package quantity

import (
	"strings"
	"unicode"

	"benchwright/cmd/benchwright/internal/diag"
)

// nearest returns the symbol of the unit of a dimension that an unknown spelling is
// sure to mean, "" if there is doubt: a mend never changes the size of a number. The
// letters are those of a unit but for their case and what joins them, or one slip from
// them, and near to no other unit's.
func nearest(spelling string, d Dimension) string {
	l, k := lexiconOf(), key(spelling)
	var found []Unit
	bare := func(s string) string { return strings.ReplaceAll(strings.ToLower(s), "·", "") }
	add := func(u Unit) {
		if d == None || u.Dimension == d {
			found = append(found, u)
		}
	}
	for _, known := range l.keys {
		if bare(known) == bare(k) && samePrefixes(known, k) {
			add(l.units[known])
		}
	}
	if len(found) == 0 {
		for _, known := range l.keys {
			if isWord(known) && isWord(k) && near(k, known, 1) || oneSlip(k, known) {
				add(l.units[known])
			}
		}
		for _, known := range l.keys {
			if len(found) > 0 && (isWord(known) && near(k, known, 2) || near(k, known, 1)) && !alike(l.units[known], found[0]) {
				return ""
			}
		}
	}
	for _, u := range found {
		if !alike(u, found[0]) {
			return ""
		}
	}
	if len(found) == 0 {
		return ""
	}
	return found[0].Symbol
}

// alike reports that a number means the same in both units.
func alike(a, b Unit) bool {
	return a.Dimension == b.Dimension && a.factor.Cmp(b.factor) == 0
}

// near reports that few edits turn one word into the other.
func near(a, b string, edits int) bool {
	return diag.Distance(strings.ToLower(a), strings.ToLower(b), edits+1) <= edits
}

// isWord reports a unit's name written out, such as "millimeters" or "inch·pounds".
func isWord(s string) bool {
	for part := range strings.SplitSeq(s, "·") {
		if len(part) < 4 || strings.ContainsFunc(part, func(r rune) bool { return !unicode.IsLetter(r) }) {
			return false
		}
	}
	return true
}

// oneSlip reports that in a unit of several parts one letter is another, and not the
// first of its part, where a prefix stands: lb-fr for lb-ft.
func oneSlip(a, b string) bool {
	x, y := []rune(a), []rune(b)
	if len(x) != len(y) || !strings.Contains(a, "·") {
		return false
	}
	slips := 0
	for i := range x {
		if x[i] == y[i] {
			continue
		}
		if slips++; i == 0 || x[i-1] == '·' || x[i] == '·' || y[i] == '·' {
			return false
		}
	}
	return slips == 1
}

// samePrefixes reports that two spellings that differ in case agree where case is a
// size: a thousandth and a million are m and M before another letter.
func samePrefixes(a, b string) bool {
	x, y := []rune(strings.ReplaceAll(a, "·", "")), []rune(strings.ReplaceAll(b, "·", ""))
	if len(x) != len(y) || len(x) == 1 && a != b {
		return false
	}
	for i, r := range x {
		if r != y[i] && unicode.ToLower(r) == 'm' && i+1 < len(x) && unicode.IsLetter(x[i+1]) {
			return false
		}
	}
	return true
}
