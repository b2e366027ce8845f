package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/santhosh-tekuri/jsonschema/v5"
)

// commands are what scripts need beyond testscript's own.
var commands = map[string]func(ts *testscript.TestScript, neg bool, args []string){
	// huge FILE MB makes a file of that many megabytes.
	"huge": func(ts *testscript.TestScript, neg bool, args []string) {
		var mb int
		fmt.Sscan(args[1], &mb)
		f, err := os.Create(ts.MkAbs(args[0]))
		ts.Check(err)
		ts.Check(f.Truncate(int64(mb) << 20))
		ts.Check(f.Close())
	},
	// repeat FILE TIMES HEAD LINES appends LINES so many times after HEAD, %d
	// counting; \n ends a line.
	"repeat": func(ts *testscript.TestScript, neg bool, args []string) {
		var times int
		fmt.Sscan(args[1], &times)
		unquote := func(s string) string { return strings.ReplaceAll(s, `\n`, "\n") }
		var b bytes.Buffer
		b.WriteString(unquote(args[2]))
		for i := range times {
			b.WriteString(strings.ReplaceAll(unquote(args[3]), "%d", fmt.Sprint(i)))
		}
		ts.Check(os.WriteFile(ts.MkAbs(args[0]), b.Bytes(), 0o666))
	},
	// change FILE OLD NEW replaces a text that stands in the file exactly once.
	"change": func(ts *testscript.TestScript, neg bool, args []string) {
		text := ts.ReadFile(args[0])
		if n := strings.Count(text, args[1]); n != 1 {
			ts.Fatalf("%q stands %d times in %s", args[1], n, args[0])
		}
		ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Replace(text, args[1], args[2], 1)), 0o666))
	},
	// bytes FILE TEXT… writes a file of Go-quoted text: control and invalid bytes.
	"bytes": func(ts *testscript.TestScript, neg bool, args []string) {
		text, err := unquoteGo(args[1])
		ts.Check(err)
		ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), 0o666))
	},
	// valid SCHEMA FILE… asks that JSON files are as a JSON Schema says; ! valid
	// that none is.
	"valid": func(ts *testscript.TestScript, neg bool, args []string) {
		s, err := jsonschema.CompileString(args[0], ts.ReadFile(args[0]))
		ts.Check(err)
		for _, file := range args[1:] {
			var doc any
			ts.Check(json.Unmarshal([]byte(ts.ReadFile(file)), &doc))
			if err := s.Validate(doc); (err == nil) == neg {
				ts.Fatalf("%s by %s: valid %v: %#v", file, args[0], !neg, err)
			}
		}
	},
	// block INFO FILE writes the README's first block of a kind to a file.
	"block": func(ts *testscript.TestScript, neg bool, args []string) {
		text, err := os.ReadFile("../../README.md")
		ts.Check(err)
		ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(fences(string(text), args[0])[0]), 0o777))
	},
	// same A B compares two binary files; ! same asks that they differ.
	"same": func(ts *testscript.TestScript, neg bool, args []string) {
		a, err := os.ReadFile(ts.MkAbs(args[0]))
		ts.Check(err)
		b, err := os.ReadFile(ts.MkAbs(args[1]))
		ts.Check(err)
		if bytes.Equal(a, b) == neg {
			ts.Fatalf("%s and %s: same bytes %v", args[0], args[1], !neg)
		}
	},
}

func unquoteGo(s string) (string, error) {
	var out string
	_, err := fmt.Sscanf(`"`+s+`"`, "%q", &out)
	return out, err
}
