package quantity

import (
	"math/big"
	"strings"
	"sync"
)

func ratio(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("quantity: not a number: " + s)
	}
	return r
}

func times(factors ...*big.Rat) *big.Rat {
	out := big.NewRat(1, 1)
	for _, f := range factors {
		out.Mul(out, f)
	}
	return out
}

func per(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

// A lexicon finds units by spelling.
type lexicon struct {
	units     map[string]Unit   // by key
	folded    map[string]Unit   // by lower-case key, for spellings in which case means nothing
	varieties map[string]string // key of a measure without system, such as pint → fix
	keys      []string          // keys of units in the order of entries, for nearest
}

var lexiconOf = sync.OnceValue(func() lexicon {
	l := lexicon{map[string]Unit{}, map[string]Unit{}, map[string]string{}, nil}
	for _, e := range entries() {
		if e.Dimension == TemperatureDifference && e.Symbol != "K" {
			continue // a ° is read as a temperature; Difference gives these units
		}
		for _, s := range e.spellings {
			k := key(s)
			l.units[k] = e.Unit
			if len(s) >= 5 && strings.ToLower(s) == s {
				l.folded[k] = e.Unit
			}
			l.keys = append(l.keys, k)
		}
	}
	for _, m := range []struct{ name, short string }{{"gallon", "gal"}, {"quart", "qt"}, {"pint", "pt"}, {"fluid ounce", "fl oz"}} {
		for _, s := range measures[m.name] {
			l.varieties[key(s)] = "US or imperial? write `US " + m.short + "` or `imp " + m.short + "`"
		}
	}
	for _, s := range []string{"inH2O", "inH₂O", "in·H2O", "inWC", "in·WC", "inches·of·water", "inch·of·water", "inWG", "mmH2O", "mmH₂O", "mm·H2O"} {
		l.varieties[key(s)] = "write `inH2O (conventional)` or `mmH2O (conventional)`, or the pressure in kPa"
	}
	for _, s := range []string{"gpm", "GPM", "gal/min", "gallons/min", "gallons/minute"} {
		l.varieties[key(s)] = "US or imperial? write `US gal/min` or `imp gal/min`"
	}
	for _, s := range []string{"ips", "IPS"} {
		l.varieties[key(s)] = "rms or peak? write `in/s rms` or `in/s peak`"
	}
	for _, s := range []string{"inHg", "in·Hg", "″Hg", `"Hg`, "inches·of·mercury", "inch·of·mercury"} {
		l.varieties[key(s)] = "write `inHg (conventional)`, or the pressure in kPa"
	}
	return l
})

// key normalizes a spelling for lookup: one middle dot for each run of
// joiners, none at the ends, and one code point for each sign that has
// several.
func key(s string) string {
	var b strings.Builder
	joined := false
	for _, r := range s {
		switch r {
		case ' ', '\u00a0', '\u2009', '\u202f', '\t', '·', '⋅', '•', '∙', '×', '*', '.', '-', '‐', '\u2011':
			joined = b.Len() > 0
			continue
		case 'μ':
			r = 'µ'
		case 'º', '˚':
			r = '°'
		case '”', '“':
			r = '″'
		case '^':
			continue
		}
		if joined {
			b.WriteRune('·')
			joined = false
		}
		b.WriteRune(r)
	}
	return b.String()
}

// UnitOf returns the unit with a spelling: "Nm", "ft-lb", "US qt". A measure
// that differs between the US and imperial systems, such as "pint", is no unit
// by its bare name.
func UnitOf(spelling string) (Unit, bool) {
	if len(spelling) > maxText {
		return Unit{}, false
	}
	l, k := lexiconOf(), key(spelling)
	if u, ok := l.units[k]; ok {
		return u, true
	}
	u, ok := l.folded[strings.ToLower(k)]
	return u, ok
}

// Engraves reports that an instrument whose scale is in u may be engraved with a
// spelling: one of u itself, one that leaves out what is not engraved (the system of a
// gallon, "conventional", "rms"), or that of the mass for a force: kg for kgf.
func Engraves(spelling string, u Unit) bool {
	for _, s := range []string{spelling, "US " + spelling, "imp " + spelling, spelling + " (conventional)", spelling + " rms", spelling + " peak"} {
		if v, ok := UnitOf(s); ok && v == u {
			return true
		}
	}
	v, ok := UnitOf(spelling)
	return ok && v.Dimension == Mass && v.Symbol+"f" == u.Symbol
}

// MustUnit is UnitOf for spellings in the program's own code; it panics on an
// unknown one.
func MustUnit(spelling string) Unit {
	u, ok := UnitOf(spelling)
	if !ok {
		panic("quantity: no unit " + spelling)
	}
	return u
}

// Units returns the units of a dimension, the most used first.
func Units(d Dimension) []Unit {
	var out []Unit
	for _, e := range entries() {
		if e.Dimension == d {
			out = append(out, e.Unit)
		}
	}
	return out
}

// Difference returns the unit of the difference of two values: for a
// temperature a unit of temperature difference (5 °F are 25/9 °C), else the
// unit itself.
func (u Unit) Difference() Unit {
	if u.Dimension != Temperature {
		return u
	}
	for _, d := range Units(TemperatureDifference) {
		if d.Symbol == u.Symbol {
			return d
		}
	}
	return u
}

// Convert returns x converted exactly, nil if the dimensions differ.
func Convert(x *big.Rat, from, to Unit) *big.Rat {
	if from.Dimension != to.Dimension || from.factor == nil || to.factor == nil {
		return nil
	}
	y := new(big.Rat).Mul(x, from.factor)
	if from.offset != nil {
		y.Add(y, from.offset)
	}
	if to.offset != nil {
		y.Sub(y, to.offset)
	}
	return y.Quo(y, to.factor)
}

// In returns v in another unit, exactly, as a computed value. A unit of
// another dimension gives a Value whose number is nil.
func (v Value) In(u Unit) Value {
	return Value{Number{Value: Convert(v.Value, v.Unit, u)}, u}
}

// In returns the band in another unit, exactly, as a computed band. A unit of
// another dimension gives the zero Band, which has no limits.
func (b Band) In(u Unit) Band {
	if b.Unit.Dimension != u.Dimension || b.Unit.factor == nil || u.factor == nil {
		return Band{}
	}
	move := func(x *big.Rat) *big.Rat {
		if x == nil {
			return nil
		}
		return Convert(x, b.Unit, u)
	}
	out := Band{Form: b.Form, Low: move(b.Low), High: move(b.High), Unit: u}
	if b.Nominal != nil {
		out.Nominal = &Number{Value: move(b.Nominal.Value)}
	}
	return out
}
