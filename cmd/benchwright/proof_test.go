package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"
)

// makers are the types that say of something that it was given up, each with the
// one function that may fill one in. It asks for the proof that an error was
// reported, or is what makes it.
var makers = map[string]string{"Invalid": "invalid", "Reported": "Proof"}

// TestNothingIsGivenUpWithoutProof reads the program's own source.
func TestNothingIsGivenUpWithoutProof(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("internal", "*", "*.go"))
	if err != nil || len(files) < 100 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	found := 0
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			in := ""
			if f, ok := d.(*ast.FuncDecl); ok {
				in = f.Name.Name
			}
			ast.Inspect(d, func(n ast.Node) bool {
				var made ast.Expr
				switch n := n.(type) {
				case *ast.CompositeLit:
					if made = n.Type; len(n.Elts) == 0 && named(made) == "Reported" {
						return true // the zero value proves nothing
					}
				case *ast.CallExpr:
					if f, ok := n.Fun.(*ast.Ident); ok && f.Name == "new" && len(n.Args) == 1 {
						made = n.Args[0]
					}
				}
				if maker := makers[named(made)]; maker != "" {
					if found++; in != maker {
						t.Errorf("%s: %s makes %s; only %s may", path, in, named(made), maker)
					}
				}
				return true
			})
		}
	}
	if found != len(makers) {
		t.Errorf("%d makers were found, want %d", found, len(makers))
	}
}

// named returns the name of a type, without its package.
func named(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}
