package syntax

import (
	"encoding/json"
	"math/big"
	"regexp"
	"slices"
	"strings"
)

// Value returns the value as a JSON document holds it, for a schema: a mapping
// as map[string]any, a sequence as []any, a plain scalar by YAML 1.2's core
// schema as nil, bool or json.Number, everything else as string. What YAML
// calls infinite or not a number stays a string, and dates are strings.
func (n *Node) Value() any {
	if n == nil {
		return nil
	}
	switch n.Kind {
	case Mapping:
		out := make(map[string]any, len(n.Fields))
		for _, f := range n.Fields {
			out[f.Key] = f.Value.Value()
		}
		return out
	case Sequence:
		out := make([]any, len(n.Items))
		for i, item := range n.Items {
			out[i] = item.Value()
		}
		return out
	}
	if n.Quoted {
		return n.Text
	}
	if n.Null() {
		return nil
	}
	switch n.Text {
	case "true", "True", "TRUE":
		return true
	case "false", "False", "FALSE":
		return false
	}
	if number, ok := coreNumber(n.Text); ok {
		return number
	}
	return n.Text
}

// Null says whether a scalar is YAML's word for nothing, or nothing at all.
func (n *Node) Null() bool {
	return !n.Quoted && slices.Contains([]string{"", "~", "null", "Null", "NULL"}, n.Text)
}

// The numbers of YAML 1.2.2, section 10.3.2. An exponent has at most three
// digits here: a schema computes the number exactly, and 1e999999999 has a
// gigabyte of zeros.
var (
	coreInt   = regexp.MustCompile(`^[-+]?[0-9]+$`)
	coreOther = regexp.MustCompile(`^0o[0-7]+$|^0x[0-9a-fA-F]+$`)
	coreFloat = regexp.MustCompile(`^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]{1,3})?$`)
)

// coreNumber returns a plain scalar that is a number as JSON writes numbers.
func coreNumber(s string) (json.Number, bool) {
	switch {
	case coreInt.MatchString(s):
		i, ok := new(big.Int).SetString(strings.TrimPrefix(s, "+"), 10)
		if !ok {
			return "", false
		}
		return json.Number(i.String()), true
	case coreOther.MatchString(s):
		i, ok := new(big.Int).SetString(s, 0)
		if !ok {
			return "", false
		}
		return json.Number(i.String()), true
	case coreFloat.MatchString(s):
		return jsonFloat(s), true
	}
	return "", false
}

// jsonFloat rewrites a float of YAML as JSON writes it, digit for digit: JSON
// wants a digit on both sides of the point, no sign before a positive number
// and no zeros in front.
func jsonFloat(s string) json.Number {
	s, negative := strings.CutPrefix(strings.TrimPrefix(s, "+"), "-")
	mantissa, exponent := s, ""
	if i := strings.IndexAny(s, "eE"); i >= 0 {
		mantissa, exponent = s[:i], s[i:]
	}
	whole, part, point := strings.Cut(mantissa, ".")
	if whole = strings.TrimLeft(whole, "0"); whole == "" {
		whole = "0"
	}
	if point && part == "" {
		part = "0"
	}
	if point {
		whole += "." + part
	}
	if negative {
		whole = "-" + whole
	}
	return json.Number(whole + exponent)
}
