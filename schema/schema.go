// Package schema holds the JSON Schemas (2020-12) of what a writer writes
// (shop.yaml, unit.yaml, front matter, typed blocks) and says in plain words
// where a value breaks one. It knows texts, lists and mappings only,
// nothing of YAML or of places in a file. It also keeps the schemas of the JSON
// documents that the program prints, for those who read them.
//
// The schemas are for editors as much as for the compiler, so every key has a
// description. Beside the standard's keywords they carry six of our own,
// which another reader passes over:
//
//	x-quantity  the value is a quantity of this kind; what stands in it is
//	            read elsewhere
//	x-form      what a pattern asks for, in words
//	x-fix      how to fix a value that breaks the schema, where an example
//	            could be taken for the value itself
//	x-list      the pattern keeps names apart that want brackets around them
//	x-version   the version of the language; a higher one has its own message
//	title       with its article, as a sentence needs it: "a torque block"
package schema

import (
	"embed"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// Base is where the schemas' identifiers begin.
const Base = "https://benchwright.example/schema/1/"

const suffix = ".schema.json"

//go:embed *.schema.json
var files embed.FS

// Names returns the names of the schemas of what a writer writes, sorted:
// block-caution … unit.
func Names() []string {
	entries, err := files.ReadDir(".")
	if err != nil {
		panic(err) // the embedded folder is part of the program
	}
	var names []string
	for _, e := range entries {
		if name := strings.TrimSuffix(e.Name(), suffix); !slices.Contains(Printed(), name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// Printed returns the names of the schemas of the documents that the program
// itself writes: the JSON that it prints, and the records of releases, which it
// reads again.
func Printed() []string { return []string{"compare", "release"} }

// Source returns the text of a schema as its file has it.
func Source(name string) ([]byte, bool) {
	text, err := files.ReadFile(name + suffix)
	return text, err == nil
}

// A document is one schema, compiled to judge by and as it stands to speak
// from.
type document struct {
	compiled *jsonschema.Schema
	raw      object
}

type object = map[string]any

// documents compiles every schema once a process. Compiled schemas are safe
// to share.
var documents = sync.OnceValue(func() map[string]*document {
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	c.LoadURL = func(url string) (io.ReadCloser, error) {
		return nil, fmt.Errorf("schema refers to %s, outside itself", url)
	}
	out := map[string]*document{}
	for _, name := range append(Names(), "release") {
		text, _ := Source(name)
		d := &document{}
		if err := json.Unmarshal(text, &d.raw); err != nil {
			panic(fmt.Errorf("%s: %w", name, err))
		}
		if err := c.AddResource(Base+name+suffix, strings.NewReader(string(text))); err != nil {
			panic(fmt.Errorf("%s: %w", name, err))
		}
		d.compiled = c.MustCompile(Base + name + suffix)
		out[name] = d
	}
	return out
})
