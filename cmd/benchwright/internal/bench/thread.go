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

// Behind the size of a thread may stand its tolerance class and its hand, and behind
// that of an inch one its series.
const tail = `(?:[ -]+(?:[3-9][a-hA-H](?:[3-9][a-hA-H])?|[123][AB]|LH|RH))*`

var (
	metricName  = regexp.MustCompile(`^[Mm] ?([0-9]+(?:[.,][0-9]+)?)(?: ?[x×*] ?([0-9]+(?:[.,][0-9]+)?))?` + tail + `$`)
	unifiedName = regexp.MustCompile(`^(?:#([0-9]{1,2})|([0-9]+(?:[-/][0-9]+)?(?:/[0-9]+)?)(?: ?in|["″])?) ?- ?([0-9]+(?:\.[0-9]+)?)(?:[ -]+(UN[A-Z]{0,3}))?` + tail + `$`)
	otherName   = regexp.MustCompile(`^(?:(?:G|R|Rc|Rp|BSPP|BSPT|BSP|Tr) ?[0-9]+(?:[-/. ×x][0-9/]+)*(?: ?[AB])?|[0-9]+(?:[-/][0-9]+)*["″]?(?: ?- ?[0-9.]+)? ?(?:NPTF?|NPSM|BSPP|BSPT|BSP|BSW|BSF|ACME|Acme))` + tail + `$`)
)

// unifiedSeries lists the threads to the inch of the coarse (UNC) and fine (UNF) series by
// nominal size in thousandths of an inch, numbered sizes to three places (ASME B1.1,
// from memory).
var unifiedSeries = map[string]map[string]string{
	"UNC": {"112": "40", "125": "40", "138": "32", "164": "32", "190": "24", "216": "24", "250": "20", "312.5": "18", "375": "16", "437.5": "14",
		"500": "13", "562.5": "12", "625": "11", "750": "10", "875": "9", "1000": "8", "1125": "7", "1250": "7", "1375": "6", "1500": "6"},
	"UNF": {"112": "48", "125": "44", "138": "40", "164": "36", "190": "32", "216": "28", "250": "28", "312.5": "24", "375": "24", "437.5": "20",
		"500": "20", "562.5": "18", "625": "18", "750": "16", "875": "14", "1000": "12", "1125": "12", "1250": "12", "1375": "12", "1500": "12"},
}

// OtherThread reports the name of a thread that is neither metric nor unified, such as
// a pipe thread ("G 1/2", "1/4-18 NPT") or a trapezoidal one: no bolt's.
func OtherThread(name string) bool { return otherName.MatchString(strings.TrimSpace(name)) }

// ParseThread reads a thread as it is named: "M8" (coarse), "M24×1.5", "m8x1.25-6g",
// "1/2-13 UNC", "3/8\"-16", "1-1/8-7", "#10-24". ok is false for another; for a metric
// one without its pitch that has no coarse one; for a unified one without its threads to
// the inch; and for a pitch that no thread of its size has: above the coarse one (ISO
// 261), above a quarter of the diameter, or not that of the series that it names.
func ParseThread(name string) (t Thread, ok bool) {
	name = strings.TrimSpace(name)
	if m := metricName.FindStringSubmatch(name); m != nil {
		t.Diameter, t.Pitch = decimal(m[1]), decimal(m[2])
		tenths := new(big.Rat).Mul(t.Diameter, big.NewRat(10, 1))
		known := false
		if tenths.IsInt() && tenths.Num().IsInt64() {
			var p int64
			if p, known = coarse[tenths.Num().Int64()]; known && t.Pitch != nil && t.Pitch.Cmp(big.NewRat(p, 100)) > 0 {
				return Thread{}, false
			}
			if t.Pitch == nil && known {
				t.Pitch = big.NewRat(p, 100)
			}
		}
		if t.Pitch == nil {
			return Thread{}, false
		}
		return t, t.sound() && t.slender(t.Pitch)
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
	thousandths := quantity.Decimal(new(big.Rat).Mul(t.Diameter, big.NewRat(1000, 1)), quantity.Point)
	if n, listed := unifiedSeries[m[4]][thousandths]; listed && decimal(n).Cmp(t.PerInch) != 0 {
		return Thread{}, false
	}
	return t, t.sound() && t.slender(new(big.Rat).Inv(t.PerInch))
}

// slender reports that a pitch is at most a quarter of the diameter, as in every
// thread of ISO 261 and ASME B1.1.
func (t Thread) slender(pitch *big.Rat) bool {
	return new(big.Rat).Mul(pitch, big.NewRat(4, 1)).Cmp(t.Diameter) <= 0
}

// decimal reads a number of digits with either mark, nil for none.
func decimal(text string) *big.Rat {
	x, ok := new(big.Rat).SetString(strings.Replace(text, ",", ".", 1))
	if !ok {
		return nil
	}
	return x
}
