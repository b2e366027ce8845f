package svg

import (
	"math"
	"strconv"
	"strings"
)

// maxNumber bounds every number of a file, so that no product of a few of them
// leaves what a float64 holds exactly enough.
const maxNumber = 1e6

// A scanner reads numbers, words and signs from the value of an attribute.
type scanner struct {
	text string
	at   int
}

func (s *scanner) done() bool { return s.at >= len(s.text) }

// peek returns the next byte, 0 at the end.
func (s *scanner) peek() byte {
	if s.done() {
		return 0
	}
	return s.text[s.at]
}

// blanks skips white space.
func (s *scanner) blanks() {
	for !s.done() && strings.IndexByte(" \t\r\n\f", s.text[s.at]) >= 0 {
		s.at++
	}
}

// apart skips white space with at most one comma in it.
func (s *scanner) apart() {
	s.blanks()
	if s.peek() == ',' {
		s.at++
		s.blanks()
	}
}

func digit(c byte) bool  { return c >= '0' && c <= '9' }
func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// number reads one number as SVG writes it: 1, -.5, 1.e3 not; false where none
// stands, or one that is out of range.
func (s *scanner) number() (float64, bool) {
	i, digits := s.at, 0
	at := func() byte {
		if i < len(s.text) {
			return s.text[i]
		}
		return 0
	}
	run := func() {
		for digit(at()) {
			i++
			digits++
		}
	}
	if c := at(); c == '+' || c == '-' {
		i++
	}
	run()
	if at() == '.' {
		i++
		run()
	}
	if digits == 0 {
		return 0, false
	}
	if c := at(); c == 'e' || c == 'E' {
		mark := i
		i++
		if c := at(); c == '+' || c == '-' {
			i++
		}
		if digit(at()) {
			run()
		} else {
			i = mark // the e of a unit
		}
	}
	v, err := strconv.ParseFloat(s.text[s.at:i], 64)
	if err != nil || math.Abs(v) > maxNumber {
		return 0, false
	}
	s.at = i
	return v, true
}

// flag reads the single 0 or 1 of an arc.
func (s *scanner) flag() (bool, bool) {
	c := s.peek()
	if c != '0' && c != '1' {
		return false, false
	}
	s.at++
	return c == '1', true
}

// numbers reads a list of numbers to its end.
func (s *scanner) numbers() (list []float64, ok bool) {
	s.blanks()
	for !s.done() {
		v, ok := s.number()
		if !ok {
			return nil, false
		}
		list = append(list, v)
		s.apart()
	}
	return list, true
}

// units are the lengths of CSS, in pixels of 1/96 in. Those that follow the
// type or the page are not read.
var units = map[string]float64{"": 1, "px": 1, "pt": 96.0 / 72, "pc": 16, "in": 96, "cm": 96 / 2.54, "mm": 96 / 25.4}

// length reads a text that is one length.
func length(text string) (float64, bool) {
	s := scanner{text: strings.TrimSpace(text)}
	v, ok := s.number()
	unit, known := units[s.text[s.at:]]
	return v * unit, ok && known && math.Abs(v*unit) <= maxNumber
}
