// Package sarif writes a log of the Static Analysis Results Interchange Format,
// SARIF 2.1.0 (OASIS, with errata 01), which forges and editors read. It has the
// part of the standard that this program fills in, as plain data.
package sarif

import (
	"encoding/json"
	"io"
	"net/url"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/source"
)

const (
	version = "2.1.0"
	schema  = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)

// The levels of a result.
const (
	Error   = "error"
	Warning = "warning"
	Note    = "note"
)

// A Rule is what a result is an instance of.
type Rule struct {
	ID      string        `json:"id"`
	Short   Text          `json:"shortDescription"`
	Default Configuration `json:"defaultConfiguration"`
	Help    *Text         `json:"help,omitempty"`
}

// A Configuration holds the level of a rule.
type Configuration struct {
	Level string `json:"level"`
}

// A Text is a message, as plain text and perhaps as Markdown.
type Text struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown,omitempty"`
}

// A Result is one thing that was found.
type Result struct {
	Rule       string         `json:"ruleId"`
	Index      int            `json:"ruleIndex"`
	Level      string         `json:"level"`
	Message    Text           `json:"message"`
	Locations  []Location     `json:"locations"`
	Related    []Location     `json:"relatedLocations,omitempty"`
	Fixes      []Fix          `json:"fixes,omitempty"`
	Properties map[string]any `json:"properties,omitempty"`
}

// A Location is a place in a file, with what is to be said of it.
type Location struct {
	Physical Physical `json:"physicalLocation"`
	Message  *Text    `json:"message,omitempty"`
}

// A Physical is a file, and the part of it that is meant; all of it without a
// region.
type Physical struct {
	Artifact Artifact `json:"artifactLocation"`
	Region   *Region  `json:"region,omitempty"`
}

// An Artifact names a file by a URI, relative to the folder of the run.
type Artifact struct {
	URI string `json:"uri"`
}

// A Region is a part of a file. Lines and columns count from 1, the columns in
// code points; the end column is the one behind the last.
type Region struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

// A Fix is an edit that a program could make.
type Fix struct {
	Description Text     `json:"description"`
	Changes     []Change `json:"artifactChanges"`
}

// A Change is what a fix replaces in one file.
type Change struct {
	Artifact     Artifact      `json:"artifactLocation"`
	Replacements []Replacement `json:"replacements"`
}

// A Replacement puts a text in the place of a region.
type Replacement struct {
	Deleted  Region `json:"deletedRegion"`
	Inserted Text   `json:"insertedContent"`
}

// A Log is what one run of this program found.
type Log struct {
	Version string // of this program
	Rules   []Rule // that results name
	Results []Result
}

// Write writes the log as one JSON document. It gives each result the index of
// its rule.
func (l Log) Write(w io.Writer) error {
	type driver struct {
		Name    string `json:"name"`
		Version string `json:"semanticVersion"`
		Rules   []Rule `json:"rules"`
	}
	type tool struct {
		Driver driver `json:"driver"`
	}
	type run struct {
		Tool    tool     `json:"tool"`
		Columns string   `json:"columnKind"`
		Results []Result `json:"results"`
	}
	doc := struct {
		Schema  string `json:"$schema"`
		Version string `json:"version"`
		Runs    []run  `json:"runs"`
	}{schema, version, []run{{tool{driver{"benchwright", l.Version, append([]Rule{}, l.Rules...)}}, "unicodeCodePoints", append([]Result{}, l.Results...)}}}
	for i, r := range doc.Runs[0].Results {
		doc.Runs[0].Results[i].Index = slices.IndexFunc(l.Rules, func(rule Rule) bool { return rule.ID == r.Rule })
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(doc)
}

// braces are doubled in a message, where a single one would begin a placeholder.
var braces = strings.NewReplacer("{", "{{", "}", "}}")

// Say returns a plain text as a message.
func Say(text string) Text { return Text{Text: braces.Replace(text)} }

// File names a file by its slash-separated path from the folder of the run.
func File(path string) Artifact { return Artifact{(&url.URL{Path: path}).String()} }

// At returns the region of a place; nil for the zero place and for a file
// without text, where there is no line to point at.
func At(p source.Place) *Region {
	if p.File == nil || len(p.File.Text) == 0 {
		return nil
	}
	from, to := p.File.Position(p.Span.Start), p.File.Position(p.Span.End)
	return &Region{from.Line, from.Column, to.Line, to.Column}
}
