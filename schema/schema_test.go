package schema

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// raw returns a schema as a JSON value.
func raw(t *testing.T, name string) object {
	t.Helper()
	text, ok := Source(name)
	if !ok {
		t.Fatalf("no schema is called %s", name)
	}
	var out object
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return out
}

func TestNames(t *testing.T) {
	if got := Names(); len(got) == 0 || !slices.IsSorted(got) {
		t.Errorf("names are %q", got)
	}
	if _, ok := Source("no-such"); ok {
		t.Error("a schema that is not there has a text")
	}
	if Validate("no-such", object{"a": 1}, nil) != nil {
		t.Error("a kind without a schema has violations")
	}
}

func TestSchemasAreValid(t *testing.T) {
	meta, err := jsonschema.Compile("https://json-schema.org/draft/2020-12/schema")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append(Names(), Printed()...) {
		s := raw(t, name)
		if err := meta.Validate(s); err != nil {
			t.Errorf("%s: %#v", name, err)
		}
		if s["$schema"] != "https://json-schema.org/draft/2020-12/schema" || s["$id"] != Base+name+".schema.json" {
			t.Errorf("%s names itself %v in %v", name, s["$id"], s["$schema"])
		}
	}
}

// walk calls f for every schema object in s. A map of schemas is none itself.
func walk(at string, s any, f func(at string, s object)) {
	m, ok := s.(object)
	if !ok {
		return
	}
	f(at, m)
	for _, k := range keys(m) {
		switch k {
		case "properties", "$defs":
			for _, p := range keys(m[k]) {
				walk(at+"/"+k+"/"+p, m[k].(object)[p], f)
			}
		case "additionalProperties", "items", "if", "then":
			walk(at+"/"+k, m[k], f)
		case "allOf", "anyOf":
			for i, e := range m[k].([]any) {
				walk(fmt.Sprint(at, "/", k, "/", i), e, f)
			}
		}
	}
}

// Every key has a description and a sample that is right, every object is
// closed and has a title for sentences, and nothing leads out of the file.
func TestSchemasSpeakToWriters(t *testing.T) {
	// The keywords that path.go follows and sentence.go has words for, and
	// those that refuse nothing.
	spoken := []string{"additionalProperties", "required", "dependentRequired", "anyOf", "enum", "type", "pattern", "minimum",
		"minLength", "maxLength", "minItems", "maxItems", "properties", "items", "allOf", "if", "then", "$ref", "$defs", "const"}
	silent := []string{"$schema", "$id", "title", "description", "examples", "x-quantity", "x-form", "x-fix", "x-list", "x-version"}
	kinds := []string{"any", "angle", "length", "mass", "number", "percent", "pressure", "torque"}
	for _, name := range Names() {
		doc := raw(t, name)
		walk(name, doc, func(at string, s object) {
			for _, k := range keys(s) {
				if !slices.Contains(spoken, k) && !slices.Contains(silent, k) {
					t.Errorf("%s uses %s, for which there is no sentence", at, k)
				}
			}
			if q, ok := s["x-quantity"]; ok && !slices.Contains(kinds, fmt.Sprint(q)) {
				t.Errorf("%s has a quantity of no kind: %v", at, q)
			}
			if s["pattern"] != nil && s["x-form"] == nil && s["x-list"] == nil {
				t.Errorf("%s has a pattern without words for it", at)
			}
			if r, ok := s["$ref"].(string); ok && (!strings.HasPrefix(r, "#/$defs/") || lookup(doc, tokens(r[1:])) == nil) {
				t.Errorf("%s leads to %s", at, r)
			}
			if strings.Contains(at, "/if") {
				return
			}
			if props, ok := s["properties"].(object); ok {
				if s["additionalProperties"] != false {
					t.Errorf("%s is open", at)
				}
				if s["title"] == nil {
					t.Errorf("%s has no title", at)
				}
				for _, k := range keys(props) {
					p := props[k].(object)
					d, _ := p["description"].(string)
					if len(d) < 12 || !strings.HasSuffix(d, ".") {
						t.Errorf("%s: %s has no sentence of description: %q", at, k, d)
					}
					if p["examples"] == nil {
						t.Errorf("%s: %s has no example", at, k)
					}
				}
			}
		})
	}
}

func TestExamplesAreRight(t *testing.T) {
	for _, name := range Names() {
		id := Base + name + ".schema.json"
		c := jsonschema.NewCompiler()
		text, _ := Source(name)
		if err := c.AddResource(id, strings.NewReader(string(text))); err != nil {
			t.Fatal(err)
		}
		walk("", raw(t, name), func(at string, s object) {
			examples, ok := s["examples"].([]any)
			if !ok {
				return
			}
			part, err := c.Compile(id + "#" + at)
			if err != nil {
				t.Fatalf("%s%s: %v", name, at, err)
			}
			for _, e := range examples {
				if err := part.Validate(e); err != nil {
					t.Errorf("%s%s: the example %v is wrong: %v", name, at, e, err)
				}
				if err := part.Validate(typed(e)); err != nil {
					t.Errorf("%s%s: the example %v is wrong as typed: %v", name, at, e, err)
				}
			}
		})
	}
}
