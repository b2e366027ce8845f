package quantity

import (
	"errors"
	"math/big"
	"strconv"
	"strings"
)

// The reasons for which a tolerance gives no limits.
var (
	ErrToleranceForm  = errors.New("not a size with a tolerance such as `25 k6` or `52 H7`")
	ErrToleranceSize  = errors.New("the size is not above 0 and up to 250 mm")
	ErrToleranceGrade = errors.New("the grade is not one of 5 to 12")
	ErrToleranceZone  = errors.New("no deviation is known for this letter with this grade")
	ErrToleranceRow   = errors.New("the row is from memory, and no formula checks it")
)

// A Tolerance is a size with an ISO 286 tolerance: 52 H7 for a hole, 25 k6 for
// a shaft. Tolerances of rolling bearings are a different system.
type Tolerance struct {
	Size   *big.Rat // mm
	Letter string   // fundamental deviation: capitals for a hole, small letters for a shaft
	Grade  int      // IT grade: 7 for H7
}

// Hole reports whether the tolerance is that of a hole.
func (t Tolerance) Hole() bool { return t.Letter == strings.ToUpper(t.Letter) }

// ParseTolerance parses a size with its tolerance, "25 k6", "⌀52H7", "25 mm
// k6", or "6,5 h9" with a decimal comma. The size is in mm.
func ParseTolerance(text string, mark DecimalMark) (Tolerance, error) {
	text = strings.TrimLeft(text, "⌀∅Øø"+blanks)
	zone := strings.TrimLeft(text, "0123456789.,")
	n, problem := ParseNumber(text[:len(text)-len(zone)], mark)
	zone = strings.TrimPrefix(strings.TrimLeft(zone, blanks), "mm")
	letter, grade, ok := parseZone(zone)
	if problem != nil || !ok {
		return Tolerance{}, ErrToleranceForm
	}
	return Tolerance{n.Value, letter, grade}, nil
}

// ParseFit parses a fit, "50 H7/p6": one size, the hole first.
func ParseFit(text string, mark DecimalMark) (hole, shaft Tolerance, err error) {
	first, second, _ := strings.Cut(text, "/")
	if hole, err = ParseTolerance(first, mark); err != nil {
		return Tolerance{}, Tolerance{}, err
	}
	letter, grade, ok := parseZone(second)
	shaft = Tolerance{hole.Size, letter, grade}
	if !ok || !hole.Hole() || shaft.Hole() {
		return Tolerance{}, Tolerance{}, ErrToleranceForm
	}
	return hole, shaft, nil
}

// parseZone parses "k6" or "JS7".
func parseZone(text string) (letter string, grade int, ok bool) {
	text = strings.Trim(text, blanks)
	letter = strings.TrimRight(text, "0123456789")
	grade, err := strconv.Atoi(text[len(letter):])
	switch {
	case err != nil, letter != strings.ToUpper(letter) && letter != strings.ToLower(letter):
		return "", 0, false
	case strings.EqualFold(letter, "js"):
		return letter, grade, true
	}
	return letter, grade, len(letter) == 1 && strings.ContainsAny(strings.ToLower(letter), "abcdefghijklmnopqrstuvwxyz")
}

// Deviations returns the lower and upper deviation from the size, in µm, from
// the tables of ISO 286-1 and 286-2 up to 250 mm. A size on a boundary belongs
// to the lower range. Letters that are not in these tables, and grades other
// than 5 to 12, are errors, never guesses. JS and js are exactly half the
// grade to each side, where some tables print 12.5 as 12.
func (t Tolerance) Deviations() (lower, upper *big.Rat, err error) {
	if t.Size == nil || t.Size.Sign() <= 0 || t.Size.Cmp(big.NewRat(250, 1)) > 0 {
		return nil, nil, ErrToleranceSize
	}
	width, ok := gradeWidth(t.Size, t.Grade)
	if !ok {
		return nil, nil, ErrToleranceGrade
	}
	w := big.NewRat(width, 1)
	if strings.EqualFold(t.Letter, "js") {
		half := big.NewRat(width, 2)
		return new(big.Rat).Neg(half), half, nil
	}
	d, low, ok := t.fundamental()
	if !ok {
		return nil, nil, ErrToleranceZone
	}
	edge := big.NewRat(d, 1)
	if low {
		return edge, new(big.Rat).Add(edge, w), nil
	}
	return new(big.Rat).Sub(edge, w), edge, nil
}

// Checked reports whether the tests check the tolerance's rows by a formula of
// the standard. They cannot for sizes up to 3 mm, which the standard rounds
// differently, nor for j, which has no formula. Unchecked tolerances are not
// printed on cards.
func (t Tolerance) Checked() bool {
	return t.Size != nil && t.Size.Cmp(big.NewRat(3, 1)) > 0 && t.Letter != "j"
}

// Limits returns the limits of size in mm, exact to the µm of the tables.
// Unchecked rows are errors.
func (t Tolerance) Limits(mark DecimalMark) (Band, error) {
	lower, upper, err := t.Deviations()
	if err != nil {
		return Band{}, err
	}
	if !t.Checked() {
		return Band{}, ErrToleranceRow
	}
	mm := MustUnit("mm")
	at := func(deviation *big.Rat) Number {
		d := new(big.Rat).Quo(deviation, thousand)
		d.Add(d, t.Size)
		step := big.NewRat(1, 1000)
		if !times(d, thousand).IsInt() {
			step = new(big.Rat).SetFrac(big.NewInt(1), d.Denom())
		}
		return Number{d, Format(d, step, mark)}
	}
	low, high := at(lower), at(upper)
	return Band{Form: Range, Low: low.Value, High: high.Value, Unit: mm, Numbers: []Number{low, high}}, nil
}

// fundamental returns the fundamental deviation in µm, and whether it is the
// lower one; ok is false if the tables here lack it.
func (t Tolerance) fundamental() (d int64, low, ok bool) {
	letter := strings.ToLower(t.Letter)
	i := fineRange(t.Size)
	main := mainRange(t.Size)
	shaft, known := int64(0), false
	if row, is := shaftDeviations[letter]; is {
		shaft, known = row[main], true
	} else if row, is := pressDeviations[letter]; is {
		shaft, known = row[i], true
	}
	switch {
	case !known:
		return 0, false, false
	case !t.Hole():
		switch letter {
		case "d", "e", "f", "g", "h":
			return shaft, false, true
		case "j":
			return shaft, true, t.Grade == 5 || t.Grade == 6
		case "k":
			if t.Grade > 7 {
				shaft = 0
			}
		}
		return shaft, true, true
	}
	// A hole mirrors its shaft. In the finer grades, holes from K on are
	// shifted by Δ so that H7/p6 and P7/h6 fit alike (ISO 286-1, table of
	// holes).
	switch letter {
	case "d", "e", "f", "g", "h":
		return -shaft, true, true
	case "k", "m":
		if t.Grade > 8 {
			return 0, false, false
		}
	case "n":
		if t.Grade > 8 {
			if main > 0 {
				shaft = 0
			}
			return -shaft, false, true
		}
	case "p", "r", "s":
		if t.Grade > 7 {
			return -shaft, false, true
		}
	default:
		return 0, false, false
	}
	if main == 0 {
		return -shaft, false, true
	}
	coarse, _ := gradeWidth(t.Size, t.Grade)
	return -shaft + coarse - grades[t.Grade-5][main], false, true
}

// gradeWidth returns the width of an IT grade in µm.
func gradeWidth(size *big.Rat, grade int) (int64, bool) {
	if grade < 5 || grade > 12 {
		return 0, false
	}
	return grades[grade-4][mainRange(size)], true
}

// mainRange and fineRange return the index of a size's range. A range includes
// its upper edge but not its lower one.
func mainRange(size *big.Rat) int { return rangeOf(size, mainEdges[:]) }
func fineRange(size *big.Rat) int { return rangeOf(size, fineEdges[:]) }

func rangeOf(size *big.Rat, edges []int64) int {
	i := 0
	for i < len(edges)-1 && size.Cmp(big.NewRat(edges[i], 1)) > 0 {
		i++
	}
	return i
}

// The upper edges of the size ranges in mm, ISO 286-1.
var (
	mainEdges = [10]int64{3, 6, 10, 18, 30, 50, 80, 120, 180, 250}
	fineEdges = [16]int64{3, 6, 10, 18, 30, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250}
)

// grades holds IT4 to IT12 in µm by main range: ISO 286-1, table of standard
// tolerance grades, from memory and checked by its formula. IT4 serves only
// for the shift Δ of holes of grade 5.
var grades = [9][10]int64{
	{3, 4, 4, 5, 6, 7, 8, 10, 12, 14},
	{4, 5, 6, 8, 9, 11, 13, 15, 18, 20},
	{6, 8, 9, 11, 13, 16, 19, 22, 25, 29},
	{10, 12, 15, 18, 21, 25, 30, 35, 40, 46},
	{14, 18, 22, 27, 33, 39, 46, 54, 63, 72},
	{25, 30, 36, 43, 52, 62, 74, 87, 100, 115},
	{40, 48, 58, 70, 84, 100, 120, 140, 160, 185},
	{60, 75, 90, 110, 130, 160, 190, 220, 250, 290},
	{100, 120, 150, 180, 210, 250, 300, 350, 400, 460},
}

// shaftDeviations holds the fundamental deviations of shafts in µm by main
// range: the upper one of d to h, the lower one of j (grades 5 and 6), k
// (grades up to 7) to p. ISO 286-1, from memory.
var shaftDeviations = map[string][10]int64{
	"d": {-20, -30, -40, -50, -65, -80, -100, -120, -145, -170},
	"e": {-14, -20, -25, -32, -40, -50, -60, -72, -85, -100},
	"f": {-6, -10, -13, -16, -20, -25, -30, -36, -43, -50},
	"g": {-2, -4, -5, -6, -7, -9, -10, -12, -14, -15},
	"h": {},
	"j": {-2, -2, -2, -3, -4, -5, -7, -9, -11, -13},
	"k": {0, 1, 1, 1, 2, 2, 2, 3, 3, 4},
	"m": {2, 4, 6, 7, 8, 9, 11, 13, 15, 17},
	"n": {4, 8, 10, 12, 15, 17, 20, 23, 27, 31},
	"p": {6, 12, 15, 18, 22, 26, 32, 37, 43, 50},
}

// pressDeviations holds the lower deviations of r and s in µm by fine range.
// ISO 286-1, from memory.
var pressDeviations = map[string][16]int64{
	"r": {10, 15, 19, 23, 28, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84},
	"s": {14, 19, 23, 28, 35, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140},
}
