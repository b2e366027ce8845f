package compile

import (
	"bytes"
	"encoding/json"
	"image"
	"image/png"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/schema"
)

// A key is one key of a schema: its place in the file is its name, so that what
// several keys refer to is one.
type key struct {
	schema   map[string]any
	root     map[string]any // of its schema
	required bool
}

// kind is what the schema says of a quantity, "" for what is none.
func (k *key) kind() string {
	s := k.schema
	for {
		if kind, ok := s["x-quantity"].(string); ok {
			return kind
		}
		next, _ := s["items"].(map[string]any)
		if ref, ok := s["$ref"].(string); ok {
			next, _ = k.root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
		}
		if s = next; s == nil {
			return ""
		}
	}
}

// A use is a key in a workspace.
type use struct {
	of     *book
	file   *source.File
	field  syntax.Field
	within *syntax.Node // the mapping that it stands in
}

// A book is a workspace of the examples, and what comes of it as it stands.
type book struct {
	name string
	*workspace.Workspace
	before func() outcome
}

// A keyReader knows the keys of one schema, and calls use with each that stands
// in a tree.
type keyReader struct {
	name string
	root map[string]any
	keys map[string]*key
	use  func(*key, syntax.Field, *syntax.Node)
}

func newKeyReader(t testing.TB, name string, keys map[string]*key) *keyReader {
	text, ok := schema.Source(name)
	r := &keyReader{name: name, keys: keys}
	if err := json.Unmarshal(text, &r.root); !ok || err != nil {
		t.Fatal(name, err)
	}
	r.list("", r.root)
	return r
}

// list notes the keys of a schema and of all that stands in it.
func (r *keyReader) list(at string, s map[string]any) {
	required, _ := s["required"].([]any)
	props, _ := s["properties"].(map[string]any)
	for k, p := range props {
		r.keys[r.name+at+"/"+k] = &key{p.(map[string]any), r.root, slices.Contains(required, any(k))}
		r.list(at+"/"+k, p.(map[string]any))
	}
	for _, in := range []string{"additionalProperties", "items"} {
		if p, ok := s[in].(map[string]any); ok {
			r.list(at+"/*", p)
		}
	}
	if defs, ok := s["$defs"].(map[string]any); ok {
		for k, d := range defs {
			r.list("/$"+k, d.(map[string]any))
		}
	}
}

// read finds the keys that stand in a node.
func (r *keyReader) read(at string, s map[string]any, n *syntax.Node) {
	if ref, ok := s["$ref"].(string); ok {
		name := strings.TrimPrefix(ref, "#/$defs/")
		r.read("/$"+name, r.root["$defs"].(map[string]any)[name].(map[string]any), n)
		return
	}
	props, _ := s["properties"].(map[string]any)
	more, _ := s["additionalProperties"].(map[string]any)
	for _, f := range n.Fields {
		if p, ok := props[f.Key].(map[string]any); ok {
			r.use(r.keys[r.name+at+"/"+f.Key], f, n)
			r.read(at+"/"+f.Key, p, f.Value)
		} else if more != nil {
			r.read(at+"/*", more, f.Value)
		}
	}
	if items, ok := s["items"].(map[string]any); ok {
		for _, i := range n.Items {
			r.read(at+"/*", items, i)
		}
	}
}

// archive finds the files of a script: -- name --, then the text.
var archive = regexp.MustCompile(`(?m)^-- (\S+) --\n`)

// A blockExample is the example of a block in procedures/README.md, with what
// must stand around it: a unit that has two variants, of which the block is for
// one.
type blockExample struct {
	section string // what the page says of the block
	files   map[string]string
}

// blockExamples returns the examples by block type.
func blockExamples(t *testing.T) map[string]blockExample {
	page, err := os.ReadFile("../../../../procedures/README.md")
	if err != nil {
		t.Fatal(err)
	}
	var picture bytes.Buffer
	if err := png.Encode(&picture, image.NewGray(image.Rect(0, 0, 800, 600))); err != nil {
		t.Fatal(err)
	}
	out := map[string]blockExample{}
	for _, section := range strings.Split(string(page), "\n## ")[1:] {
		kind, _, _ := strings.Cut(section, "\n")
		files := map[string]string{
			"shop.yaml":            "benchwright: 1\nshop: Fallow Lane Drive Works\n",
			"unit.yaml":            "unit: winch\ntitle: Winch head\nvariants: {early: {title: Early, serials: 1 to 99}, late: {title: Late, serials: 100 up}}\n",
			"card.md":              "---\ncard: W-10\ntitle: Set the winch up\nunit: winch\nrevision: A\ndate: 2026-02-03\n---\n\n## Stage\n\n",
			"figures/oil-hole.png": picture.String(),
		}
		for _, fence := range strings.Split(section, "\n```yaml\n# ")[1:] {
			name, facts, _ := strings.Cut(fence, "\n")
			facts, _, _ = strings.Cut(facts, "\n```")
			files[name] += facts + "\n"
		}
		_, steps, _ := strings.Cut(section, "\n````markdown\n")
		steps, _, _ = strings.Cut(steps, "\n````")
		files["card.md"] += strings.ReplaceAll(steps, "```"+kind+"\n", "```"+kind+"\nonly: [late]\n") + "\n"
		out[kind] = blockExample{section, files}
	}
	return out
}

// books returns the workspaces of the blocks' examples, of testdata/keys.txtar, of
// the scripts, of the pages' fixes, and the demo, once for each of its procedures.
func books(t *testing.T) []*book {
	var out []*book
	one := func(name string, w *workspace.Workspace) {
		out = append(out, &book{name, w, sync.OnceValue(func() outcome { return outcomeOf(t, w) })})
	}
	add := func(name string, files map[string]string) {
		dir := write(t, files)
		for _, path := range slices.Sorted(maps.Keys(files)) {
			folder, target := filepath.Join(dir, filepath.Dir(path)), "."
			switch filepath.Base(path) {
			case "shop.yaml":
			case alone:
				target = alone
			default:
				continue
			}
			spaces, err := workspace.Load(folder, []string{target}, nil, &diag.List{})
			if err != nil {
				t.Fatal(err)
			}
			for _, w := range spaces {
				one(name, w)
			}
		}
	}
	examples := blockExamples(t)
	for _, kind := range slices.Sorted(maps.Keys(examples)) {
		add(kind, examples[kind].files)
	}
	names, err := filepath.Glob("../../../../testdata/script/*.txtar")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append([]string{"../../../../testdata/keys.txtar"}, names...) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files := map[string]string{}
		at := archive.FindAllSubmatchIndex(text, -1)
		for i, m := range at {
			end := len(text)
			if i+1 < len(at) {
				end = at[i+1][0]
			}
			files[string(text[m[2]:m[3]])] = string(text[m[1]:end])
		}
		add(filepath.Base(name), files)
	}
	for _, slug := range diag.Slugs() {
		if setups[slug].make != nil {
			continue
		}
		page, _ := procedure.PageOf(slug)
		all := samples(page.Text, "Example")
		maps.Copy(all, samples(page.Text, "Fix"))
		files := all.files(t)
		marked(t, files)
		add(slug, files)
	}
	spaces, err := workspace.Load("../../../../procedures", []string{"."}, nil, &diag.List{})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range spaces[0].Procedures {
		w := *spaces[0]
		w.Procedures = nil
		for _, q := range spaces[0].Procedures {
			w.Procedures = append(w.Procedures, &workspace.Entry{File: q.File, Unit: q.Unit, Named: q == p})
		}
		one(p.File.Name, &w)
	}
	return out
}

// corpus finds the keys of all schemas and their uses in the books.
func corpus(t *testing.T) (keys map[string]*key, uses map[*key][]use) {
	keys, uses = map[string]*key{}, map[*key][]use{}
	readers := map[string]*keyReader{}
	for _, name := range schema.Names() {
		readers[name] = newKeyReader(t, name, keys)
	}
	for _, b := range books(t) {
		look := func(kind string, t *syntax.Tree) {
			r := readers[kind]
			if t == nil || r == nil {
				return // a script's slip
			}
			r.use = func(k *key, field syntax.Field, within *syntax.Node) {
				uses[k] = append(uses[k], use{b, t.File, field, within})
			}
			r.read("", r.root, t.Root)
		}
		msgs := &diag.List{}
		if b.Shop != nil {
			look("shop", syntax.ReadTree(b.Shop, msgs))
		}
		for _, u := range b.Units {
			look("unit", syntax.ReadTree(u, msgs))
		}
		for _, p := range b.Procedures {
			if !p.Named {
				continue
			}
			doc := syntax.ReadDoc(p.File, msgs)
			look("front", doc.Front)
			for _, st := range doc.Stages {
				for _, s := range st.Steps {
					for _, c := range s.Content {
						if block, ok := c.(*syntax.Block); ok {
							look("block-"+block.Type, block.Tree)
						}
					}
				}
			}
		}
	}
	return keys, uses
}
