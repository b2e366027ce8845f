package compare

import (
	"encoding/json"
	"io"
)

// Format names the form of the JSON document, which the schema changes describes.
// Fields may be added under it; none is taken away.
const Format = "benchwright-changes/1"

type jsonWhere struct {
	Step  int   `json:"step"`
	Pages []int `json:"pages"`
}

type jsonReach struct {
	Variant string    `json:"variant"`
	Old     jsonWhere `json:"old"`
	New     jsonWhere `json:"new"`
}

type jsonChange struct {
	Class   Class       `json:"class"`
	Title   string      `json:"title"`
	Place   string      `json:"place"`
	What    string      `json:"what"`
	Before  string      `json:"before"`
	After   string      `json:"after"`
	Note    string      `json:"note"`
	Causes  []string    `json:"causes"`
	Reaches []jsonReach `json:"reaches"`
}

type jsonSide struct {
	There  bool   `json:"there"`
	Errors int    `json:"errors"`
	First  string `json:"first"`
}

type jsonPages struct {
	Variants []string `json:"variants"`
	Of       int      `json:"of"`
	Pages    []int    `json:"pages"`
}

type jsonCard struct {
	Card     string       `json:"card"`
	Title    string       `json:"title"`
	File     string       `json:"file"`
	Variants []string     `json:"variants"`
	Causes   []string     `json:"causes"`
	Old      jsonSide     `json:"old"`
	New      jsonSide     `json:"new"`
	Changes  []jsonChange `json:"changes"`
	Print    []jsonPages  `json:"print"`
	Off      []jsonPages  `json:"off"`
	Strip    bool         `json:"strip"`
	Revised  bool         `json:"revised"`
}

// WriteJSON writes a report as one document. Every field is always there.
func (r *Report) WriteJSON(w io.Writer) error {
	doc := struct {
		Format string        `json:"format"`
		Counts map[Class]int `json:"counts"`
		Cards  []jsonCard    `json:"cards"`
	}{Format, map[Class]int{}, []jsonCard{}}
	for _, class := range Classes {
		doc.Counts[class] = r.Count(class)
	}
	for _, c := range r.Cards {
		j := jsonCard{Card: c.Number, Title: c.Title, File: c.File, Variants: some(c.Variants), Causes: some(c.Causes), Old: jsonSide(c.Old), New: jsonSide(c.New),
			Changes: []jsonChange{}, Print: pagesOf(c.Print), Off: pagesOf(c.Off), Strip: c.Strip, Revised: c.Revised}
		for _, x := range c.Changes {
			change := jsonChange{x.Class, x.Title, x.Place, x.What, x.Before, x.After, x.Note, some(x.Causes), []jsonReach{}}
			for _, r := range x.Reaches {
				change.Reaches = append(change.Reaches, jsonReach{r.Variant, jsonWhere{r.Old.Step, some(r.Old.Pages)}, jsonWhere{r.New.Step, some(r.New.Pages)}})
			}
			j.Changes = append(j.Changes, change)
		}
		doc.Cards = append(doc.Cards, j)
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(doc)
}

func pagesOf(all []Pages) []jsonPages {
	out := []jsonPages{}
	for _, p := range all {
		out = append(out, jsonPages{some(p.Variants), p.Of, some(p.Pages)})
	}
	return out
}

// some is a list that JSON writes as one, empty or not.
func some[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
