package schema

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"
)

// flow writes an example as YAML on one line, within brackets or after a key.
func flow(v any, within bool) string {
	switch v := v.(type) {
	case object:
		var out []string
		for _, k := range keys(v) {
			out = append(out, k+": "+flow(v[k], true))
		}
		return "{" + strings.Join(out, ", ") + "}"
	case []any:
		var out []string
		for _, e := range v {
			out = append(out, flow(e, true))
		}
		return "[" + strings.Join(out, ", ") + "]"
	case string:
		if within && strings.ContainsAny(v, ",[]{}") || strings.Contains(v, ": ") || strings.Contains(v, " #") {
			return `"` + v + `"`
		}
	}
	return fmt.Sprint(v)
}

// quote returns a writer's text fit for a sentence: one line, no controls,
// not too long.
func quote(v any) string {
	text := fmt.Sprint(v)
	var b strings.Builder
	n := 0
	for _, r := range text {
		if n++; n > 40 {
			return b.String() + "…"
		}
		if unicode.IsControl(r) || r == '`' || r == '\u2028' || r == '\u2029' {
			r = '·'
		}
		b.WriteRune(r)
	}
	return b.String()
}

func keys(v any) []string {
	m, _ := v.(object)
	return slices.Sorted(maps.Keys(m))
}

// words returns a list of scalars, or one, as strings.
func words(v any) []string {
	switch v := v.(type) {
	case nil:
		return nil
	case []any:
		var out []string
		for _, e := range v {
			out = append(out, fmt.Sprint(e))
		}
		return out
	}
	return []string{fmt.Sprint(v)}
}

func ticked(names []string) []string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = "`" + n + "`"
	}
	return out
}

func list(names []string) string { return join(ticked(names), "or") }

// join writes a list as in a sentence: "a, b and c".
func join(items []string, and string) string {
	if len(items) < 2 {
		return strings.Join(items, "")
	}
	last := len(items) - 1
	return strings.Join(items[:last], ", ") + " " + and + " " + items[last]
}
