package quantity

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"
)

// maxDigits limits the digits on each side of a decimal mark and in each part
// of a fraction.
const maxDigits = 12

// vulgarFractions maps the one-character fractions to their text.
var vulgarFractions = map[rune]string{
	'½': "1/2", '¼': "1/4", '¾': "3/4", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
}

var (
	fractionForm = regexp.MustCompile(`^/[0-9]+`)
	mixedForm    = regexp.MustCompile(`^(?:-|\x{2011}|\x{00A0}| )[0-9]+/[0-9]+`)
	groupsForm   = regexp.MustCompile(`^[1-9][0-9]{0,2}(?:[.,][0-9]{3})+$`)
	gapForm      = regexp.MustCompile(`^(?:[  \x{2009}\x{202F}'’][0-9]{3})+(?:[^0-9/.,]|$)`)
	groupForm    = regexp.MustCompile(`^[  \x{2009}\x{202F}'’][0-9]{3}`)
)

// number parses a number: digits with at most one decimal mark, a fraction, or
// a mixed number. Its Text is as typed.
func (r *reader) number() (n Number, ok bool) {
	start := r.pos
	negative := false
	switch {
	case r.take("+"):
	case r.take("-"), r.take("−"):
		negative = true
	case r.take("–"):
		r.fail("quantity-malformed", start, r.pos, "a minus is written with a hyphen", "write "+r.withReplaced(start, r.pos, "-"))
		return n, false
	}
	digits := r.pos
	for r.pos < len(r.text) {
		c := r.text[r.pos]
		if c == '.' && strings.HasPrefix(r.text[r.pos:], "..") {
			break
		}
		if c != '.' && c != ',' && (c < '0' || c > '9') {
			break
		}
		r.pos++
	}
	token := r.text[digits:r.pos]
	whole := token != "" && !strings.ContainsAny(token, ".,")
	value := new(big.Rat)
	switch {
	case strings.Trim(token, ".,") == "":
		r.pos = digits
		if !r.vulgar(value) {
			r.malformed(start, r.wordEnd(digits), "a number is missing here")
			return n, false
		}
	case !r.decimal(digits, token, value):
		return n, false
	case whole && !r.fraction(digits, value):
		return n, false
	}
	if negative {
		value.Neg(value)
	}
	r.lastNumber = span{start, r.pos}
	return Number{value, r.text[start:r.pos]}, true
}

// decimal parses token, which begins at offset start, into value.
func (r *reader) decimal(start int, token string, value *big.Rat) bool {
	end := start + len(token)
	mine, other := r.mark.sign(), ","
	if r.mark == Comma {
		other = "."
	}
	last := token[len(token)-1]
	ours, theirs := strings.Count(token, mine), strings.Count(token, other)
	switch {
	case last == '.' || last == ',':
		r.fail("quantity-malformed", start, end, "a digit is missing after the decimal mark",
			"write "+r.withReplaced(start, end, strings.TrimRight(token, ".,")))
		return false
	case theirs == 1 && ours == 0 && groupsForm.MatchString(token):
		r.fail("number-two-ways", start, end, fmt.Sprintf("`%s` can be read two ways", token),
			"write "+r.withReplaced(start, end, strings.Replace(token, other, "", 1))+" or "+r.withReplaced(start, end, strings.Replace(token, other, mine, 1)))
		return false
	case theirs == 1 && ours == 0:
		word := "point"
		if r.mark == Comma {
			word = "comma"
		}
		r.fail("decimal-mark", start, end, "the decimal mark of this shop is a "+word, "write "+r.withOwnMark())
		return false
	case ours+theirs > 1:
		plain, ok := ungroup(token, mine)
		if !ok {
			r.malformed(start, end, fmt.Sprintf("`%s` is not a number", token))
			return false
		}
		r.fail("number-two-ways", start, end, "a number has no separator between its thousands", "write "+r.withReplaced(start, end, plain))
		return false
	}
	before, after, _ := strings.Cut(token, mine)
	if !r.digitsFit(start, end, before, after) {
		return false
	}
	if ours == 0 {
		if gap := gapForm.FindString(r.text[end:]); gap != "" && groupsForm.MatchString(token+".000") {
			r.thousandsGap(start, end)
			return false
		}
	}
	value.SetString("0" + before + "." + after + "0")
	return true
}

// thousandsGap reports a number with blanks between its thousands: 1 500.
func (r *reader) thousandsGap(start, end int) {
	plain := r.text[start:end]
	for {
		g := groupForm.FindString(r.text[end:])
		if g == "" {
			break
		}
		plain += g[len(g)-3:]
		end += len(g)
	}
	r.fail("number-two-ways", start, end, "a number has no space between its thousands", "write "+r.withReplaced(start, end, plain))
}

// ungroup returns token without its thousands separators; mine is the decimal
// mark of the shop. 1.500.000,5 gives 1500000,5 in a comma shop. A second kind
// of mark can only be the decimal mark.
func ungroup(token, mine string) (string, bool) {
	at := strings.LastIndexAny(token, ".,")
	if strings.Count(token, token[at:at+1]) == 1 {
		if head := token[:at]; groupsForm.MatchString(head) && oneKindOfMark(head) {
			return strings.NewReplacer(".", "", ",", "").Replace(head) + mine + token[at+1:], true
		}
		return "", false
	}
	if groupsForm.MatchString(token) && oneKindOfMark(token) {
		return strings.NewReplacer(".", "", ",", "").Replace(token), true
	}
	return "", false
}

func oneKindOfMark(s string) bool { return !strings.Contains(s, ".") || !strings.Contains(s, ",") }

// fraction parses what may follow a whole number, value, that begins at start:
// nothing, the rest of a fraction, or the fraction of a mixed number.
func (r *reader) fraction(start int, value *big.Rat) bool {
	rest := r.text[r.pos:]
	if f := fractionForm.FindString(rest); f != "" {
		r.pos += len(f)
		return r.parseFraction(start, r.text[start:r.pos], value)
	}
	if f := mixedForm.FindString(rest); f != "" {
		r.pos += len(f)
		text := strings.TrimLeft(f, "-\u2011\u00a0 ")
		at := r.pos - len(text)
		part := new(big.Rat)
		if !r.parseFraction(at, text, part) {
			return false
		}
		if part.Cmp(big.NewRat(1, 1)) >= 0 {
			whole := new(big.Int).Quo(part.Num(), part.Denom())
			rest := new(big.Rat).Sub(part, new(big.Rat).SetInt(whole))
			right := new(big.Rat).Add(value, new(big.Rat).SetInt(whole)).RatString()
			if rest.Sign() > 0 {
				right += "-" + rest.RatString()
			}
			r.fail("quantity-malformed", start, r.pos, "the fraction of a mixed number must be less than one", "write "+r.withReplaced(start, r.pos, right))
			return false
		}
		value.Add(value, part)
		return true
	}
	part := new(big.Rat)
	if r.vulgar(part) {
		value.Add(value, part)
	}
	return true
}

// parseFraction parses the fraction s, which begins at offset start, into
// value.
func (r *reader) parseFraction(start int, s string, value *big.Rat) bool {
	over, under, _ := strings.Cut(s, "/")
	if !r.digitsFit(start, start+len(s), over, under) {
		return false
	}
	if strings.Trim(under, "0") == "" {
		r.fail("quantity-malformed", start, start+len(s), "a number cannot be divided by 0", "write a tolerance to one side as `+5/-0`")
		return false
	}
	value.SetString(s)
	return true
}

// vulgar parses a one-character fraction, if one is next.
func (r *reader) vulgar(value *big.Rat) bool {
	for sign, f := range vulgarFractions {
		if r.take(string(sign)) {
			value.SetString(f)
			return true
		}
	}
	return false
}

// digitsFit reports a number with more than maxDigits digits in one of its
// parts, and returns whether all are short enough.
func (r *reader) digitsFit(start, end int, parts ...string) bool {
	for _, p := range parts {
		if len(p) > maxDigits {
			r.fail("quantity-malformed", start, end, fmt.Sprintf("a number has at most %d digits on a side", maxDigits), "round it to what the bench can read")
			return false
		}
	}
	return true
}

// withOwnMark returns the whole text with the shop's decimal mark in every
// number.
func (r *reader) withOwnMark() string {
	out := []byte(r.text)
	for i := 1; i+1 < len(out); i++ {
		if (out[i] == '.' || out[i] == ',') && digit(out[i-1]) && digit(out[i+1]) {
			out[i] = r.mark.sign()[0]
		}
	}
	return quoted(string(out))
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// DigitStep returns the value of one step of the number's last digit: 0.001
// for 0.150, 1/16 for 8-5/16, 1 for 350; nil for a computed number.
func (n Number) DigitStep() *big.Rat {
	if n.Text == "" {
		return nil
	}
	if _, under, ok := strings.Cut(n.Text, "/"); ok {
		d, ok := new(big.Int).SetString(under, 10)
		if !ok || d.Sign() == 0 {
			return nil
		}
		return new(big.Rat).SetFrac(big.NewInt(1), d)
	}
	for sign, f := range vulgarFractions {
		if strings.ContainsRune(n.Text, sign) {
			return new(big.Rat).SetFrac(big.NewInt(1), ratio(f).Denom())
		}
	}
	at := strings.LastIndexAny(n.Text, ".,")
	if at < 0 {
		return big.NewRat(1, 1)
	}
	return power(-(len(n.Text) - at - 1))
}

// Fraction reports whether the number was typed as a fraction or mixed number.
func (n Number) Fraction() bool {
	if strings.Contains(n.Text, "/") {
		return true
	}
	for sign := range vulgarFractions {
		if strings.ContainsRune(n.Text, sign) {
			return true
		}
	}
	return false
}

// power returns 10 to the power n.
func power(n int) *big.Rat {
	p := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(n, -n))), nil)
	if n < 0 {
		return new(big.Rat).SetFrac(big.NewInt(1), p)
	}
	return new(big.Rat).SetInt(p)
}
