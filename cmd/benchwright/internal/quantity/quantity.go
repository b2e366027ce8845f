// Package quantity holds exact numbers with units: quantities as written in
// the trade ("95 to 105 N·m", "8-5/16 in"), limits, the marks of a scale, and
// a conversion of limits that never widens them. Numbers stay rational until
// the final rounding.
package quantity

import "math/big"

// A DecimalMark is the decimal mark that a shop uses.
type DecimalMark byte

const (
	Point DecimalMark = '.'
	Comma DecimalMark = ','
)

// sign returns the mark as text, a point for an invalid mark.
func (m DecimalMark) sign() string {
	if m == Comma {
		return ","
	}
	return "."
}

// A Dimension is a kind of quantity, such as length or torque.
type Dimension uint8

// None stands for any dimension.
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
	Expansion // of a length, per degree
	Speed
	Voltage
	Current
	Resistance
	Capacitance
	Power
	ApparentPower
	Frequency
	Flow
	Displacement // of a pump, per revolution
	Velocity
	VibrationRMS  // its velocity, root mean square
	VibrationPeak // its velocity, zero to peak
	SoundLevel
	Viscosity
	MassFlow
)

var dimensions = [...]string{"", "length", "angle", "mass", "force", "torque", "pressure", "volume",
	"temperature", "temperature difference", "time", "proportion", "leak rate", "expansion", "speed",
	"voltage", "current", "resistance", "capacitance", "power", "apparent power", "frequency", "flow", "displacement",
	"velocity", "vibration as rms", "vibration as peak", "sound level", "viscosity", "mass flow"}

// String returns the dimension as messages name it: "torque".
func (d Dimension) String() string {
	if int(d) < len(dimensions) {
		return dimensions[d]
	}
	return ""
}

// A Unit is a unit of measure. Symbol is the one spelling that is printed.
type Unit struct {
	Symbol    string
	Dimension Dimension
	factor    *big.Rat // of the unit in base units of its dimension
	offset    *big.Rat // its zero in base units (temperatures only), else nil
}

// A Number is an exact number with the digits as typed.
type Number struct {
	Value *big.Rat
	Text  string // "0.150", "8-5/16", with the shop's decimal mark; "" if computed
}

// A Value is a number with a unit.
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
	Nominal   *Number  // of PlusMinus and Bare, else nil
	Unit      Unit
	Written   string   // as written, with the unit's symbol: "100 ±5 N·m"
	Numbers   []Number // as typed, in order, tolerances with their sign; nil if computed
}

// A Problem describes an error in a quantity. Start and End are byte offsets
// in the parsed text.
type Problem struct {
	Slug       string
	Start, End int
	Message    string
	Fix        string
	ByExample  bool // Fix is an example of the form; a caller that knows what is asked for may replace it by a better one
}

// A Scale is the marks of an instrument: from Low to High in steps of Step,
// counted from zero. Low and High are nil if not known.
type Scale struct {
	Unit      Unit
	Low, High *big.Rat
	Step      *big.Rat
	Fractions bool // marks are named in fractions: 5/16, not 0.3125
}
