package svg

import "strings"

// An element is a start tag, with where it stands in the file.
type element struct {
	name       string
	foreign    bool // of another namespace
	start, end int
	attributes []attribute
}

// An attribute is one of no namespace. Its value is unescaped; where that is as
// it was written, start is the offset of the value's first byte.
type attribute struct {
	name, value string
	start, end  int // of the value in the file, without its quotes
	exact       bool
}

// within returns the place of value[from:to].
func (a attribute) within(from, to int) (int, int) {
	if !a.exact || from >= to {
		return a.start, a.end
	}
	return a.start + from, a.start + to
}

// word returns the place of what stands at an offset of the value, up to the
// next space or comma.
func (a attribute) word(from int) (int, int) {
	rest := a.value[min(from, len(a.value)):]
	to := strings.IndexAny(rest, " ,\t\r\n")
	if to < 0 {
		to = len(rest)
	}
	return a.within(from, from+to)
}

func (e *element) get(name string) (attribute, bool) {
	for _, a := range e.attributes {
		if a.name == name {
			return a, true
		}
	}
	return attribute{}, false
}

// places finds the values of a start tag's attributes, in their order: tag is
// the text of the tag, which is well-formed, from its < on.
func places(tag string) (spans [][2]int) {
	for i := 0; ; {
		eq := strings.IndexByte(tag[i:], '=')
		if eq < 0 {
			return spans
		}
		i += eq + 1
		from := strings.IndexAny(tag[i:], `"'`)
		if from < 0 {
			return spans
		}
		from += i
		to := strings.IndexByte(tag[from+1:], tag[from])
		if to < 0 {
			return spans
		}
		to += from + 1
		spans = append(spans, [2]int{from + 1, to})
		i = to + 1
	}
}
