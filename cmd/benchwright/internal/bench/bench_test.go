package bench

import (
	"math/big"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// num reads an exact number, "66.7" or "1/3".
func num(t testing.TB, s string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		t.Fatalf("%q is not a number", s)
	}
	return r
}

func band(t testing.TB, s string) quantity.Band {
	t.Helper()
	b, p := quantity.ParseBand(s, quantity.Point)
	if p != nil {
		t.Fatalf("%q: %s", s, p.Message)
	}
	return b
}

// scale returns the scale with this range and these marks.
func scale(t testing.TB, span, marks string) quantity.Scale {
	t.Helper()
	b, m := band(t, span), band(t, marks)
	return quantity.Scale{Unit: b.Unit, Low: b.Low, High: b.High, Step: m.Nominal.Value}
}
