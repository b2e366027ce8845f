package schema

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// A Violation is one place where a value breaks its schema.
type Violation struct {
	Pointer string // JSON pointer (RFC 6901), percent-encoded, to what is wrong; for a missing key to its parent, or to the key that asks for it
	Key     bool   // the key at Pointer is wrong, not its value
	Slug    string
	Message string
	Help    string
}

// The slugs of violations.
const (
	KeyUnknown   = "key-unknown"   // a key that does not belong there
	KeyMissing   = "key-missing"   // a key that must be there is not
	ValueUnknown = "value-unknown" // not one of the allowed words
	ValueKind    = "value-kind"    // a list where a text belongs, and the like
	VersionNewer = "version-newer" // a language version that this program does not know
)

// Nearest picks the one of names that a slip most likely meant by word, or "".
type Nearest func(word string, names []string) string

// Validate returns what is wrong with a value of a kind (one of Names), in a
// fixed order. The value is what encoding/json would read: map[string]any,
// []any, nil for what was left empty, and scalars, which are all taken as the
// text that was typed. One slip gives one violation: a misspelt key is not
// reported as missing too, and inside a value of the wrong kind nothing is.
//
// The front matter of a procedure that stands alone may hold a unit and a
// shop; they are validated by their own schemas. A kind without a schema has
// no violations. A nil nearest names no nearest key or word.
func Validate(kind string, value any, nearest Nearest) []Violation {
	if nearest == nil {
		nearest = func(string, []string) string { return "" }
	}
	d := documents()[kind]
	if d == nil {
		return nil
	}
	value = asTyped(value)
	found := d.violations(value, nearest)
	if front, ok := value.(object); ok && kind == "front" {
		for _, inner := range []string{"shop", "unit"} {
			if m, ok := front[inner].(object); ok {
				for _, v := range Validate(inner, m, nearest) {
					v.Pointer = "/" + inner + v.Pointer
					found = append(found, v)
				}
			}
		}
	}
	return found
}

// asTyped returns a copy of a value with every scalar as a string, so that a
// number, a revision such as 1.10 and a text are all judged as written.
func asTyped(value any) any {
	switch v := value.(type) {
	case nil:
		return nil
	case string:
		if strings.TrimSpace(v) == "" {
			return "" // blanks alone say nothing
		}
		return v
	case json.Number:
		return string(v)
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case object:
		m := make(object, len(v))
		for k, e := range v {
			m[k] = asTyped(e)
		}
		return m
	case []any:
		l := make([]any, len(v))
		for i, e := range v {
			l[i] = asTyped(e)
		}
		return l
	}
	return fmt.Sprint(value)
}

func (d *document) violations(value any, nearest Nearest) []Violation {
	err := d.compiled.Validate(value)
	if err == nil {
		return nil
	}
	var root *jsonschema.ValidationError
	if !errors.As(err, &root) {
		// Only a schema that refers to itself for ever, or a value of a type
		// that asTyped does not leave, gets here.
		panic(err)
	}
	s := speaker{doc: d, root: value, nearest: nearest}
	leaves(root, s.add)
	return s.sorted()
}

// leaves calls f for every innermost cause. What stands in an anyOf are
// alternatives, of which the whole is one cause.
func leaves(e *jsonschema.ValidationError, f func(*jsonschema.ValidationError)) {
	if len(e.Causes) == 0 || strings.HasSuffix(e.KeywordLocation, "/anyOf") {
		f(e)
		return
	}
	for _, c := range e.Causes {
		leaves(c, f)
	}
}

// sorted returns the violations in order, one for each value: where several
// keywords refuse the same value the first of its slugs stands.
func (s *speaker) sorted() []Violation {
	slices.SortFunc(s.found, func(a, b Violation) int {
		return cmp.Or(cmp.Compare(a.Pointer, b.Pointer), cmp.Compare(a.Slug, b.Slug), cmp.Compare(a.Message, b.Message))
	})
	return slices.CompactFunc(s.found, func(a, b Violation) bool {
		return a.Pointer == b.Pointer && a.Slug == b.Slug && (a.Slug != KeyMissing || a.Message == b.Message)
	})
}
