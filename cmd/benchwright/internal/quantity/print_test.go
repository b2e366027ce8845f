package quantity

import (
	"strings"
	"testing"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		x, step string
		mark    DecimalMark
		want    string
	}{
		{"0.15", "0.01", Point, "0.15"},
		{"0.15", "0.01", Comma, "0,15"},
		{"95", "1", Point, "95"},
		{"95", "5", Point, "95"},
		{"95", "0.5", Point, "95.0"},
		{"95.5", "0.5", Point, "95.5"},
		{"0.25", "0.05", Point, "0.25"},
		{"1/64", "1/64", Point, "0.015625"},
		{"-0.15", "0.01", Point, "−0.15"},
		{"-0.001", "0.01", Point, "0.00"},
		{"2/3", "1/3", Point, "2/3"},
		{"0.155", "0.01", Point, "0.16"}, // between two marks
	} {
		if got := Format(ratio(c.x), ratio(c.step), c.mark); got != c.want {
			t.Errorf("%s on steps of %s is %q, want %q", c.x, c.step, got, c.want)
		}
	}
	for x, want := range map[string]string{"133/16": "8-5/16", "5/16": "5/16", "8": "8", "-3/2": "−1-1/2", "0": "0", "33/64": "33/64", "65/128": "33/64"} {
		if got := FormatFraction(ratio(x), ratio("1/64")); got != want {
			t.Errorf("%s is %q, want %q", x, got, want)
		}
	}
	for x, want := range map[string]string{"3/20": "0,15", "95": "95", "1/3": "1/3"} {
		if got := Decimal(ratio(x), Comma); got != want {
			t.Errorf("%s is %q, want %q", x, got, want)
		}
	}
}

func TestPrintMarks(t *testing.T) {
	s := scale(t, "in", "", "", "1/16")
	s.Fractions = true
	m, _ := band(t, "200 to 211.2 mm").Inward(s)
	if got, want := m.Print(Point), "7-7/8 to 8-5/16"+nbsp+"in"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := (Marks{}).Print(Point); got != "" {
		t.Errorf("no marks are %q", got)
	}
}

func TestRange(t *testing.T) {
	for text, want := range map[string]string{
		"100 ±5 N·m":       "95 to 105 N·m",
		"12.5 ±1 N·m":      "11.5 to 13.5 N·m",
		"10.0 ±0.25 mm":    "9.75 to 10.25 mm",
		"0.150 to 0.25 mm": "0.150 to 0.25 mm", // digits as typed
		"8-5/16 ±1/32 in":  "8-9/32 to 8-11/32 in",
		"1/3 ±1/2 turn":    "−1/6 to 5/6 turn",
		"2 +1/16/-1/32 in": "1-31/32 to 2-1/16 in",
		"-5 to +5 °C":      "−5 to 5 °C",
		"max 0.05 mm":      "max 0.05 mm",
		"at least 12.0 mm": "at least 12.0 mm",
		"0.150 mm":         "0.150 mm",
		"20 ±2°":           "18 to 22°",
	} {
		if got := strings.ReplaceAll(band(t, text).Range(Point), nbsp, " "); got != want {
			t.Errorf("%s as a range is %q, want %q", text, got, want)
		}
	}
}

// The form that a message shows is in the value's own unit, and reads.
func TestLimited(t *testing.T) {
	for _, c := range []struct {
		mark       DecimalMark
		text, want string
	}{
		{Point, "45 N·m", "45 ±2 N·m"},
		{Point, "100 Nm", "100 ±10 N·m"},
		{Point, "1500 rpm", "1500 ±200 rev/min"},
		{Point, "0.20 mm", "0.20 ±0.02 mm"},
		{Comma, "0,20 mm", "0,20 ±0,02 mm"},
		{Point, "1 mm", "1 ±0.1 mm"},
		{Point, "0 mm", "0 ±0.1 mm"},
		{Point, "5/16 in", "5/16 ±1/8 in"},
		{Point, "1/2 in", "1/2 ±1/16 in"},
		{Point, "20°", "20 ±1°"},
		{Point, "-8 °C", "-8 ±2 °C"},
	} {
		b, p := ParseBand(c.text, c.mark)
		if p != nil {
			t.Fatal(p)
		}
		got := b.ExampleLimits(c.mark)
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.text, got, c.want)
		}
		if again, p := ParseBand(got, c.mark); p != nil || again.Form != PlusMinus {
			t.Errorf("%s does not read: %v", got, p)
		}
	}
}
