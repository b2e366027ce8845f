package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// house is the import policy: the rooms in the order in which data flows
// through them. A room may import only rooms that stand above it here, and
// from outside the standard library only what its line lists. This is data
// about the design; a build that breaks it is fixed in the code, not here.
var house = []struct {
	room    string   // import path below the module
	outside []string // modules it may use
	tests   []string // further modules that its _test.go files may use
}{
	{room: "schema", outside: []string{"github.com/santhosh-tekuri/jsonschema/v5"}},
	{room: "render"},
	{room: "render/typeface", outside: []string{"golang.org/x/image"}},
	{room: "render/sheet"},
	// The QR code: a well-kept encoder without dependencies of its own. It is
	// read back in a test by a decoder that is another's.
	{room: "render/checkcode", outside: []string{"github.com/piglig/go-qr"}},
	{room: "render/specimen"},
	{room: "render/symbol"},
	{room: "render/dump"},
	{room: "render/impose"},
	{room: "render/raster"},
	{room: "render/svg"},
	{room: "render/compose", tests: []string{"golang.org/x/image"}},
	{room: "render/figure"},
	{room: "render/element"},
	{room: "render/layout"},
	{room: "render/pdf", outside: []string{"github.com/go-pdf/fpdf"},
		tests: []string{"github.com/klippa-app/go-pdfium", "github.com/pdfcpu/pdfcpu", "github.com/tetratelabs/wazero", "github.com/makiuchi-d/gozxing"}},
	{room: internal + "source"},
	{room: internal + "sarif"},
	{room: internal + "diag", outside: []string{"golang.org/x/text"}},
	{room: internal + "quantity"},
	{room: internal + "hazard"},
	{room: internal + "syntax", outside: []string{"github.com/yuin/goldmark", "gopkg.in/yaml.v3"}},
	{room: internal + "workspace"},
	{room: internal + "value"},
	{room: internal + "unit"},
	{room: internal + "shop"},
	{room: internal + "release"},
	{room: internal + "procedure"},
	{room: internal + "bench"},
	{room: internal + "card"},
	{room: internal + "check"},
	{room: internal + "deck"},
	{room: internal + "compare"},
	{room: internal + "compile"},
	{room: internal + "calc"},
	{room: internal + "cli", outside: []string{"golang.org/x/term"},
		tests: []string{"github.com/rogpeppe/go-internal", "github.com/klippa-app/go-pdfium"}},
	{room: "cmd/benchwright", tests: []string{"github.com/rogpeppe/go-internal", "github.com/santhosh-tekuri/jsonschema/v5"}},
}

// reserved names the rooms of ours that may import a room of a leaf from outside
// the leaf. A room of a leaf that is not named is the leaf's own.
var reserved = map[string][]string{
	"schema":       {internal + "compile", internal + "cli"},
	"render":       {internal + "deck", internal + "compare", internal + "compile", internal + "cli"},
	"render/sheet": {internal + "compile"},
	// A record's codes are compared part by part, and cli reads one as typed.
	"render/checkcode": {internal + "release", internal + "compile", internal + "cli"},
	"render/dump":      {internal + "compile"},
	"render/impose":    {internal + "compile"},
	"render/layout":    {internal + "compile"},
	"render/pdf":       {internal + "compile"},
	"render/svg":       {internal + "compile"},
}

const (
	module   = "benchwright/"
	internal = "cmd/benchwright/internal/"
)

// leaves import nothing of ours at all, but for the rooms inside them.
var leaves = []string{"schema", "render"}

// leafOf names the leaf that a room is or stands in, "" for none.
func leafOf(room string) string {
	if first, _, _ := strings.Cut(room, "/"); slices.Contains(leaves, first) {
		return first
	}
	return ""
}

// specimens is imported by tests alone.
const specimens = "render/specimen"

func TestImportsFollowTheHouse(t *testing.T) {
	root := filepath.Join("..", "..")
	order := map[string]int{}
	for i, h := range house {
		order[h.room] = i
	}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && len(d.Name()) > 2) {
			return filepath.SkipDir
		}
		if d.IsDir() || filepath.Ext(path) != ".go" {
			return nil
		}
		rel, err := filepath.Rel(root, filepath.Dir(path))
		if err != nil {
			return err
		}
		room := filepath.ToSlash(rel)
		place, known := order[room]
		if !known {
			t.Errorf("%s stands in a room that the house does not have", path)
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, imp := range file.Imports {
			target, err := strconv.Unquote(imp.Path.Value)
			if err != nil {
				return err
			}
			if why := refuse(room, place, order, target, strings.HasSuffix(path, "_test.go")); why != "" {
				t.Errorf("%s imports %s: %s", path, target, why)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// refuse says why room may not import target, or "".
func refuse(room string, place int, order map[string]int, target string, test bool) string {
	if inner, ours := strings.CutPrefix(target, module); ours {
		at, known := order[inner]
		switch {
		case inner == room && test:
			return ""
		case !known:
			return "no such room"
		case at >= place:
			return "it stands below " + room
		case inner == specimens && !test:
			return "it is for tests"
		case leafOf(room) == leafOf(inner):
			return ""
		case leafOf(room) != "":
			return leafOf(room) + " is a leaf"
		case !slices.Contains(reserved[inner], room):
			return "only " + strings.Join(append(reserved[inner], "the rooms in "+leafOf(inner)), ", ") + " may"
		}
		return ""
	}
	if first, _, _ := strings.Cut(target, "/"); !strings.Contains(first, ".") {
		return "" // the standard library
	}
	allowed := house[place].outside
	if test {
		allowed = slices.Concat(allowed, house[place].tests)
	}
	for _, m := range allowed {
		if target == m || strings.HasPrefix(target, m+"/") {
			return ""
		}
	}
	return "this room's line in the house does not list it"
}

// The policy can fail: each way of breaking it is refused.
func TestRefusals(t *testing.T) {
	order := map[string]int{}
	for i, h := range house {
		order[h.room] = i
	}
	for _, c := range []struct {
		room, target string
		ok           bool
	}{
		{internal + "card", module + internal + "unit", true},
		{internal + "unit", module + internal + "card", false},
		{internal + "card", module + "render", false},
		{internal + "deck", module + "render", true},
		{internal + "syntax", module + "schema", false},
		{internal + "cli", module + "schema", true},
		{"render", module + internal + "source", false},
		{"render/layout", module + internal + "source", false},
		{"render/layout", module + "render/compose", true},
		{"render/compose", module + "render/layout", false},
		{"render/layout", module + specimens, false},
		{"render/sheet", module + "schema", false},
		{internal + "compile", module + "render/pdf", true},
		{internal + "deck", module + "render/pdf", false},
		{internal + "compile", module + "render/compose", false},
		{"render/layout", "github.com/go-pdf/fpdf", false},
		{"render/pdf", "github.com/go-pdf/fpdf", true},
		{internal + "card", "gopkg.in/yaml.v3", false},
		{internal + "syntax", "gopkg.in/yaml.v3", true},
		{internal + "card", "math/big", true},
	} {
		if got := refuse(c.room, order[c.room], order, c.target, false) == ""; got != c.ok {
			t.Errorf("%s imports %s: allowed %v, want %v", c.room, c.target, got, c.ok)
		}
	}
	if _, err := os.Stat("main.go"); err != nil {
		t.Error("the house has no door")
	}
}

// The top of the tree holds what the house says, and nothing else: a page or a
// folder of its own has its place further down.
func TestTopLevel(t *testing.T) {
	allowed := []string{"cmd", "procedures", "schema", "render", "testdata", "out", "README.md", "DEVELOPERS.md", "go.mod", "go.sum", "Makefile", "LICENSE"}
	entries, err := os.ReadDir("../..")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if name := e.Name(); !strings.HasPrefix(name, ".") && name != "bin" && !slices.Contains(allowed, name) {
			t.Errorf("%s stands at the top of the tree", name)
		}
	}
}
