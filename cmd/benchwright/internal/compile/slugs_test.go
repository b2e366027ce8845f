package compile

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
)

// TestEverySlugHasItsPage reads the program's own source: every slug that is
// reported anywhere has a page, and every page's slug is reported somewhere.
func TestEverySlugHasItsPage(t *testing.T) {
	emitted := slugs(t, filepath.Join("..", "..", "..", ".."))
	for slug, where := range emitted {
		if _, ok := diag.PageOf(slug); !ok {
			t.Errorf("%s: `%s` has no page", where, slug)
		}
	}
	for _, slug := range diag.Slugs() {
		if emitted[slug] == "" {
			t.Errorf("pages/%s.md is the page of a message that nothing gives", slug)
		}
	}
	if len(emitted) < 100 {
		t.Errorf("only %d slugs were found", len(emitted))
	}
}

var slugForm = regexp.MustCompile(`^[a-z]+(-[a-z]+)+$`)

// A room is one package of ours, parsed.
type room struct {
	files  []*ast.File
	takes  map[string]int    // functions that take a slug, and as which parameter
	consts map[string]string // text constants
}

// slugs returns every slug that the source below root reports, and where.
func slugs(t *testing.T, root string) map[string]string {
	t.Helper()
	set := token.NewFileSet()
	rooms := map[string]*room{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || d.Name() == ".git") {
			return filepath.SkipDir
		}
		if filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		name := file.Name.Name
		if rooms[name] == nil {
			rooms[name] = &room{takes: map[string]int{}, consts: map[string]string{}}
		}
		rooms[name].add(file)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, name := range sortedKeys(rooms) {
		for _, file := range rooms[name].files {
			for _, decl := range file.Decls {
				if f, ok := decl.(*ast.FuncDecl); ok && f.Body != nil {
					rooms[name].reported(f, rooms, func(slug string, at token.Pos) {
						out[slug] = set.Position(at).String()
					}, func(at token.Pos) {
						t.Errorf("%s: which slug is reported here cannot be read off the source", set.Position(at))
					})
				}
			}
		}
	}
	return out
}

func sortedKeys(m map[string]*room) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// add notes the file's functions that take a slug, and its constants.
func (r *room) add(file *ast.File) {
	r.files = append(r.files, file)
	for _, decl := range file.Decls {
		switch d := decl.(type) {
		case *ast.FuncDecl:
			n := 0
			for _, field := range d.Type.Params.List {
				for _, name := range field.Names {
					if name.Name == "slug" && d.Name.Name != "PageOf" { // which looks one up
						r.takes[d.Name.Name] = n
					}
					n++
				}
			}
		case *ast.GenDecl:
			for _, spec := range d.Specs {
				if v, ok := spec.(*ast.ValueSpec); ok && d.Tok == token.CONST {
					for i, name := range v.Names {
						if i < len(v.Values) {
							r.consts[name.Name] = literal(v.Values[i])
						}
					}
				}
			}
		}
	}
}

// reported calls found for every slug that f reports, and unknown where it
// cannot tell.
func (r *room) reported(f *ast.FuncDecl, rooms map[string]*room, found func(string, token.Pos), unknown func(token.Pos)) {
	say := func(e ast.Expr) {
		switch e := e.(type) {
		case *ast.Ident:
			if _, own := r.takes[f.Name.Name]; own && e.Name == "slug" {
				return // handed on: its callers say which
			}
			if s := r.consts[e.Name]; s != "" {
				found(s, e.Pos())
				return
			}
			if values := assigned(f, e.Name); len(values) > 0 {
				for _, s := range values {
					found(s, e.Pos())
				}
				return
			}
		case *ast.SelectorExpr:
			if e.Sel.Name == "Slug" {
				return // handed on from a leaf, which says which
			}
			if x, ok := e.X.(*ast.Ident); ok && rooms[x.Name] != nil && rooms[x.Name].consts[e.Sel.Name] != "" {
				found(rooms[x.Name].consts[e.Sel.Name], e.Pos())
				return
			}
		case *ast.BasicLit:
			found(literal(e), e.Pos())
			return
		}
		unknown(e.Pos())
	}
	messages := []string{"Problem", "Diagnostic", "Violation"} // the types that carry a slug
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			name := nameOf(n.Fun)
			i, ok := r.takes[name]
			if !ok { // a method of another room
				for _, other := range sortedKeys(rooms) {
					if j, there := rooms[other].takes[name]; there && token.IsExported(name) {
						i, ok = j, true
					}
				}
			}
			if ok && i < len(n.Args) {
				say(n.Args[i])
			}
		case *ast.CompositeLit:
			if !slices.Contains(messages, nameOf(n.Type)) {
				return true
			}
			for i, e := range n.Elts {
				kv, keyed := e.(*ast.KeyValueExpr)
				switch {
				case keyed && isIdent(kv.Key, "Slug"):
					say(kv.Value)
				case !keyed && i == 0 && (literal(e) != "" || isIdent(e, "slug")):
					say(e)
				}
			}
		}
		return true
	})
}

// nameOf returns the name of a function or a type, without its package.
func nameOf(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

func isIdent(e ast.Expr, name string) bool {
	i, ok := e.(*ast.Ident)
	return ok && i.Name == name
}

// assigned returns the slugs among the texts that are assigned to a name.
func assigned(f *ast.FuncDecl, name string) []string {
	var out []string
	ast.Inspect(f, func(n ast.Node) bool {
		a, ok := n.(*ast.AssignStmt)
		if !ok || len(a.Lhs) != 1 || !isIdent(a.Lhs[0], name) {
			return true
		}
		ast.Inspect(a.Rhs[0], func(n ast.Node) bool {
			if e, ok := n.(*ast.BasicLit); ok && slugForm.MatchString(literal(e)) {
				out = append(out, literal(e))
			}
			return true
		})
		return true
	})
	return out
}

// literal returns the text of a string literal, "" for anything else.
func literal(e ast.Expr) string {
	b, ok := e.(*ast.BasicLit)
	if !ok || b.Kind != token.STRING {
		return ""
	}
	s, err := strconv.Unquote(b.Value)
	if err != nil {
		return ""
	}
	return s
}
