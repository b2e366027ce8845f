package compile

import (
	"crypto/sha256"
	"reflect"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/workspace"
)

// rests returns digests of all the files that the cards of a procedure are made
// from, by name: its own, the unit's and the shop's, its pictures, and the
// procedures that it names. Two sides on which they are the same have the same
// cards.
func (lib *library) rests(f *procedureFile) map[string]string {
	out := map[string]string{}
	add := func(f *source.File) {
		if f != nil {
			sum := sha256.Sum256(f.Text)
			out[f.Name] = string(sum[:])
		}
	}
	add(f.File)
	add(f.Unit)
	add(lib.workspace.Shop)
	other := func(p *procedure.Procedure) {
		if p != nil {
			add(p.File)
		}
	}
	p := f.procedure
	for _, n := range slices.Concat(p.After, []procedure.Named{p.Reverses}) {
		other(lib.cards.ByNumber(n.Name))
	}
	links, pictures := names(p)
	for _, link := range links {
		path, _, _ := strings.Cut(link, "#")
		if name, err := workspace.Resolve(f.File.Name, path); err == nil && path != "" {
			other(lib.cards.ByFile(name))
		}
	}
	for _, path := range pictures {
		if name, data, err := lib.picture(f.File, path); err == nil {
			sum := sha256.Sum256(data)
			out[name] = string(sum[:])
		}
	}
	return out
}

// names returns the links of a procedure's text and the paths of its pictures.
func names(p *procedure.Procedure) (links, pictures []string) {
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch x := v.Interface().(type) {
		case syntax.Run:
			if x.Link != "" {
				links = append(links, x.Link)
			}
			return
		case *syntax.Picture:
			pictures = append(pictures, x.Path)
			return
		case *syntax.Block, source.Span, syntax.Style:
			return
		}
		switch v.Kind() {
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() {
				walk(v.Elem())
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					walk(v.Field(i))
				}
			}
		}
	}
	if p.Doc != nil {
		walk(reflect.ValueOf(p.Doc.Lead))
		walk(reflect.ValueOf(p.Doc.Stages))
	}
	items := p.Lead
	for _, st := range p.Stages {
		items = append(items[:len(items):len(items)], st.Items...)
		for _, s := range st.Steps {
			items = append(items, s.Items...)
		}
	}
	for _, i := range items {
		if figure, ok := i.(*procedure.Figure); ok {
			pictures = append(pictures, figure.Image.Name)
		}
	}
	return links, pictures
}
