package schema

import (
	"slices"
	"strings"
)

// unknownKeys reports each key that the value's schema does not have.
func (f finding) unknownKeys() {
	known := f.candidates()
	here, _ := f.value.(object)
	free := slices.DeleteFunc(slices.Clone(known), func(k string) bool { _, there := here[k]; return there })
	slices.Sort(free)
	key, lack := f.orphan()
	for _, k := range f.strangers() {
		fix := "leave it out"
		near := f.nearest(k, known)
		switch {
		case k == key:
			fix = "write `" + lack + "`, which must be there, if that is meant; else leave it out, and add `" + lack + ":`"
		case near == "" && f.outer(k):
			fix = "write it on a line of its own, beside `" + f.path[0] + ":`"
		case near == "" && len(f.inner(k)) > 0:
			fix = "write it inside the braces of " + join(ticked(f.inner(k)), "or")
		case slices.Contains(free, near):
			fix = "write `" + near + "`"
		case near != "":
			fix = "leave it out: `" + near + "` is there already"
		case here[k] == nil:
			// As a text with a comma falls apart within braces.
			fix = "if a comma cut it off a text, put quotes around the whole text; else leave it out"
		case len(free) > 0:
			fix += ", or write " + join(ticked(free), "or")
		}
		f.reportKey(k, KeyUnknown, fix, "%s has no key `%s`", f.title(), quote(k))
	}
}

// orphan returns the one key of the value that nothing is known of, and the one
// key that must be there and is not: most likely it is meant by it, in other
// words. Both are "" where there is more of either.
func (f finding) orphan() (key, lack string) {
	known := f.candidates()
	for _, k := range f.strangers() {
		if f.nearest(k, known) != "" || f.outer(k) || len(f.inner(k)) > 0 {
			continue
		}
		if key != "" {
			return "", ""
		}
		key = k
	}
	here, _ := f.value.(object)
	var lacks []string
	for _, s := range f.scopes {
		if s.depth != len(f.path) {
			continue
		}
		lacks = append(lacks, words(s.schema["required"])...)
		mates, _ := s.schema["dependentRequired"].(object)
		for k, names := range mates {
			if _, there := here[k]; there {
				lacks = append(lacks, words(names)...)
			}
		}
	}
	lacks = f.lacking(lacks)
	slices.Sort(lacks)
	if lacks = slices.Compact(lacks); key == "" || len(lacks) != 1 || here[key] == nil {
		return "", ""
	}
	return key, lacks[0]
}

// outer reports whether a key that stands too far in belongs to the block itself,
// which does not have it.
func (f finding) outer(key string) bool {
	root, _ := f.root.(object)
	_, there := root[key]
	return len(f.path) == 1 && !there && lookup(f.doc.raw, []string{"properties", key}) != nil
}

// inner returns the keys of the value that take such a key inside, sorted.
func (f finding) inner(key string) []string {
	if len(f.path) > 0 {
		return nil
	}
	here, _ := f.value.(object)
	var out []string
	for k, p := range f.known() {
		schema, _ := p.(object)
		if ref, ok := schema["$ref"].(string); ok {
			schema, _ = lookup(f.doc.raw, tokens(strings.TrimPrefix(ref, "#"))).(object)
		}
		if _, is := here[k].(object); is && lookup(schema, []string{"properties", key}) != nil {
			out = append(out, k)
		}
	}
	slices.Sort(out)
	return out
}

// candidates returns the keys that the value may have, those first that a
// misspelled key most likely stands for: required and not there, then not there.
func (f finding) candidates() []string {
	here, _ := f.value.(object)
	required := map[string]bool{}
	for _, s := range f.scopes {
		if s.depth == len(f.path) {
			for _, k := range words(s.schema["required"]) {
				required[k] = true
			}
		}
	}
	rank := func(k string) int {
		_, there := here[k]
		switch {
		case there:
			return 2
		case required[k]:
			return 0
		}
		return 1
	}
	out := keys(f.known())
	slices.SortStableFunc(out, func(a, b string) int { return rank(a) - rank(b) })
	return out
}

// strangers returns the value's keys that no schema on the way to the
// keyword knows, sorted.
func (f finding) strangers() []string {
	known := f.known()
	var out []string
	for _, k := range keys(f.value) {
		if known[k] == nil {
			out = append(out, k)
		}
	}
	return out
}

// known returns the keys that the value may have.
func (f finding) known() object {
	for _, s := range slices.Backward(f.scopes) {
		if p, ok := s.schema["properties"].(object); ok && s.depth == len(f.path) && s.schema["additionalProperties"] == false {
			return p
		}
	}
	return nil
}

// lacking returns those of names that the value does not have and that no
// misspelled key of it stands for.
func (f finding) lacking(names []string) []string {
	here, _ := f.value.(object)
	meant := map[string]bool{}
	all := f.candidates()
	for _, k := range f.strangers() {
		meant[f.nearest(k, all)] = true
	}
	var out []string
	for _, n := range names {
		if _, there := here[n]; !there && !meant[n] {
			out = append(out, n)
		}
	}
	return out
}

// missing reports the required keys that are not there, all in one sentence.
func (f finding) missing(required any) {
	root, _ := f.root.(object)
	names := slices.DeleteFunc(f.lacking(words(required)), func(n string) bool {
		_, there := root[n] // too far out, where it is not known
		return there && len(f.path) == 1 && lookup(f.doc.raw, []string{"properties", n}) == nil
	})
	if _, lack := f.orphan(); len(names) == 0 || len(names) == 1 && names[0] == lack {
		return
	}
	f.report(KeyMissing, f.wanted(names, ""), "%s needs %s", f.title(), join(ticked(names), "and"))
}

// besides reports keys that another key calls for.
func (f finding) besides(location string) {
	path := tokens(location)
	if len(path) < 2 {
		return
	}
	key := path[len(path)-2]
	names := f.lacking(words(lookup(f.schema, []string{"dependentRequired", key})))
	if _, lack := f.orphan(); len(names) == 0 || len(names) == 1 && names[0] == lack {
		return
	}
	f.reportKey(key, KeyMissing, f.wanted(names, " beside it"), "`%s` stands without %s", key, join(ticked(names), "and"))
}

// noneOf reports that none of several keys is there.
func (f finding) noneOf() {
	var names []string
	branches, _ := f.schema["anyOf"].([]any)
	for _, b := range branches {
		names = append(names, words(lookup(b, []string{"required"}))...)
	}
	if len(f.lacking(names)) < len(names) {
		return
	}
	// A key that is there without its mate is one slip with its own message.
	here, _ := f.value.(object)
	for key, mates := range f.dependent() {
		if _, there := here[key]; there && slices.ContainsFunc(words(mates), func(m string) bool { return slices.Contains(names, m) }) {
			return
		}
	}
	f.report(KeyMissing, f.wanted(names[:1], ""), "%s needs one of %s", f.title(), list(names))
}

func (f finding) dependent() object {
	d, _ := f.schema["dependentRequired"].(object)
	return d
}

// wanted returns the fix that adds keys to the value, with an example of each
// as such: the writer knows the value, the example does not. Where it could be
// taken for the value the fix says what to do instead.
func (f finding) wanted(names []string, where string) string {
	var add, examples, fixes []string
	for _, n := range names {
		add = append(add, "`"+n+":`")
		if fix, ok := lookup(f.known(), []string{n, "x-fix"}).(string); ok {
			if !slices.Contains(fixes, fix) {
				fixes = append(fixes, fix)
			}
			continue
		}
		if e, _ := lookup(f.known(), []string{n, "examples"}).([]any); len(e) > 0 {
			examples = append(examples, "`"+n+": "+flow(e[0], false)+"`")
		}
	}
	fix := "add " + join(add, "and") + where
	if len(examples) > 0 {
		fix += ", for example " + join(examples, "and")
	}
	for _, fix := range fixes {
		fix += "; " + fix
	}
	return fix
}
