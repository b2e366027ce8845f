package schema

import (
	"cmp"
	"errors"
	"slices"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// A Violation is one place where a value breaks its schema.
type Violation struct {
	Path    []string // the keys and indices that lead to what is wrong; for a missing key to its parent, or to the key that asks for it
	Key     bool     // the key at Path is wrong, not its value
	Slug    string
	Message string
	Fix     string
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
// fixed order. The value is map[string]any, []any, nil for what was left empty,
// or the text that was typed: a number, a revision such as 1.10 and a switch are
// judged as they were written, whatever an editor takes them for. One slip gives
// one violation: a misspelled key is not reported as missing too, and inside a
// value of the wrong kind nothing is.
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
	found := d.violations(value, nearest)
	if front, ok := value.(object); ok && kind == "front" {
		for _, inner := range []string{"shop", "unit"} {
			if m, ok := front[inner].(object); ok {
				for _, v := range Validate(inner, m, nearest) {
					v.Path = append([]string{inner}, v.Path...)
					found = append(found, v)
				}
			}
		}
	}
	return found
}

func (d *document) violations(value any, nearest Nearest) []Violation {
	err := d.compiled.Validate(value)
	if err == nil {
		return nil
	}
	var root *jsonschema.ValidationError
	if !errors.As(err, &root) {
		// Only a schema that refers to itself for ever, or a value of another
		// type than Validate asks for, gets here.
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
		return cmp.Or(slices.Compare(a.Path, b.Path), cmp.Compare(a.Slug, b.Slug), cmp.Compare(a.Message, b.Message))
	})
	return slices.CompactFunc(s.found, func(a, b Violation) bool {
		return slices.Equal(a.Path, b.Path) && a.Slug == b.Slug && (a.Slug != KeyMissing || a.Message == b.Message)
	})
}
