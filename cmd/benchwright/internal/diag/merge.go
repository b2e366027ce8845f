package diag

import "strings"

// Merge adds the lists of several variants to l. A message common to all is
// added once; any other is added with the names of its variants.
func (l *List) Merge(variants []string, lists []*List) {
	type key struct {
		slug, message, file string
		start, end          int
	}
	keyOf := func(d Diagnostic) key { return key{d.Slug, d.Message, name(d.At), d.At.Span.Start, d.At.Span.End} }
	in := map[key][]string{}
	for i, list := range lists {
		for _, d := range list.Sorted() {
			in[keyOf(d)] = append(in[keyOf(d)], variants[i])
		}
	}
	for _, list := range lists {
		for _, d := range list.Sorted() {
			some, unsaid := in[keyOf(d)]
			if !unsaid {
				continue
			}
			delete(in, keyOf(d))
			if len(some) < len(lists) {
				d.Message += " in the " + strings.Join(some, " and ") + " variant"
				if len(some) > 1 {
					d.Message += "s"
				}
			}
			l.Add(d)
		}
	}
}
