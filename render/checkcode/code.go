// Package checkcode makes the check code of a face: a short code over what the
// face says, by which a laminate on the bench is known to be current or not.
// The code has two parts, one over what is technical and one over the wording,
// so that a corrected comma calls in no laminate.
package checkcode

import (
	"errors"
	"fmt"
	"strings"
)

// A Code is a check code as it is printed: five characters over what is
// technical, then four over the wording and one that checks the other nine,
// such as "7QK4M-2XR9C".
type Code string

const (
	technicalLen = 5
	wordingLen   = 4
	codeLen      = technicalLen + wordingLen + 1
)

// alphabet is the digits and the capitals without I, L, O and U, which are read
// as 1, 1, 0 and V. The place of a character in it is its value.
const alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"

// typed turns what is typed for a character of the alphabet into it, and leaves
// out what parts a code for the eye.
var typed = strings.NewReplacer("I", "1", "L", "1", "O", "0", "U", "V",
	" ", "", "\t", "", "\u00a0", "", "-", "", "\u2010", "", "\u2011", "", "\u2013", "")

// encode returns the code of two numbers, of which the low 25 and 20 bits count.
func encode(technical, wording uint32) Code {
	var values []byte
	for _, part := range []struct {
		bits  uint32
		chars int
	}{{technical, technicalLen}, {wording, wordingLen}} {
		for i := part.chars - 1; i >= 0; i-- {
			values = append(values, byte(part.bits>>(5*i))&31)
		}
	}
	values = append(values, check(values))
	for i, v := range values {
		values[i] = alphabet[v]
	}
	return Code(values[:technicalLen]) + "-" + Code(values[technicalLen:])
}

// Technical returns the part over what is technical: "7QK4M".
func (c Code) Technical() string { return string(c[:technicalLen]) }

// Parse reads a code as it was typed: in any case, with blanks and hyphens
// anywhere, with I or L for 1, O for 0 and U for V. One wrong character or two
// exchanged ones are refused.
func Parse(text string) (Code, error) {
	plain := typed.Replace(strings.ToUpper(text))
	var values []byte
	for _, r := range plain {
		v := strings.IndexRune(alphabet, r)
		if v < 0 {
			return "", fmt.Errorf("`%c` is in no check code", r)
		}
		values = append(values, byte(v))
	}
	if len(values) != codeLen {
		return "", fmt.Errorf("a check code has %d characters, and this has %d", codeLen, len(values))
	}
	if last := codeLen - 1; check(values[:last]) != values[last] {
		return "", errors.New("the last character, which checks the others, does not fit them")
	}
	return Code(plain[:technicalLen] + "-" + plain[technicalLen:]), nil
}

// check returns the character that makes the sum over i of value i times the
// generator to the power of i, in the field of 32 elements, the value of the
// check character. Any one wrong value changes the sum, as do any two that are
// exchanged, since no two powers in it are equal.
func check(values []byte) byte {
	var sum byte
	for _, v := range values {
		sum = double(sum ^ v)
	}
	return sum
}

// double multiplies by the generator x of the field of polynomials over bits
// modulo x⁵ + x² + 1, which is primitive.
func double(v byte) byte {
	if v <<= 1; v&32 != 0 {
		v ^= 32 | 4 | 1
	}
	return v
}
