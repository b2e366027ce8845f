package calc

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// addsUp works every sum of a sheet out again: what stands before = or ≈ must
// give what stands behind it. A number of six figures or more is taken for
// a rounded one. It returns how many sums there were.
func addsUp(t *testing.T, text string) (sums int) {
	t.Helper()
	_, steps, _ := strings.Cut(text, "\nSteps\n")
	steps, _, _ = strings.Cut(steps, "\nResult\n")
	steps = regexp.MustCompile(`([0-9]),([0-9])`).ReplaceAllString(steps, "$1.$2")
	steps = regexp.MustCompile(`\n {2}(?: {2})?`).ReplaceAllString("\n"+steps, "\n")
	for _, line := range strings.Split(steps, "\n") {
		parts := regexp.MustCompile(` [=≈] `).Split(line, -1)
		for i := 1; i < len(parts); i++ {
			left, ok := lastSum(parts[i-1])
			if !ok {
				continue
			}
			right, ok := firstSum(parts[i])
			if ok {
				sums++
			}
			if ok && (right.high < left.low || right.low > left.high) {
				t.Errorf("%s: %v is not %v", line, left, right)
			}
		}
	}
	return sums
}

// A span holds a number that is known to its last digit.
type span struct{ low, high float64 }

func (a span) with(b span, f func(x, y float64) float64) span {
	out := span{math.Inf(1), math.Inf(-1)}
	for _, x := range []float64{a.low, a.high} {
		for _, y := range []float64{b.low, b.high} {
			z := f(x, y)
			slack := 1e-15 + 1e-12*math.Abs(z)
			out.low, out.high = math.Min(out.low, z-slack), math.Max(out.high, z+slack)
		}
	}
	return out
}

var tokenForm = regexp.MustCompile(`^ *(?:([0-9]+(?:\.[0-9]+)?)(°?)|([-+−×/()²√π])|(cos|tan))`)

// lastSum reads the longest sum, with a sign of arithmetic, that ends a text.
func lastSum(text string) (span, bool) {
	for at := range text {
		if at > 0 && !strings.ContainsRune(" :(", rune(text[at-1])) {
			continue
		}
		if v, rest, ok := sum(text[at:], 0); ok && strings.TrimSpace(rest) == "" && strings.ContainsAny(text[at:], "+−×/²√°") {
			return v, true
		}
	}
	return span{}, false
}

func firstSum(text string) (span, bool) {
	v, _, ok := sum(text, 0)
	return v, ok
}

// sum reads a sum: level 0 adds, 1 multiplies, 2 is one factor.
func sum(text string, level int) (v span, rest string, ok bool) {
	if level == 2 {
		return factor(text)
	}
	v, rest, ok = sum(text, level+1)
	for ok {
		m := tokenForm.FindStringSubmatch(rest)
		var f func(x, y float64) float64
		switch {
		case m == nil:
		case level == 0 && m[3] == "+":
			f = func(x, y float64) float64 { return x + y }
		case level == 0 && m[3] == "−":
			f = func(x, y float64) float64 { return x - y }
		case level == 1 && m[3] == "×":
			f = func(x, y float64) float64 { return x * y }
		case level == 1 && m[3] == "/":
			f = func(x, y float64) float64 { return x / y }
		}
		if f == nil {
			break
		}
		w, after, good := sum(rest[len(m[0]):], level+1)
		if !good {
			break
		}
		v, rest = v.with(w, f), after
	}
	return v, rest, ok
}

func factor(text string) (v span, rest string, ok bool) {
	m := tokenForm.FindStringSubmatch(text)
	if m == nil {
		return v, text, false
	}
	rest = text[len(m[0]):]
	switch {
	case m[1] != "":
		x, _ := strconv.ParseFloat(m[1], 64)
		_, after, _ := strings.Cut(m[1], ".")
		slack := 0.0
		if len(strings.Trim(strings.ReplaceAll(m[1], ".", ""), "0")) >= 6 || len(strings.TrimLeft(m[1], "0.")) >= 6 {
			slack = math.Pow(10, -float64(len(after))) / 2
		}
		v, ok = span{x - slack, x + slack}, true
	case m[3] == "−":
		v, rest, ok = factor(rest)
		v = span{-v.high, -v.low}
	case m[3] == "√":
		v, rest, ok = factor(rest)
		v = v.with(v, func(x, _ float64) float64 { return math.Sqrt(x) })
	case m[3] == "π":
		v, ok = span{math.Pi, math.Pi}, true
	case m[3] == "(":
		v, rest, ok = sum(rest, 0)
		if !ok || !strings.HasPrefix(rest, ")") {
			return v, rest, false
		}
		rest = rest[1:]
	case m[4] != "":
		v, rest, ok = factor(rest)
		f := map[string]func(float64) float64{"cos": math.Cos, "tan": math.Tan}[m[4]]
		v = v.with(v, func(x, _ float64) float64 { return f(x * math.Pi / 180) })
	}
	if ok && strings.HasPrefix(rest, "²") {
		v, rest = v.with(v, func(x, y float64) float64 { return x * y }), rest[len("²"):]
	}
	return v, rest, ok
}

// The check can fail.
func TestAddsUp(t *testing.T) {
	for line, want := range map[string]bool{
		"S = 100 × 12 / 18 ≈ 66.6667 lbf·in": true, "S = 100 × 12 / 18 ≈ 66.6767 lbf·in": false,
		"H = (80² + 50²) / (80² − 50²) ≈ 2.28205": true, "cos 20° ≈ 0.939693, cos 35° ≈ 0.819152": true, "cos 20° ≈ 0.94": false,
		"A = π / 4 × 60² ≈ 2827.43 mm²": true, "x = −0.1 / −0.651 ≈ 0.153610": true, "x = 16 / √(16² + 32²) ≈ 0.447214": true,
	} {
		left, ok := lastSum(line[strings.Index(line, "=")+1 : strings.LastIndex(line, "≈")-1])
		if strings.HasPrefix(line, "cos") {
			left, ok = lastSum(line[:strings.Index(line, " ≈")])
		}
		right, _ := firstSum(line[strings.Index(line, "≈")+len("≈"):])
		if got := ok && right.high >= left.low && right.low <= left.high; got != want {
			t.Errorf("%s: %v %v", line, left, right)
		}
	}
}
