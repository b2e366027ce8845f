// Package quantity holds exact numbers with units: what the trade writes
// ("95 to 105 N·m", "8-5/16 in"), limits, the marks of a scale, and the
// conversion of limits that never leaves them. Numbers are rationals from the
// source to the last rounding.
package quantity

import "math/big"

// A Mark is the decimal mark of a shop.
type Mark byte

// The decimal marks.
const (
	Point Mark = '.'
	Comma Mark = ','
)

// sign returns the mark as text. A Mark that is neither is a point.
func (m Mark) sign() string {
	if m == Comma {
		return ","
	}
	return "."
}

// A Dimension is a kind of quantity: a length is no torque.
type Dimension uint8

// The dimensions. None stands for any.
const (
	None Dimension = iota
	Length
	Angle
	Mass
	Force
	Torque
	Pressure
	Volume
	Temperature
	TemperatureDifference
	Time
	Proportion
	LeakRate
	Expansion // of a length, for each degree
	Speed
)

var dimensions = [...]string{"", "length", "angle", "mass", "force", "torque", "pressure", "volume",
	"temperature", "temperature difference", "time", "proportion", "leak rate", "expansion", "speed"}

// String returns the dimension as a message names it: "torque".
func (d Dimension) String() string {
	if int(d) < len(dimensions) {
		return dimensions[d]
	}
	return ""
}

// A Unit is one unit of measure, spelled in the one way in which it is printed.
type Unit struct {
	Symbol    string
	Dimension Dimension
	factor    *big.Rat // to the dimension's base unit
	offset    *big.Rat // of its zero in the base unit (temperatures), else nil
}

// A Number is an exact number with its digits as they were typed.
type Number struct {
	Value *big.Rat
	Text  string // "0.150", "8-5/16", with the shop's decimal mark; "" where it was computed
}

// A Value is one number of a unit.
type Value struct {
	Number
	Unit Unit
}

// A Form is how a band was written.
type Form uint8

const (
	Range     Form = iota // 95 to 105 N·m
	PlusMinus             // 100 ±5 N·m, 100 +5/-0 N·m
	Max                   // max 0.05 mm
	Min                   // at least 12 mm
	Bare                  // 100 N·m: no limits
)

// A Band is a quantity as a writer states it: limits, or a bare value.
type Band struct {
	Form      Form
	Low, High *big.Rat // in Unit; nil for an open side
	Nominal   *Number  // of PlusMinus and Bare
	Unit      Unit
	Written   string   // as written, its unit in our spelling: "100 ±5 N·m"
	Numbers   []Number // as typed, in order, tolerances with their sign; nil where it was computed
}

// A Problem says what is wrong with a quantity. Start and End are byte offsets
// in the text that was read.
type Problem struct {
	Slug       string
	Start, End int
	Message    string
	Fix        string
	ByExample  bool // Fix shows the form by an example: who knows what is asked may show a better one
}

// A Scale is the marks that an instrument has: from Low to High in steps of
// Step, counted from zero; Low and High nil where they are not known.
type Scale struct {
	Unit      Unit
	Low, High *big.Rat
	Step      *big.Rat
	Fractions bool // the marks are named as fractions: 5/16, not 0.3125
}
