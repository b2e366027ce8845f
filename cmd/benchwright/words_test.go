package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
)

const wordsGolden = "../../testdata/words.txt"

// spoken are the files whose strings are printed as they stand, and what they
// are the words of.
var spoken = []struct{ of, files string }{
	{"the card", "internal/deck/*.go"},
	{"the card, as it is laid out", "../../render/words.go"},
	{"the callouts", "internal/hazard/table.go"},
	{"the symbols", "internal/hazard/symbol.go"},
	{"the program", "internal/cli/*.go"},
	{"the reports of changes", "internal/compare/[cstw]*.go"},
	{"the calculations", "internal/calc/*.go"},
}

// All fixed words stand in testdata/words.txt, each once, so that they can be
// read in one go: is this what a technician would say? What is put in stands in
// braces. UPDATE=1 rewrites the file.
func TestWords(t *testing.T) {
	var out strings.Builder
	for _, s := range spoken {
		fmt.Fprintf(&out, "Words of %s\n\n", s.of)
		files, err := filepath.Glob(s.files)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %d files, %v", s.files, len(files), err)
		}
		for _, file := range files {
			if !strings.HasSuffix(file, "_test.go") {
				once(&out, filepath.Base(file), phrases(t, file))
			}
		}
	}
	fmt.Fprint(&out, "Words of the schemas\n\n")
	files, err := filepath.Glob("../../schema/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d schemas, %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		once(&out, filepath.Base(file), descriptions(text))
	}
	want, err := os.ReadFile(wordsGolden)
	switch {
	case err == nil && string(want) == out.String():
	case os.Getenv("UPDATE") == "1":
		if err := os.WriteFile(wordsGolden, []byte(out.String()), 0o666); err != nil {
			t.Fatal(err)
		}
		t.Logf("rewrote %s", wordsGolden)
	case err != nil:
		t.Errorf("%v; UPDATE=1 writes it", err)
	default:
		t.Errorf("the words differ from %s: %s", wordsGolden, differs(string(want), out.String()))
	}
}

// once writes the phrases of a file, each once.
func once(out *strings.Builder, file string, phrases []string) {
	var seen []string
	for _, p := range phrases {
		p = strings.NewReplacer("\n", "⏎", "\u00a0", " ").Replace(p)
		if strings.IndexFunc(p, unicode.IsLetter) >= 0 && !notSaid.MatchString(p) && !slices.Contains(seen, p) {
			seen = append(seen, p)
		}
	}
	if len(seen) > 0 {
		fmt.Fprintf(out, "%s\n  %s\n\n", file, strings.Join(seen, "\n  "))
	}
}

var (
	wordNamed = regexp.MustCompile(`^word[A-Z]`)
	notSaid   = regexp.MustCompile(`^[A-Z][0-9]{3}$|%T`) // a symbol's code, a panic
)

// phrases returns what a Go file may say: its string expressions as they stand,
// but for single words that are no word… and begin small, which are keys.
func phrases(t *testing.T, path string) (out []string) {
	set := token.NewFileSet()
	f, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			out = append(out, inside(set, d.Body, wordNamed.MatchString(d.Name.Name))...)
		case *ast.GenDecl:
			for _, s := range d.Specs {
				if v, ok := s.(*ast.ValueSpec); ok {
					out = append(out, inside(set, v, wordNamed.MatchString(v.Names[0].Name))...)
				}
			}
		}
	}
	return out
}

// inside returns the phrases of a declaration, a statement or an expression. What
// a case asks for is none.
func inside(set *token.FileSet, n ast.Node, named bool) (out []string) {
	ast.Inspect(n, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CaseClause:
			for _, s := range n.Body {
				out = append(out, inside(set, s, named)...)
			}
			return false
		case *ast.BinaryExpr:
			if n.Op == token.ADD && literal(n) {
				out = append(out, written(set, n))
				return false
			}
			return n.Op == token.ADD || n.Op == token.LAND || n.Op == token.LOR
		case *ast.BasicLit:
			if s := written(set, n); n.Kind == token.STRING && (named || strings.ContainsAny(s, " ") || s != "" && unicode.IsUpper(rune(s[0]))) {
				out = append(out, s)
			}
		}
		return true
	})
	return out
}

// literal reports whether an expression joins a string that has a letter.
func literal(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.BinaryExpr:
		return literal(e.X) || literal(e.Y)
	case *ast.BasicLit:
		return e.Kind == token.STRING && strings.IndexFunc(e.Value, unicode.IsLetter) >= 0
	}
	return false
}

// written is a string expression as a reader sees it, what is put in in braces.
func written(set *token.FileSet, e ast.Expr) string {
	switch e := e.(type) {
	case *ast.BinaryExpr:
		return written(set, e.X) + written(set, e.Y)
	case *ast.BasicLit:
		if s, err := strconv.Unquote(e.Value); err == nil {
			return s
		}
	}
	var b bytes.Buffer
	printer.Fprint(&b, set, e)
	return "{" + b.String() + "}"
}

// descriptions returns the titles and descriptions of a schema, in its order.
func descriptions(text []byte) (out []string) {
	d := json.NewDecoder(bytes.NewReader(text))
	key := false
	for {
		tok, err := d.Token()
		if err != nil {
			return out
		}
		s, is := tok.(string)
		if key && is {
			out = append(out, s)
		}
		key = is && !key && slices.Contains([]string{"title", "description", "x-form", "x-fix"}, s)
	}
}
