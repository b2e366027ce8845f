package quantity

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/diag"
)

// firstUnit parses a unit before a joiner, if there is one.
func (r *reader) firstUnit() bool {
	rest := r.rest()
	cut := len(rest)
	for _, joiner := range []string{" to ", "..", "…", "–", "—", "±", "+", " -", " −"} {
		if i := strings.Index(rest, joiner); i >= 0 {
			cut = min(cut, i)
		}
	}
	if cut == len(rest) || strings.Trim(rest[:cut], blanks) == "" {
		return true
	}
	if rest = strings.TrimRight(rest[:cut], blanks); strings.EqualFold(strings.TrimLeft(rest, blanks), "to") {
		return true
	}
	r.skip()
	u, ok := r.unitAt(r.text[r.pos : r.pos+len(strings.TrimLeft(rest, blanks))])
	r.unit = u
	return ok
}

// lastUnit parses the unit behind the last number.
func (r *reader) lastUnit() {
	r.skip()
	name := r.rest()
	if name == "" {
		with := func(u Unit) string { return quoted(u.After(strings.Trim(r.text[:r.lastNumber.end], blanks))) }
		example := ""
		switch {
		case len(r.units) > 0:
			example = with(r.unit)
		case r.want != None:
			example = with(Units(r.want)[0])
		default:
			example = with(Units(Length)[0]) + " or " + with(Units(Torque)[0])
		}
		r.fail("measure-missing", r.lastNumber.start, r.lastNumber.end, "the unit of measure is missing", "write it after the number, as in "+example)
		return
	}
	u, ok := r.unitAt(name)
	if ok && len(r.units) == 2 && u.Symbol != r.unit.Symbol {
		s := r.units[1]
		r.fail("quantity-malformed", s.start, s.end, fmt.Sprintf("one quantity has one unit of measure, not %s and %s", r.unit.Symbol, u.Symbol), "write both numbers in "+r.unit.Symbol)
		return
	}
	r.unit = u
}

// unitAt looks up the unit name, which is next in the text.
func (r *reader) unitAt(name string) (Unit, bool) {
	start := r.pos
	end := start + len(name)
	r.pos = end
	u, ok := UnitOf(name)
	if ok {
		if u.Dimension == Temperature && r.want == TemperatureDifference {
			u = u.Difference()
		}
		r.units = append(r.units, span{start, end})
		if r.want != None && u.Dimension != r.want {
			r.fail("measure-kind", start, end, fmt.Sprintf("%s measures %s, not %s", u.Symbol, u.Dimension, r.want), unitsOf(r.want))
			return u, false
		}
		return u, true
	}
	lower := strings.ToLower(name)
	fix := lexiconOf().varieties[key(name)]
	if fix == "" {
		fix = lexiconOf().varieties[key(lower)]
	}
	inner, isDual := strings.CutSuffix(name, ")")
	before, second, cut := strings.Cut(inner, "(")
	if !isDual || !cut {
		before, second = "", ""
	}
	switch {
	case fix != "":
		r.fail("measure-varieties", start, end, fmt.Sprintf("`%s` has varieties that differ", name), fix)
	case second != "" && strings.ContainsAny(second, "0123456789"):
		at := start + len(before)
		r.fail("quantity-malformed", at, end, "a second unit of measure is not written in parentheses", "write "+quoted(r.text[:at])+", and below it `also: "+strings.Trim(second, blanks)+"`")
	case strings.HasSuffix(lower, " max") || strings.HasSuffix(lower, " min"):
		word := map[string]string{"max": "max", "min": "at least"}[lower[len(lower)-3:]]
		r.fail("quantity-malformed", end-3, end, "`max` or `at least` goes before the number", "write "+quoted(word+" "+strings.Trim(r.text[:end-4], blanks)))
	case strings.ContainsAny(name, "0123456789±"):
		r.malformed(start, end, fmt.Sprintf("`%s` is not a unit of measure", name))
	default:
		fix := "write it as in `95 to 105 N·m`, `0.15 to 0.25 mm` or `69 kPa`"
		if near := nearest(name, r.want); near != "" {
			fix = "write " + r.withReplaced(start, end, near)
		} else if r.want != None {
			fix = unitsOf(r.want)
		}
		r.fail("measure-unknown", start, end, fmt.Sprintf("no unit of measure is called `%s`", name), fix)
	}
	return Unit{}, false
}

// unitsOf returns fix that names the units of a dimension.
func unitsOf(d Dimension) string {
	var names []string
	for _, u := range Units(d) {
		names = append(names, u.Symbol)
	}
	return "write it in " + diag.Series(names, "or")
}

// withUnitSymbols returns the text with each unit replaced by its symbol,
// after a no-break space.
func (r *reader) withUnitSymbols() string {
	out := r.text
	for _, s := range slices.Backward(r.units) {
		out = r.unit.After(strings.TrimRight(out[:s.start], blanks)) + out[s.end:]
	}
	return strings.Trim(out, blanks)
}
