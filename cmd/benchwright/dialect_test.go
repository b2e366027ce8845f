package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// british are spellings and words that American shop English does not have.
var british = regexp.MustCompile(`(?i)\b(` + strings.Join([]string{
	`anti-?clockwise`, `spanners?`, `(?:dis)?colour\w*`, `centres?`, `centred`, `\w*metres?`, `\w*litres?`, `grey\w*`, `vices?`,
	`aluminium`, `moulds?`, `tyres?`, `draughts?`, `neighbour\w*`, `behaviour\w*`, `favour\w*`, `fibres?`, `licence\w*`, `catalogues?`,
	`misspelt`, `learnt`, `burnt`, `spelt`, `towards`, `afterwards`, `whilst`, `judgement`, `labelled`, `levelled`, `cancelled`, `per cent`,
	`(?:recogni|organi|pressuri|standardi|normali|minimi|maximi|initiali|summari|reali|speciali)s(?:e|es|ed|ing)`, `analyse\w*`,
	`(?:capitali|emphasi|utili|seriali|visuali|rasteri|familiari)s(?:e|es|ed|ing)`, `modell(?:ed|ing)`, `travell(?:ed|ing|er)`, `artefacts?`, `programmes?`, `lads?`, `stores send`, `full stop`,
	`(?:all|way|once|go|goes|gone|reach|look) round`,
}, "|") + `)\b`)

// understood are the literals of the program that hold such a word because a
// writer, or the file of another program, may.
var understood = map[string]string{
	"hazard/words.go":     "words that a writer may use for a hazard",
	"quantity/units.go":   "names of units of measure that are read",
	"check/directions.go": "directions that a writer may state",
	"check/prose.go":      "verbs that a writer may use",
	"check/words.go":      "verbs that a writer may use",
	"calc/calc.go":        "what a tech may call a calculation",
	"svg/style.go":        "names of colors in SVG",
}

// Everything that a reader meets is in one dialect, for the wrenches, gauges and
// manuals of the trade mix ft-lb and N·m and leave no doubt about the rest.
func TestDialect(t *testing.T) {
	seen := 0
	check := func(where, text string) {
		seen++
		for i, line := range strings.Split(text, "\n") {
			if w := british.FindString(line); w != "" {
				t.Errorf("%s: line %d: %q in %q", where, i+1, w, line)
			}
		}
	}
	root := filepath.Join("..", "..")
	for _, folder := range []string{"README.md", "DEVELOPERS.md", "schema", "procedures", "render", "cmd"} {
		err := filepath.WalkDir(filepath.Join(root, folder), func(path string, e fs.DirEntry, err error) error {
			if err != nil || e.IsDir() {
				if e != nil && e.Name() == "testdata" {
					return filepath.SkipDir
				}
				return err
			}
			switch filepath.Ext(path) {
			case ".md", ".json", ".yaml":
				text, err := os.ReadFile(path)
				check(path, string(text))
				return err
			case ".go":
				for file := range understood {
					if strings.HasSuffix(filepath.ToSlash(path), file) {
						return nil
					}
				}
				said(t, path, check)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if seen < 1000 {
		t.Errorf("only %d texts were looked at", seen)
	}
}

// said calls do with every comment of a Go file and its place, and with every
// string of one that is no test.
func said(t *testing.T, path string, do func(where, text string)) {
	set := token.NewFileSet()
	f, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution|parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range f.Comments {
		do(set.Position(c.Pos()).String(), c.Text())
	}
	if strings.HasSuffix(path, "_test.go") {
		return
	}
	ast.Inspect(f, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
			if text, err := strconv.Unquote(l.Value); err == nil {
				do(set.Position(l.Pos()).String(), text)
			}
		}
		return true
	})
}

// The list finds what it is for, and leaves alone what only looks like it.
func TestBritish(t *testing.T) {
	for _, s := range []string{"Turn it anticlockwise.", "a 24 mm Spanner", "newton metres", "the vice", "colours", "50 per cent", "recognised"} {
		if !british.MatchString(s) {
			t.Errorf("%q passes", s)
		}
	}
	for _, s := range []string{"counterclockwise", "a service", "device", "parameters", "color", "the center", "advice", "a dial that is precise", "meters", "gray"} {
		if w := british.FindString(s); w != "" {
			t.Errorf("%q is refused for %q", s, w)
		}
	}
}
