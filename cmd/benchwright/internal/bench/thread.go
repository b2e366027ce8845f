package bench

import (
	"math/big"
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
)

// coarse lists the pitch of metric coarse threads in hundredths of mm by
// diameter in tenths of mm (ISO 261; those of M5 to M24 as in ISO 898-1, the
// others from memory).
var coarse = map[int64]int64{
	16: 35, 20: 40, 25: 45, 30: 50, 35: 60, 40: 70, 50: 80, 60: 100, 70: 100, 80: 125, 100: 150, 120: 175, 140: 200,
	160: 200, 180: 250, 200: 250, 220: 250, 240: 300, 270: 300, 300: 350, 330: 350, 360: 400, 390: 400,
}

var (
	metricName  = regexp.MustCompile(`^M ?([0-9]+(?:[.,][0-9]+)?)(?: ?[x×*] ?([0-9]+(?:[.,][0-9]+)?))?(?:[ -].*)?$`)
	unifiedName = regexp.MustCompile(`^(?:#([0-9]{1,2})|([0-9]+(?:[-/][0-9]+)?(?:/[0-9]+)?)(?: ?in)?) ?- ?([0-9]+(?:\.[0-9]+)?)(?:[ -].*)?$`)
)

// ParseThread reads a thread as it is named: "M8" (coarse), "M24×1.5",
// "1/2-13 UNC", "1-1/8-7", "#10-24". ok is false for another, for a metric one
// without its pitch that has no coarse one, and for a unified one without its
// threads to the inch.
func ParseThread(name string) (t Thread, ok bool) {
	name = strings.TrimSpace(name)
	if m := metricName.FindStringSubmatch(name); m != nil {
		t.Diameter, t.Pitch = decimal(m[1]), decimal(m[2])
		if m[2] == "" {
			tenths := new(big.Rat).Mul(t.Diameter, big.NewRat(10, 1))
			p, known := int64(0), false
			if tenths.IsInt() && tenths.Num().IsInt64() {
				p, known = coarse[tenths.Num().Int64()]
			}
			if !known {
				return Thread{}, false
			}
			t.Pitch = big.NewRat(p, 100)
		}
		return t, t.sound()
	}
	m := unifiedName.FindStringSubmatch(name)
	if m == nil {
		return Thread{}, false
	}
	if m[1] != "" { // numbered sizes: 0.060 in and 0.013 in more a number (ASME B1.1)
		t.Diameter = new(big.Rat).Mul(decimal(m[1]), big.NewRat(13, 1000))
		t.Diameter.Add(t.Diameter, big.NewRat(60, 1000))
	} else {
		n, problem := quantity.ParseNumber(m[2], quantity.Point)
		if problem != nil {
			return Thread{}, false
		}
		t.Diameter = n.Value
	}
	t.PerInch = decimal(m[3])
	return t, t.sound()
}

// decimal reads a number of digits with either mark, nil for none.
func decimal(text string) *big.Rat {
	x, ok := new(big.Rat).SetString(strings.Replace(text, ",", ".", 1))
	if !ok {
		return nil
	}
	return x
}
