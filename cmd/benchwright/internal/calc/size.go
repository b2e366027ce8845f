package calc

import (
	"errors"
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var size = computation{
	name:  "size",
	about: "limits of a size such as 25 k6, and the fit of 50 H7/p6",
	words: "SIZE",
	options: []option{
		{name: "", example: "50 H7/p6", about: "a size in mm with its tolerance, or a fit", needed: true},
		{name: "marks", example: "0.01 mm", about: "one graduation of the micrometer"},
	},
	example: `50 H7/p6`,
	work:    sizeSheet,
}

const sizeSource = "ISO 286-1 and 286-2, tables up to 250 mm; a size on a boundary belongs to the lower range."

func sizeSheet(a *answers) *sheet {
	scale := a.scale(mm)
	var parts []quantity.Tolerance
	text := a.text("")
	if strings.Contains(text, "/") {
		hole, shaft := a.fit("", text)
		parts = append(parts, hole, shaft)
	} else {
		t, err := quantity.ParseTolerance(text, a.mark)
		a.tolerance("", text, t, err)
		parts = append(parts, t)
	}
	if !a.ok() {
		return nil
	}
	s := a.sheet("Limits and fits", "Deviations are in µm: 1000 µm are 1 mm. Rolling bearings have tolerances of their own.")
	s.formula("limit = size + deviation / 1000")
	for _, t := range parts {
		what, name := "shaft", t.Letter
		if t.Hole() {
			what = "hole"
		}
		low, high, _ := t.Deviations()
		limits, _ := t.Limits(a.mark)
		s.input("", what, s.num(t.Size)+" "+name+s.num(big.NewRat(int64(t.Grade), 1)))
		s.step(what, ": deviations ", s.signed(low), " and ", s.signed(high), " µm")
		s.step(what, ": ", s.num(t.Size), s.plus(low), " / 1000 ", s.equalsIn(limits.Low, mm))
		s.step(what, ": ", s.num(t.Size), s.plus(high), " / 1000 ", s.equalsIn(limits.High, mm))
		s.result(what, ": ", limits.Range(a.mark))
		if a.has("marks") {
			s.inward(limits, scale, "")
		}
	}
	if len(parts) == 2 {
		least, most, _ := bench.Interference(parts[0], parts[1])
		s.interference(least, most)
	}
	if a.has("marks") {
		s.marks("marks", scale)
	}
	s.source(sizeSource)
	return s
}

// interference says a fit in words; in µm, below zero clearance.
func (s *sheet) interference(least, most *big.Rat) {
	s.formula("interference = shaft − hole, clearance = hole − shaft")
	clear := func(x *big.Rat) string { return s.num(new(big.Rat).Abs(x)) }
	switch {
	case least.Sign() > 0:
		s.result("The fit is an interference of ", clear(least), " to ", clear(most), " µm on the diameter.")
	case most.Sign() <= 0:
		s.result("The fit is a clearance of ", clear(most), " to ", clear(least), " µm on the diameter.")
	default:
		s.result("The fit lies between a clearance of ", clear(least), " µm and an interference of ", clear(most), " µm on the diameter.")
	}
}

// signed prints a number with its sign.
func (s *sheet) signed(x *big.Rat) string {
	if x.Sign() > 0 {
		return "+" + s.num(x)
	}
	return s.num(x)
}

// fit reads a fit and refuses what the tables do not hold.
func (a *answers) fit(name, text string) (hole, shaft quantity.Tolerance) {
	hole, shaft, err := quantity.ParseFit(text, a.mark)
	a.tolerance(name, text, hole, err)
	a.tolerance(name, text, shaft, nil)
	return hole, shaft
}

// tolerance notes what is wrong with a tolerance.
func (a *answers) tolerance(name, text string, t quantity.Tolerance, err error) {
	if err == nil && a.ok() {
		_, err = t.Limits(a.mark)
	}
	switch {
	case err == nil:
	case errors.Is(err, quantity.ErrToleranceForm):
		a.wrong(name, "`%s` is not a size with a tolerance: write a hole as `52 H7`, a shaft as `25 k6`, a fit as `50 H7/p6`", short(text))
	default:
		a.wrong(name, "`%s`: %s; take the limits from the standard", short(text), err)
	}
}
