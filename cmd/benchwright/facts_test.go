package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// Rooms hand each other facts: every sentence of a message can be worded anew
// without a rule falling. So outside diag nobody looks into one: it is written,
// or handed on to be reported. A slug is a name and has no parts that mean
// something.
func TestNoSentenceIsSearched(t *testing.T) {
	set := token.NewFileSet()
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && d.Name() == "diag" {
			return filepath.SkipDir
		}
		if filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		for _, at := range searched(file) {
			t.Errorf("%s: a sentence or a part of a slug is looked into; give the message or the problem a field", set.Position(at))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// reporters are the functions to which a sentence may be handed on.
var reporters = map[string]bool{"Report": true, "Refuse": true, "wrong": true}

// searched returns where a file does anything else with a message's sentence
// than write it or hand it on, and where it takes a slug apart.
func searched(file *ast.File) (out []token.Pos) {
	sentence := func(e ast.Expr) bool {
		s, ok := e.(*ast.SelectorExpr)
		return ok && (s.Sel.Name == "Message" || s.Sel.Name == "Fix" || s.Sel.Name == "Label")
	}
	fine := map[ast.Expr]bool{}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			for _, e := range n.Lhs {
				fine[e] = true
			}
		case *ast.CallExpr:
			fun, ok := n.Fun.(*ast.SelectorExpr)
			if !ok {
				break
			}
			fine[n.Fun] = true // a method of that name
			for _, e := range n.Args {
				if reporters[fun.Sel.Name] {
					fine[e] = true
				}
				s, ok := e.(*ast.SelectorExpr)
				if from, named := fun.X.(*ast.Ident); ok && named && s.Sel.Name == "Slug" && from.Name == "strings" {
					out = append(out, e.Pos())
				}
			}
		case ast.Expr:
			if sentence(n) && !fine[n] {
				out = append(out, n.Pos())
			}
		}
		return true
	})
	return out
}

// What the test before forbids it finds.
func TestSearchedIsFound(t *testing.T) {
	for text, want := range map[string]int{
		`d.Fix = "write it"`:                                0,
		`d.At, d.Message = at, "it is wrong"`:               0,
		`d.Message += " here"`:                              0,
		`msgs.Report(p.Slug, at, p.Fix, "%s", p.Message)`:   0,
		`if d.Slug == "too-wide" { n.Label(src) }`:          0,
		`if strings.Contains(d.Message, "mm of ") { f() }`:  1,
		`if d.Message == unbroken { f() }`:                  1,
		`key := strings.TrimPrefix(d.Fix, "add ")`:          1,
		`words := d.Label`:                                  1,
		`if strings.HasPrefix(d.Slug, "heading-") { f() }`:  1,
		`keep(func(d D) bool { return d.Fix+d.Label != x})`: 2,
	} {
		file, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\nfunc f() {\n"+text+"\n}", parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		if got := len(searched(file)); got != want {
			t.Errorf("%s: %d, want %d", text, got, want)
		}
	}
}
