package syntax

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/source"
)

// A slipFinder looks for the slip in a document that the library could not
// read. It goes over the lines as YAML does, knows keys, lists, quotes,
// brackets and block texts, and stops at the first slip that it knows. It runs
// on malformed documents only; what a good document means, the library says.
type slipFinder struct {
	*treeReader
	i      int     // start of the line it looks at
	levels []level // the mappings and lists that are open, outermost first
	awaits bool    // the last key or dash has its value on a line that follows
}

// A level is a mapping or a list written over lines.
type level struct {
	column int // of its keys or dashes, 0-based
	list   bool
}

func (s *slipFinder) top() level { return s.levels[len(s.levels)-1] }

func (s *slipFinder) slip(slug string, start, end int, fix, format string, args ...any) {
	s.fail(slug, source.Span{Start: start, End: min(max(start, end), s.span.End)}, fix, format, args...)
}

// find goes from line to line until a slip is reported.
func (s *slipFinder) find() {
	for s.i < s.span.End && !s.failed.Is() {
		at, ok := s.indent()
		if !ok {
			s.i = s.next(s.i)
			continue
		}
		if s.failed.Is() {
			return
		}
		s.line(at)
	}
}

// indent returns where the content of the line begins, false for a blank line
// and a comment. A tab before the content is a slip.
func (s *slipFinder) indent() (int, bool) {
	at := s.i
	for at < s.span.End && s.text[at] == ' ' {
		at++
	}
	end := s.lineEnd(s.i)
	if at >= end || s.text[at] == '#' || string(s.text[s.i:end]) == "---" {
		return at, false
	}
	if s.text[at] == '\t' {
		after := at
		for after < end && s.text[after] == '\t' {
			after++
		}
		if s.text[after] == '#' {
			return at, false
		}
		s.slip("yaml-tab", at, after, s.tabFix(at, after), "a tab stands before the text")
	}
	return at, true
}

// tabFix says what to do with the tabs from at to after: a key that can only
// be one of the outermost mapping needs none.
func (s *slipFinder) tabFix(at, after int) string {
	mappings := 0
	for _, l := range s.levels[1:] {
		if !l.list {
			mappings++
		}
	}
	nested := mappings > 1 || mappings == 1 && (s.awaits || s.levels[1].column > 0)
	switch {
	case nested || s.dash(after) || s.keyEnd(after) < 0:
		return "indent with blanks, two for each level"
	case at > s.i:
		return "take it away, and the blanks before it"
	}
	return "take it away"
}

// line reads one line that begins a list item or a key.
func (s *slipFinder) line(at int) {
	own := true // nothing stands before at in its line
	for s.dash(at) {
		if s.place(at, true); s.failed.Is() {
			return
		}
		s.awaits = true
		for at++; at < s.span.End && (s.text[at] == ' ' || s.text[at] == '\t'); at++ {
		}
		own = false
	}
	colon := s.keyEnd(at)
	switch {
	case s.end(at):
		s.i = s.next(at)
	case colon >= 0:
		if s.place(at, false); s.failed.Is() || s.begins(at) {
			return
		}
		if colon == at {
			s.noKeyWord(at)
			return
		}
		for colon++; colon < s.span.End && (s.text[colon] == ' ' || s.text[colon] == '\t'); colon++ {
		}
		s.value(colon, false)
	case s.awaits && (len(s.levels) > 1 || !own || strings.IndexByte("[{\"'", s.text[at]) >= 0):
		if own && at-s.i <= s.top().column {
			s.noKey(at)
			return
		}
		s.awaits = false
		s.value(at, own)
	default:
		s.noKey(at)
	}
}

// dash reports whether a list's dash stands at i.
func (s *slipFinder) dash(i int) bool {
	return i < s.span.End && s.text[i] == '-' && (i+1 == s.span.End || blank(s.text[i+1]))
}

// end reports whether nothing but a comment follows in the line of i.
func (s *slipFinder) end(i int) bool {
	return i >= s.lineEnd(min(i, s.span.End)) || s.text[i] == '#' && (i == s.span.Start || blank(s.text[i-1]))
}

// keyEnd returns the colon behind the key that begins at i, -1 without one.
func (s *slipFinder) keyEnd(i int) int {
	end := s.lineEnd(min(i, s.span.End))
	if i >= end || s.text[i] == '[' || s.text[i] == '{' {
		return -1
	}
	if c := s.text[i]; c == '"' || c == '\'' {
		i, _ = quoteEnd(s.text[:end], i)
		for i < end && blank(s.text[i]) {
			i++
		}
		if i < end && s.colon(i) {
			return i
		}
		return -1
	}
	for ; i < end; i++ {
		if s.colon(i) {
			return i
		}
		if s.text[i] == '#' && blank(s.text[i-1]) {
			break
		}
	}
	return -1
}

// colon reports whether a colon that parts key and value stands at i.
func (s *slipFinder) colon(i int) bool {
	return s.text[i] == ':' && (i+1 >= s.span.End || blank(s.text[i+1]))
}

// place opens, closes or goes on with the level to which a key or dash at
// belongs.
func (s *slipFinder) place(at int, list bool) {
	column := at - s.i
	top := s.top()
	if s.awaits && (column > top.column || list && column == top.column && !top.list) {
		s.awaits = false
		s.levels = append(s.levels, level{column, list})
		return
	}
	s.awaits = false
	if column > top.column {
		s.crooked(at, nil)
		return
	}
	all := s.levels
	for column < s.top().column {
		s.levels = s.levels[:len(s.levels)-1]
	}
	inner := all[len(s.levels):]
	if n := len(s.levels); n > 1 && s.top().list && !list && s.top().column == column && s.levels[n-2] == (level{column, false}) {
		s.levels = s.levels[:n-1] // a list as far left as its key
	}
	switch top = s.top(); {
	case top.column != column:
		s.crooked(at, inner)
	case top.list && !list:
		s.slip("yaml-indent", at, s.word(at).End, "write `- ` before it, or set it further left", "a key stands among the items of a list")
	case list && !top.list:
		s.slip("yaml-indent", at, at+1, "write its key on the line before the list", "an item of a list stands among keys")
	}
}

// crooked reports a line that begins in a column where no level does. Inner
// are the levels that it closed, outermost first. The fix names the columns
// on both sides in which a line of its kind, key or item, would stand right.
func (s *slipFinder) crooked(at int, inner []level) {
	list := s.dash(at)
	fits := func(l level) bool { return l.list == list && l.column >= 0 }
	var where []string
	for _, l := range slices.Backward(s.levels) {
		if fits(l) {
			where = append(where, fmt.Sprint(l.column+1))
			break
		}
	}
	if i := slices.IndexFunc(inner, fits); i >= 0 {
		where = append(where, fmt.Sprint(inner[i].column+1))
	}
	fix := "begin it in column " + strings.Join(where, " or ")
	switch {
	case len(where) == 0 && list:
		fix = "write its key on the line before the list"
	case len(where) == 0:
		fix = "begin it as far left as the keys that it belongs with"
	}
	s.slip("yaml-indent", at, s.word(at).End, fix, "this line begins in column %d, where nothing above it does", at-s.i+1)
}

// noKey reports a line that should have a key and has none.
func (s *slipFinder) noKey(at int) {
	if !s.begins(at) && !s.glued(source.Span{Start: at, End: s.lineEnd(at)}) {
		s.slip("yaml-malformed", at, s.lineEnd(at), "write `key: value`, a blank behind the colon", "this line has no key")
	}
}

var blockHeader = regexp.MustCompile(`^[|>]([-+]?[1-9]?|[1-9][-+])[ \t]*(#.*)?$`)

// value reads the value that begins at. Own tells that its line holds nothing
// before it.
func (s *slipFinder) value(at int, own bool) {
	line := s.lineEnd(min(at, s.span.End))
	switch {
	case s.end(at):
		s.awaits = true
		s.i = s.next(at)
	case s.text[at] == '"' || s.text[at] == '\'':
		if end, ok := s.quoted(at); ok {
			s.behind(at, end)
		}
	case s.text[at] == '[' || s.text[at] == '{':
		if end, ok := s.brackets(at); ok {
			s.behind(at, end)
		}
	case blockHeader.Match(s.text[at:line]):
		s.i = s.next(blockEnd(s.text[:s.span.End], at, s.top().column))
	case s.dash(at):
		s.slip("yaml-malformed", at, at+1, "put each item on a line of its own, or quotes round a text that begins with `-`",
			"a list does not begin behind its key")
	case !s.begins(at):
		s.plain(at, own)
	}
}

// begins reports a character with which a text without quotes cannot begin.
func (s *slipFinder) begins(at int) bool {
	c := s.text[at]
	if strings.IndexByte("@`%*&!|>,]}", c) < 0 && !(c == '?' && at+1 < s.span.End && blank(s.text[at+1])) {
		return false
	}
	fix := "put quotes round the text"
	if c == '}' || c == ']' {
		fix = "take it out, or write the bracket that it closes"
	}
	s.slip("yaml-quote", at, at+1, fix, "a text without quotes cannot begin with `%c`", c)
	return true
}

// quoted reads a quoted text and returns its end.
func (s *slipFinder) quoted(at int) (int, bool) {
	end, closed := quoteEnd(s.text[:s.span.End], at)
	quote := s.text[at]
	if !closed {
		s.unclosed(at)
		return end, false
	}
	for i := at + 1; i < end-1 && quote == '"'; i++ {
		if s.text[i] != '\\' {
			continue
		}
		i++
		if strings.IndexByte("0abt\tnvfre \"/\\N_LPxuU\r\n", s.text[i]) < 0 {
			s.slip("yaml-quote", i-1, i+1, "write `\\\\` for the sign itself", "`\\%c` stands for nothing in double quotes", s.text[i])
			return end, false
		}
	}
	return end, true
}

func (s *slipFinder) unclosed(at int) {
	shut := map[byte]string{'"': `"`, '\'': "'", '[': "]", '{': "}"}[s.text[at]]
	s.slip("yaml-unclosed", at, at+1, "write `"+shut+"` where it ends", "this `%c` is not closed", s.text[at])
}

// behind looks at what follows a quote or bracket that was closed at end.
func (s *slipFinder) behind(at, end int) {
	i := end
	for i < s.span.End && (s.text[i] == ' ' || s.text[i] == '\t') {
		i++
	}
	switch quoted := s.text[at] == '"' || s.text[at] == '\''; {
	case s.end(i):
		s.i = s.next(i)
	case quoted && bytes.IndexByte(s.text[at:end], '\n') >= 0:
		s.unclosed(at) // it ran on to the quote that opens another text
	case quoted:
		s.slip("yaml-quote", i, s.lineEnd(i), "put the quotes round all of it; a quote inside single quotes is written twice",
			"text stands behind the closing quote")
	case s.text[i] == ']' || s.text[i] == '}':
		s.slip("yaml-quote", i, i+1, "take it out", "this `%c` closes nothing", s.text[i])
	default:
		s.slip("yaml-quote", i, s.lineEnd(i), "put quotes round all of it", "text stands behind the closing bracket")
	}
}

// plain reads a text without quotes and the lines on which it goes on.
func (s *slipFinder) plain(at int, own bool) {
	column, ended := at-s.i, false
	first := s.i
	for i := at; ; {
		if colon := s.keyEnd(i); colon >= 0 {
			key := s.text[i:colon]
			switch {
			case i == at:
				s.slip("yaml-colon", colon, colon+1, "put quotes round the text", "a colon and a blank stand in a text without quotes")
			case own && i-s.i == column:
				s.i = first
				s.noKey(at)
			case s.dash(i):
				s.crooked(i, nil)
			case bytes.IndexByte(key, ' ') < 0:
				s.crooked(i, nil)
			default:
				s.slip("yaml-colon", colon, colon+1, "put quotes round the text", "a colon and a blank stand in a text without quotes")
			}
			return
		}
		if ended {
			s.crooked(i, nil)
			return
		}
		ended = bytes.Contains(s.text[i:s.lineEnd(i)], []byte(" #"))
		for s.i = s.next(i); s.i < s.span.End; s.i = s.next(s.i) {
			var ok bool
			if i, ok = s.indent(); s.failed.Is() {
				return
			} else if ok {
				break
			} else if i < s.lineEnd(s.i) {
				ended = true // by a comment
			}
		}
		if s.i >= s.span.End || i-s.i <= s.top().column {
			return
		}
	}
}
