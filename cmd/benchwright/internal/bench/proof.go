package bench

import (
	"math/big"
	"regexp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
)

// isoProof lists the proof loads of ISO 898-1 for coarse threads, in N, of the
// classes 8.8, 10.9 and 12.9, by diameter in mm and pitch in hundredths of mm.
var isoProof = [...]struct{ diameter, pitch, p88, p109, p129 int64 }{
	{5, 80, 8230, 11800, 13800},
	{6, 100, 11600, 16700, 19500},
	{8, 125, 21200, 30400, 35500},
	{10, 150, 33700, 48100, 56300},
	{12, 175, 48900, 70000, 81800},
	{14, 200, 66700, 95500, 112000},
	{16, 200, 91000, 130000, 152000},
	{20, 250, 147000, 203000, 238000},
	{24, 300, 212000, 293000, 342000},
}

// A strength is the stress under proof load of a class, for diameters above one and
// up to another.
type strength struct {
	class       string
	above, upTo string // mm, or in for a grade
	proof       int64  // MPa, or psi for a grade
}

// metricProof has the classes of ISO 898-1 (4.6 to 6.8 and 9.8 from memory) and of the
// stainless steels of ISO 3506-1, of which the 0.2 % proof stress stands for it (from
// memory).
var metricProof = []strength{
	{"4.6", "1.6", "39", 225}, {"4.8", "1.6", "16", 310}, {"5.6", "1.6", "39", 280}, {"5.8", "1.6", "24", 380}, {"6.8", "1.6", "24", 440},
	{"8.8", "1.6", "16", 580}, {"8.8", "16", "39", 600}, {"9.8", "1.6", "16", 650}, {"10.9", "1.6", "39", 830}, {"12.9", "1.6", "39", 970},
	{"A2-50", "1.6", "39", 210}, {"A2-70", "1.6", "24", 450}, {"A2-80", "1.6", "24", 600},
	{"A4-50", "1.6", "39", 210}, {"A4-70", "1.6", "24", 450}, {"A4-80", "1.6", "24", 600},
}

// gradeProof has the grades of SAE J429 (sizes of grade 1 from memory).
var gradeProof = []strength{
	{"1", "1/4", "3/2", 33000},
	{"2", "1/4", "3/4", 55000}, {"2", "3/4", "3/2", 33000},
	{"5", "1/4", "1", 85000}, {"5", "1", "3/2", 74000},
	{"8", "1/4", "3/2", 120000},
}

var className = regexp.MustCompile(`(?i)^(?:(?:property )?(?:class|cl\.?)|(?:SAE(?: J429)? ?)?(?:grade|gr\.?)|SAE(?: J429)?)? ?([0-9.]+|A[24]-[0-9]+)$`)

// ParseClass reads a property class of ISO 898-1 or ISO 3506-1, or a grade of SAE J429,
// as shops write it: "8.8", "class 10.9", "A4-80", "5", "grade 5", "Gr. 8", "SAE 5". ok is
// false for another, and for one of the other system than the thread.
func (t Thread) ParseClass(text string) (class string, ok bool) {
	m := className.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return "", false
	}
	class = strings.ToUpper(m[1])
	return class, slices.Contains(t.Classes(), class)
}

// Classes are the classes or grades of a thread's system, the weakest first.
func (t Thread) Classes() []string {
	var out []string
	for _, s := range t.strengths() {
		if !slices.Contains(out, s.class) {
			out = append(out, s.class)
		}
	}
	return out
}

func (t Thread) strengths() []strength {
	if t.PerInch != nil {
		return gradeProof
	}
	return metricProof
}

// ProofLoad returns the proof load in N of a thread in a class or grade, as ParseClass
// reads it, and whether it is a row of the table of ISO 898-1, which comes first.
// Elsewhere it is As·Sp with Sp
//
//	8.8: 580 MPa to 16 mm, 600 above; 10.9: 830; 12.9: 970
//	grade 2: 55 000 psi to 3/4 in, 33 000 above; 5: 85 000 to 1 in, 74 000 above; 8: 120 000
//
// ok is false for another class, and outside the sizes of the standards: 1.6 to 39 mm
// and 1/4 to 1-1/2 in, fewer for some.
func (t Thread) ProofLoad(text string) (proof *big.Rat, listed, ok bool) {
	area := t.StressArea()
	class, known := t.ParseClass(text)
	if area == nil || !known {
		return nil, false, false
	}
	if t.Pitch != nil {
		for _, r := range isoProof {
			if t.Diameter.Cmp(big.NewRat(r.diameter, 1)) != 0 || t.Pitch.Cmp(big.NewRat(r.pitch, 100)) != 0 {
				continue
			}
			if n := map[string]int64{"8.8": r.p88, "10.9": r.p109, "12.9": r.p129}[class]; n > 0 {
				return big.NewRat(n, 1), true, true
			}
		}
	}
	for i, s := range t.strengths() {
		first := i == 0 || t.strengths()[i-1].class != class // its least size is of it
		from := t.Diameter.Cmp(decimal(s.above))
		if s.class != class || from < 0 || from == 0 && !first || t.Diameter.Cmp(decimal(s.upTo)) > 0 {
			continue
		}
		area.Mul(area, big.NewRat(s.proof, 1)) // a MPa is a N/mm²
		if t.PerInch != nil {
			return quantity.Convert(area, poundForce, newton), false, true
		}
		return area, false, true
	}
	return nil, false, false
}
