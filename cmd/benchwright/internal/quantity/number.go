package quantity

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"
)

// maxDigits is how many digits a number may have on each side of its mark, and
// in each part of its fraction.
const maxDigits = 12

// vulgar holds the fractions that have a character of their own.
var vulgar = map[rune]string{
	'½': "1/2", '¼': "1/4", '¾': "3/4", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
}

var (
	fractionForm = regexp.MustCompile(`^/[0-9]+`)
	mixedForm    = regexp.MustCompile(`^(?:-|\x{2011}|\x{00A0}| )[0-9]+/[0-9]+`)
	groupsForm   = regexp.MustCompile(`^[1-9][0-9]{0,2}(?:[.,][0-9]{3})+$`)
	gapForm      = regexp.MustCompile(`^(?:[  \x{2009}\x{202F}'’][0-9]{3})+(?:[^0-9/.,]|$)`)
	groupForm    = regexp.MustCompile(`^[  \x{2009}\x{202F}'’][0-9]{3}`)
)

// number reads one number at the reader's place: digits with at most one
// decimal mark, a fraction, or a mixed number. Its text is as typed.
func (r *reader) number() (n Number, ok bool) {
	start := r.pos
	negative := false
	switch {
	case r.take("+"):
	case r.take("-"), r.take("−"):
		negative = true
	case r.take("–"):
		r.fail("quantity-malformed", start, r.pos, "a minus is written with a hyphen", "write "+r.fixed(start, r.pos, "-"))
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
	r.last = span{start, r.pos}
	return Number{value, r.text[start:r.pos]}, true
}

// decimal reads token, which begins at offset start, into value.
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
			"write "+r.fixed(start, end, strings.TrimRight(token, ".,")))
		return false
	case theirs == 1 && ours == 0 && groupsForm.MatchString(token):
		r.fail("number-two-ways", start, end, fmt.Sprintf("`%s` can be read two ways", token),
			"write "+r.fixed(start, end, strings.Replace(token, other, "", 1))+" or "+r.fixed(start, end, strings.Replace(token, other, mine, 1)))
		return false
	case theirs == 1 && ours == 0:
		word := "point"
		if r.mark == Comma {
			word = "comma"
		}
		r.fail("decimal-mark", start, end, "the decimal mark of this shop is a "+word, "write "+r.marked())
		return false
	case ours+theirs > 1:
		plain, ok := ungroup(token, mine)
		if !ok {
			r.malformed(start, end, fmt.Sprintf("`%s` is not a number", token))
			return false
		}
		r.fail("number-two-ways", start, end, "a number has no mark between its thousands", "write "+r.fixed(start, end, plain))
		return false
	}
	before, after, _ := strings.Cut(token, mine)
	if !r.short(start, end, before, after) {
		return false
	}
	if ours == 0 {
		if gap := gapForm.FindString(r.text[end:]); gap != "" && groupsForm.MatchString(token+".000") {
			r.gap(start, end)
			return false
		}
	}
	value.SetString("0" + before + "." + after + "0")
	return true
}

// gap reports a number whose thousands stand apart: 1 500.
func (r *reader) gap(start, end int) {
	plain := r.text[start:end]
	for {
		g := groupForm.FindString(r.text[end:])
		if g == "" {
			break
		}
		plain += g[len(g)-3:]
		end += len(g)
	}
	r.fail("number-two-ways", start, end, "a number has no gap between its thousands", "write "+r.fixed(start, end, plain))
}

// ungroup returns token without the marks of its thousands: 1.500.000,5 in a
// comma shop is 1500000,5. A second kind of mark can only be the decimal one.
func ungroup(token, mine string) (string, bool) {
	at := strings.LastIndexAny(token, ".,")
	if strings.Count(token, token[at:at+1]) == 1 {
		if head := token[:at]; groupsForm.MatchString(head) && oneMark(head) {
			return strings.NewReplacer(".", "", ",", "").Replace(head) + mine + token[at+1:], true
		}
		return "", false
	}
	if groupsForm.MatchString(token) && oneMark(token) {
		return strings.NewReplacer(".", "", ",", "").Replace(token), true
	}
	return "", false
}

func oneMark(s string) bool { return !strings.Contains(s, ".") || !strings.Contains(s, ",") }

// fraction reads what may follow the whole number value that begins at start:
// nothing, the rest of a fraction, or the fraction of a mixed number.
func (r *reader) fraction(start int, value *big.Rat) bool {
	rest := r.text[r.pos:]
	if f := fractionForm.FindString(rest); f != "" {
		r.pos += len(f)
		return r.share(start, r.text[start:r.pos], value)
	}
	if f := mixedForm.FindString(rest); f != "" {
		r.pos += len(f)
		part := strings.TrimLeft(f, "-\u2011\u00a0 ")
		at := r.pos - len(part)
		share := new(big.Rat)
		if !r.share(at, part, share) {
			return false
		}
		if share.Cmp(big.NewRat(1, 1)) >= 0 {
			whole := new(big.Int).Quo(share.Num(), share.Denom())
			rest := new(big.Rat).Sub(share, new(big.Rat).SetInt(whole))
			right := new(big.Rat).Add(value, new(big.Rat).SetInt(whole)).RatString()
			if rest.Sign() > 0 {
				right += "-" + rest.RatString()
			}
			r.fail("quantity-malformed", start, r.pos, "the fraction of a mixed number is less than one", "write "+r.fixed(start, r.pos, right))
			return false
		}
		value.Add(value, share)
		return true
	}
	share := new(big.Rat)
	if r.vulgar(share) {
		value.Add(value, share)
	}
	return true
}

// share reads the fraction s, which begins at offset start, into value.
func (r *reader) share(start int, s string, value *big.Rat) bool {
	over, under, _ := strings.Cut(s, "/")
	if !r.short(start, start+len(s), over, under) {
		return false
	}
	if strings.Trim(under, "0") == "" {
		r.fail("quantity-malformed", start, start+len(s), "nothing is divided by 0", "write a tolerance to one side as `+5/-0`")
		return false
	}
	value.SetString(s)
	return true
}

// vulgar reads a fraction that has a sign of its own, if one stands here.
func (r *reader) vulgar(value *big.Rat) bool {
	for sign, f := range vulgar {
		if r.take(string(sign)) {
			value.SetString(f)
			return true
		}
	}
	return false
}

// short reports a number of absurd length; parts are the digits on each side.
func (r *reader) short(start, end int, parts ...string) bool {
	for _, p := range parts {
		if len(p) > maxDigits {
			r.fail("quantity-malformed", start, end, fmt.Sprintf("a number has at most %d digits on a side", maxDigits), "round it to what the bench can read")
			return false
		}
	}
	return true
}

// marked returns the whole text with this shop's decimal mark in every number.
func (r *reader) marked() string {
	out := []byte(r.text)
	for i := 1; i+1 < len(out); i++ {
		if (out[i] == '.' || out[i] == ',') && digit(out[i-1]) && digit(out[i+1]) {
			out[i] = r.mark.sign()[0]
		}
	}
	return quoted(string(out))
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// Place returns what one step of the number's last digit is worth: 0.001 of
// 0.150, 1/16 of 8-5/16, 1 of 350; nil where no digits were typed.
func (n Number) Place() *big.Rat {
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
	for sign, f := range vulgar {
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
	for sign := range vulgar {
		if strings.ContainsRune(n.Text, sign) {
			return true
		}
	}
	return false
}

// power returns 10 to the n.
func power(n int) *big.Rat {
	p := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(n, -n))), nil)
	if n < 0 {
		return new(big.Rat).SetFrac(big.NewInt(1), p)
	}
	return new(big.Rat).SetInt(p)
}
