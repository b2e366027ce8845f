package syntax

import (
	"bytes"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// A headingParser parses # headings as goldmark does, and takes the {…} at
// their end off the title for docReader.attributes to parse. Goldmark's own
// attribute parser takes time quadratic in the line and reports neither
// positions nor errors.
type headingParser struct{ parser.BlockParser }

func newHeadingParser() parser.BlockParser { return headingParser{parser.NewATXHeadingParser()} }

var (
	attrATX    = []byte("atx")    // set on every # heading; absent on an underlined one
	attrBraces = []byte("braces") // the source.Span of its {…}
	attrGlued  = []byte("glued")  // set when no blank separates the # marks from the title
)

func (p headingParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	node, state := p.BlockParser.Open(parent, reader, pc)
	if node == nil {
		if node = glued(reader, pc); node == nil {
			return nil, state
		}
		node.SetAttribute(attrGlued, true)
	}
	node.SetAttribute(attrATX, true)
	lines := node.Lines()
	if lines.Len() == 0 {
		return node, state
	}
	line := lines.At(0)
	src := reader.Source()
	title := src[line.Start:line.Stop]
	if !bytes.HasSuffix(title, []byte("}")) || bytes.HasSuffix(title, []byte(`\}`)) {
		return node, state
	}
	open := bytes.LastIndexByte(title, '{')
	if open < 0 || open > 0 && title[open-1] == '\\' {
		return node, state
	}
	node.SetAttribute(attrBraces, source.Span{Start: line.Start + open, End: line.Stop})
	line.Stop = line.Start + len(bytes.TrimRight(title[:open], " \t"))
	lines.Set(0, line)
	return node, state
}

// glued parses a heading without a blank behind its marks, ###Check the belt,
// and returns nil for any other line. A single # may begin a text, as in "#3
// bolt".
func glued(reader text.Reader, pc parser.Context) ast.Node {
	line, segment := reader.PeekLine()
	pos := pc.BlockOffset()
	if pos < 0 || pos >= len(line) {
		return nil
	}
	title := bytes.TrimLeft(line[pos:], "#")
	level := len(line) - pos - len(title)
	if level < 2 || level > 6 || len(bytes.TrimSpace(title)) == 0 {
		return nil
	}
	node := ast.NewHeading(level)
	at := text.NewSegment(segment.Start+pos+level-segment.Padding, segment.Start+len(line)-segment.Padding)
	node.Lines().Append(at.TrimRightSpace(reader.Source()))
	reader.AdvanceToEOL()
	return node
}

// heading converts a heading's title and attributes.
func (r *docReader) heading(n *ast.Heading) Heading {
	h := Heading{Title: r.runs(n)}
	h.Text = plainText(h.Title)
	h.Span = r.lines(n)
	title := r.src[h.Span.Start:h.Span.End]
	if h.Text == "" {
		h.Span = r.span(n.Pos(), r.lineEnd(n.Pos()))
		r.badHeading("heading-empty", h.Span, "write a title behind the `#` marks", "this heading has no title")
	}
	open := max(bytes.LastIndex(title, []byte("{#")), bytes.LastIndex(title, []byte("{only")))
	braces, ok := n.Attribute(attrBraces)
	if ok && bytes.HasSuffix(title, []byte("}")) && open >= 0 {
		r.badHeading("heading-attributes", source.Span{Start: h.Span.Start + open, End: h.Span.End}, "write all in one pair of braces",
			"a heading has one pair of braces")
	} else if ok {
		r.attributes(&h, braces.(source.Span))
	} else if bytes.HasSuffix(title, []byte("}")) && !bytes.HasSuffix(title, []byte(`\}`)) {
		r.badHeading("heading-attributes", source.Span{Start: h.Span.End - 1, End: h.Span.End}, "write `{#id}`, or `\\}` for a brace in the title",
			"the heading ends in `}` that closes nothing")
	} else if open >= 0 && (open == 0 || title[open-1] != '\\') {
		r.badHeading("heading-attributes", source.Span{Start: h.Span.Start + open, End: h.Span.End}, "write `}` at its end",
			"the brace in this heading is not closed")
	}
	return h
}

// attributes parses {#id only="a b"} at the end of a heading, up to the first
// error, which it reports.
func (r *docReader) attributes(h *Heading, braces source.Span) {
	const form = "write `{#id}`, `{only=variant}` or `{#id only=\"one two\"}`"
	i, end := braces.Start+1, braces.End-1
	if len(bytes.TrimSpace(r.src[i:end])) == 0 {
		r.badHeading("heading-attributes", braces, form, "nothing stands between the braces")
		return
	}
	for {
		for i < end && blank(r.src[i]) {
			i++
		}
		if i >= end {
			return
		}
		start := i
		for i < end && !blank(r.src[i]) && r.src[i] != '=' {
			i++
		}
		name := string(r.src[start:i])
		word := source.Span{Start: start, End: i}
		switch {
		case strings.HasPrefix(name, "#") && (i >= end || r.src[i] != '='):
			id := source.Span{Start: start + 1, End: i}
			switch {
			case h.IDSpan != (source.Span{}):
				r.badHeading("heading-attributes", word, "keep one of the two", "the heading has a second id")
				return
			case !r.id(id):
				return
			}
			h.ID, h.IDSpan = name[1:], id
		case i < end && r.src[i] == '=' && name == "only" && h.Only == nil:
			value := source.Span{Start: i + 1, End: i + 1}
			if i++; i < end && r.src[i] == '"' {
				close := bytes.IndexByte(r.src[i+1:end], '"')
				if close < 0 {
					r.badHeading("heading-attributes", source.Span{Start: i, End: i + 1}, form, "the quote is not closed")
					return
				}
				value = source.Span{Start: i + 1, End: i + 1 + close}
				i = value.End + 1
			} else {
				for i < end && !blank(r.src[i]) {
					i++
				}
				value.End = i
			}
			if !r.only(h, value) {
				return
			}
		case i < end && r.src[i] == '=' && name == "only":
			r.badHeading("heading-attributes", word, "name all variants in one: `only=\"one two\"`", "`only` is written twice")
			return
		case i < end && r.src[i] == '=' && name == "id":
			r.badHeading("heading-attributes", word, "write `#` and the id", "an id is not written `id=`")
			return
		case i < end && r.src[i] == '=':
			fix := form
			if diag.Nearest(name, []string{"only"}) != "" {
				fix = "write `only`"
			}
			r.badHeading("heading-attributes", word, fix, "a heading has no attribute `%s`", name)
			return
		default:
			r.badHeading("heading-attributes", word, form, "`%s` is no attribute of a heading", name)
			return
		}
	}
}

// only parses the variants that a heading applies to. It returns false when it
// reported an error.
func (r *docReader) only(h *Heading, value source.Span) bool {
	i := value.Start
	for i < value.End {
		for i < value.End && (blank(r.src[i]) || r.src[i] == ',') {
			i++
		}
		start := i
		for i < value.End && !blank(r.src[i]) && r.src[i] != ',' {
			i++
		}
		if start == i {
			break
		}
		if !r.id(source.Span{Start: start, End: i}) {
			return false
		}
		h.Only = append(h.Only, string(r.src[start:i]))
	}
	h.OnlySpan = value
	if h.Only == nil {
		r.badHeading("heading-attributes", value, "name a variant, or leave `only` out", "`only` names no variant")
		return false
	}
	return true
}

// id reports whether the text at span at is a well-formed id, and reports an
// error if not.
func (r *docReader) id(at source.Span) bool {
	id := string(r.src[at.Start:at.End])
	switch {
	case id == "":
		at.Start--
		r.report("id-malformed", at, "write the id behind it, or take the braces away", "an id is missing behind `#`")
	case len([]rune(id)) > MaxID:
		r.report("id-malformed", at, "shorten it", "the id is longer than %d characters", MaxID)
	case !WellFormed(id):
		fix := "write lower-case letters and digits, words joined by `-`, a letter first"
		if fixed := MeantID(id); fixed != "" {
			fix = "write `" + fixed + "`"
		}
		r.report("id-malformed", at, fix, "`%s` is not an id", id)
	default:
		return true
	}
	return false
}
