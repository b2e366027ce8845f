package schema

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// A speaker turns the validator's findings about one value into sentences of
// ours.
type speaker struct {
	doc     *document
	root    any
	nearest Nearest
	found   []Violation
}

// A finding is one keyword that a value breaks. What it says of keys that are
// missing, strange or misplaced stands in keys.go, what it says of values here.
type finding struct {
	*speaker
	path   []string // to the value
	value  any      // the value
	scopes []scope  // the schema objects that lead to the keyword
	schema object   // the one that holds it
}

func (s *speaker) add(e *jsonschema.ValidationError) {
	f := finding{speaker: s, path: tokens(e.InstanceLocation)}
	f.value = lookup(s.root, f.path)
	var keyword string
	f.scopes, keyword = s.doc.trail(e.KeywordLocation)
	f.schema = f.scopes[len(f.scopes)-1].schema
	switch keyword {
	case "additionalProperties":
		f.unknownKeys()
	case "required":
		f.missing(f.schema["required"])
	case "dependentRequired":
		f.besides(e.KeywordLocation)
	case "anyOf":
		f.noneOf()
	case "enum":
		f.word()
	case "type":
		f.kind()
	case "pattern":
		if f.schema["x-list"] == true {
			f.report(ValueKind, "put brackets around the list: `["+quote(f.value)+"]`", "%s takes names, and without brackets this is one name with a comma in it", f.name())
			return
		}
		f.report(ValueKind, f.example(), "%s takes %s, not `%s`", f.name(), f.wants(), quote(f.value))
	case "minLength":
		f.report(ValueKind, f.example(), "%s is empty", f.name())
	case "maxLength":
		f.report(ValueKind, "shorten it", "%s has more than %v characters", f.name(), f.schema["maxLength"])
	case "minItems", "maxItems":
		f.count()
	default:
		// No schema of ours uses another keyword; a test holds it.
		f.report(ValueKind, "", "%s: %s", f.name(), e.Message)
	}
}

// report adds a violation at the finding's value.
func (f finding) report(slug, fix, format string, args ...any) {
	f.found = append(f.found, Violation{
		Path: f.path, Slug: slug, Fix: fix, Message: fmt.Sprintf(format, args...),
	})
}

// reportKey adds a violation at a key of the finding's value.
func (f finding) reportKey(key, slug, fix, format string, args ...any) {
	f.found = append(f.found, Violation{
		Path: append(slices.Clone(f.path), key), Key: true, Slug: slug, Fix: fix, Message: fmt.Sprintf(format, args...),
	})
}

// word reports a value that is not one of the allowed words.
func (f finding) word() {
	var allowed []string
	for _, w := range words(f.schema["enum"]) {
		if !slices.Contains(allowed, w) {
			allowed = append(allowed, w)
		}
	}
	text, ok := f.value.(string)
	switch {
	case !ok:
		f.kind()
		return
	case text == "":
		f.report(ValueKind, f.example(), "%s is empty", f.name())
		return
	}
	if highest, ok := f.schema["x-version"]; ok {
		f.version(text, fmt.Sprint(highest))
		return
	}
	fix := "write " + join(ticked(allowed), "or")
	if near := f.nearest(text, allowed); near != "" {
		fix = "write `" + near + "`"
	}
	f.report(ValueUnknown, fix, "%s cannot be `%s`", f.name(), quote(text))
}

// version reports a language version other than ours.
func (f finding) version(text, ours string) {
	if n, err := strconv.Atoi(text); err == nil && n > 1 {
		f.report(VersionNewer, "use a newer benchwright, or write `"+f.last()+": "+ours+"` if nothing newer is used",
			"this workspace is written in version %d of the language, and this benchwright knows version %s", n, ours)
		return
	}
	f.report(ValueUnknown, "write `"+f.last()+": "+ours+"`", "%s cannot be `%s`", f.name(), quote(text))
}

// kind reports a text where a list belongs, and the like.
func (f finding) kind() {
	if f.value == nil {
		f.report(ValueKind, f.example(), "nothing is written after %s", f.name())
		return
	}
	got := "text"
	switch f.value.(type) {
	case object:
		got = "keys of its own"
	case []any:
		got = "a list"
	}
	f.report(ValueKind, f.example(), "%s takes %s, not %s", f.name(), f.wants(), got)
}

// count reports a list with too few or too many entries.
func (f finding) count() {
	l, _ := f.value.([]any)
	if len(l) == 0 {
		f.report(ValueKind, f.example(), "%s is an empty list", f.name())
		return
	}
	least, most := f.schema["minItems"], f.schema["maxItems"]
	if most, ok := most.(float64); ok && most != least {
		f.report(ValueKind, fmt.Sprintf("take %d of them out, or make two blocks of it", len(l)-int(most)), "%s takes at most %v entries, not %d", f.name(), most, len(l))
		return
	}
	f.report(ValueKind, f.example(), "%s takes %v entries, not %d", f.name(), least, len(l))
}

// wants says what the schema takes: "text or a list".
func (f finding) wants() string {
	if form, ok := f.schema["x-form"].(string); ok {
		return form
	}
	var out []string
	add := func(w string) {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	types := words(f.schema["type"])
	if _, ok := f.schema["enum"]; ok && len(types) == 0 {
		types = []string{"string"}
	}
	for _, t := range types {
		switch {
		case t == "array":
			add("a list")
		case t == "object":
			add("keys of its own")
		case f.schema["x-quantity"] == "number":
			add("a number")
		case f.schema["x-quantity"] != nil:
			add("a quantity")
		default:
			add("text")
		}
	}
	return join(out, "or")
}

// title returns what the value is called, with its article, by the innermost
// schema that says so.
func (f finding) title() string {
	for _, s := range slices.Backward(f.scopes) {
		if t, ok := s.schema["title"].(string); ok && s.depth == len(f.path) {
			return t
		}
	}
	return f.name()
}

// name returns what the value is called by its key or place.
func (f finding) name() string {
	if len(f.path) == 0 {
		t, _ := f.doc.raw["title"].(string)
		return t
	}
	if _, ok := lookup(f.root, f.path[:len(f.path)-1]).([]any); !ok {
		return "`" + quote(f.last()) + "`"
	}
	n, _ := strconv.Atoi(f.last())
	outer := ""
	if len(f.path) > 1 {
		outer = " of `" + quote(f.path[len(f.path)-2]) + "`"
	}
	return fmt.Sprintf("entry %d%s", n+1, outer)
}

func (f finding) last() string {
	if len(f.path) == 0 {
		return ""
	}
	return f.path[len(f.path)-1]
}

// example returns a fix that shows how the value is written, by the nearest
// schema that has an example of it.
func (f finding) example() string {
	if fix, ok := f.schema["x-fix"].(string); ok {
		return fix
	}
	for _, s := range slices.Backward(f.scopes) {
		if e, ok := s.schema["examples"].([]any); ok && len(e) > 0 && s.depth > 0 && s.depth <= len(f.path) {
			return "write it as `" + quote(f.path[s.depth-1]) + ": " + flow(e[0], false) + "`"
		}
	}
	return ""
}
