package schema

import (
	"net/url"
	"strconv"
	"strings"
)

var pointerPlain = strings.NewReplacer("~1", "/", "~0", "~")

// tokens splits a JSON pointer (RFC 6901), percent-encoded as the validator
// writes it, into plain tokens. Nothing else reads a pointer, and nothing
// writes one.
func tokens(pointer string) []string {
	var out []string
	for _, t := range strings.Split(strings.TrimPrefix(pointer, "/"), "/") {
		if plain, err := url.PathUnescape(t); err == nil {
			t = plain
		}
		out = append(out, pointerPlain.Replace(t))
	}
	if pointer == "" {
		return nil
	}
	return out
}

// lookup returns the value at a path, nil when there is none.
func lookup(value any, path []string) any {
	for _, t := range path {
		switch v := value.(type) {
		case object:
			value = v[t]
		case []any:
			i, err := strconv.Atoi(t)
			if err != nil || i < 0 || i >= len(v) {
				return nil
			}
			value = v[i]
		default:
			return nil
		}
	}
	return value
}

// A scope is one schema object that a keyword stands in, and how deep in the
// value it speaks.
type scope struct {
	schema object
	depth  int
}

// trail returns the schema objects that lead to a keyword, outermost first,
// through references, and the keyword itself. Location is the validator's
// path of a keyword: /properties/limits/additionalProperties/$ref/required.
func (d *document) trail(location string) (scopes []scope, keyword string) {
	path := tokens(location)
	schema, depth := d.raw, 0
	scopes = append(scopes, scope{schema, 0})
	for i := 0; i < len(path); i++ {
		keyword = path[i]
		var next any
		switch keyword {
		case "properties":
			if i++; i < len(path) {
				next = lookup(schema, []string{"properties", path[i]})
				depth++
			}
		case "additionalProperties", "items":
			next = schema[keyword]
			depth++
		case "allOf":
			if i++; i < len(path) {
				next = lookup(schema, []string{"allOf", path[i]})
			}
		case "then":
			next = schema[keyword]
		case "$ref":
			ref, _ := schema[keyword].(string)
			next = lookup(d.raw, tokens(strings.TrimPrefix(ref, "#")))
		case "dependentRequired":
			return scopes, keyword
		}
		inner, ok := next.(object)
		if !ok {
			return scopes, keyword
		}
		schema = inner
		scopes = append(scopes, scope{schema, depth})
	}
	return scopes, keyword
}
