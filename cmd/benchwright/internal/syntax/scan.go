package syntax

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/source"
)

// A slipFinder finds the slip in a document that the YAML library could not
// parse. It scans the lines for keys, lists, quotes, brackets and block
// scalars, and stops at the first slip it recognizes. It runs on malformed
// documents only.
type slipFinder struct {
	*treeReader
	lineStart   int     // offset of the line being scanned
	levels      []level // the open mappings and lists, outermost first
	awaitsValue bool    // the last key or dash has its value on a later line
}

// A level is a block mapping or a block list.
type level struct {
	column int // of its keys or dashes, 0-based
	list   bool
}

func (s *slipFinder) top() level { return s.levels[len(s.levels)-1] }

func (s *slipFinder) slip(slug string, start, end int, fix, format string, args ...any) {
	s.fail(slug, source.Span{Start: start, End: min(max(start, end), s.span.End)}, fix, format, args...)
}

// find scans line by line until a slip is reported.
func (s *slipFinder) find() {
	for s.lineStart < s.span.End && !s.failed.IsSet() {
		at, ok := s.indent()
		if !ok {
			s.lineStart = s.next(s.lineStart)
			continue
		}
		if s.failed.IsSet() {
			return
		}
		s.line(at)
	}
}

// indent returns the offset of the line's content, and false for a blank line
// or a comment. A tab before the content is a slip.
func (s *slipFinder) indent() (int, bool) {
	at := s.lineStart
	for at < s.span.End && s.text[at] == ' ' {
		at++
	}
	end := s.lineEnd(s.lineStart)
	if at >= end || s.text[at] == '#' || string(s.text[s.lineStart:end]) == "---" {
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
		s.slip("yaml-tab", at, after, s.tabFix(at, after), "there is a tab before the text")
	}
	return at, true
}

// tabFix returns the fix for the tabs from at to after. A key that can only
// belong to the outermost mapping needs no indent.
func (s *slipFinder) tabFix(at, after int) string {
	mappings := 0
	for _, l := range s.levels[1:] {
		if !l.list {
			mappings++
		}
	}
	nested := mappings > 1 || mappings == 1 && (s.awaitsValue || s.levels[1].column > 0)
	switch {
	case nested || s.dash(after) || s.keyEnd(after) < 0:
		return "indent with spaces, two for each level"
	case at > s.lineStart:
		return "delete it and the spaces before it"
	}
	return "delete it"
}

// line scans a line that begins a list item or a key.
func (s *slipFinder) line(at int) {
	firstOnLine := true // nothing but blanks precedes at on its line
	for s.dash(at) {
		if s.openLevel(at, true); s.failed.IsSet() {
			return
		}
		s.awaitsValue = true
		for at++; at < s.span.End && (s.text[at] == ' ' || s.text[at] == '\t'); at++ {
		}
		firstOnLine = false
	}
	colon := s.keyEnd(at)
	switch {
	case s.onlyComment(at):
		s.lineStart = s.next(at)
	case colon >= 0:
		if s.openLevel(at, false); s.failed.IsSet() || s.reservedStart(at) {
			return
		}
		if colon == at {
			s.missingKey(at)
			return
		}
		for colon++; colon < s.span.End && (s.text[colon] == ' ' || s.text[colon] == '\t'); colon++ {
		}
		s.value(colon, false)
	case s.awaitsValue && (len(s.levels) > 1 || !firstOnLine || strings.IndexByte("[{\"'", s.text[at]) >= 0):
		if firstOnLine && at-s.lineStart <= s.top().column {
			s.noKey(at)
			return
		}
		s.awaitsValue = false
		s.value(at, firstOnLine)
	default:
		s.noKey(at)
	}
}

// dash reports whether a list item's dash is at i.
func (s *slipFinder) dash(i int) bool {
	return i < s.span.End && s.text[i] == '-' && (i+1 == s.span.End || blank(s.text[i+1]))
}

// onlyComment reports whether nothing or only a comment follows i on its line.
func (s *slipFinder) onlyComment(i int) bool {
	return i >= s.lineEnd(min(i, s.span.End)) || s.text[i] == '#' && (i == s.span.Start || blank(s.text[i-1]))
}

// keyEnd returns the offset of the colon behind the key that begins at i, -1
// if no key begins there.
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

// colon reports whether a colon that separates key and value is at i.
func (s *slipFinder) colon(i int) bool {
	return s.text[i] == ':' && (i+1 >= s.span.End || blank(s.text[i+1]))
}

// openLevel opens, closes or continues the level of the key or dash at offset
// at.
func (s *slipFinder) openLevel(at int, list bool) {
	column := at - s.lineStart
	top := s.top()
	if s.awaitsValue && (column > top.column || list && column == top.column && !top.list) {
		s.awaitsValue = false
		s.levels = append(s.levels, level{column, list})
		return
	}
	s.awaitsValue = false
	if column > top.column {
		s.misaligned(at, nil)
		return
	}
	all := s.levels
	for column < s.top().column {
		s.levels = s.levels[:len(s.levels)-1]
	}
	inner := all[len(s.levels):]
	if n := len(s.levels); n > 1 && s.top().list && !list && s.top().column == column && s.levels[n-2] == (level{column, false}) {
		s.levels = s.levels[:n-1] // the list is no further indented than its key
	}
	switch top = s.top(); {
	case top.column != column:
		s.misaligned(at, inner)
	case top.list && !list:
		s.slip("yaml-indent", at, s.word(at).End, "write `- ` before it, or set it further left", "there is a key among the items of a list")
	case list && !top.list:
		s.slip("yaml-indent", at, at+1, "write its key on the line before the list", "there is a list item among keys")
	}
}

// misaligned reports a line that begins in a column of no open level. Inner
// are the levels that it closed, outermost first. The fix names the nearest
// columns on both sides that fit a line of its kind, key or item.
func (s *slipFinder) misaligned(at int, inner []level) {
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
	s.slip("yaml-indent", at, s.word(at).End, fix, "this line begins in column %d, where nothing above it does", at-s.lineStart+1)
}

// noKey reports a line that should have a key but has none.
func (s *slipFinder) noKey(at int) {
	if !s.reservedStart(at) && !s.glued(source.Span{Start: at, End: s.lineEnd(at)}) {
		s.slip("yaml-malformed", at, s.lineEnd(at), "write `key: value`, with a space after the colon", "this line has no key")
	}
}

var blockHeader = regexp.MustCompile(`^[|>]([-+]?[1-9]?|[1-9][-+])[ \t]*(#.*)?$`)

// value scans the value that begins at offset at. FirstOnLine tells that
// nothing precedes it on its line.
func (s *slipFinder) value(at int, firstOnLine bool) {
	line := s.lineEnd(min(at, s.span.End))
	switch {
	case s.onlyComment(at):
		s.awaitsValue = true
		s.lineStart = s.next(at)
	case s.text[at] == '"' || s.text[at] == '\'':
		if end, ok := s.quoted(at); ok {
			s.afterValue(at, end)
		}
	case s.text[at] == '[' || s.text[at] == '{':
		if end, ok := s.brackets(at); ok {
			s.afterValue(at, end)
		}
	case blockHeader.Match(s.text[at:line]):
		s.lineStart = s.next(blockEnd(s.text[:s.span.End], at, s.top().column))
	case s.dash(at):
		s.slip("yaml-malformed", at, at+1, "put each item on a line of its own, or quotes around a text that begins with `-`",
			"a list does not begin on the line of its key")
	case !s.reservedStart(at):
		s.plain(at, firstOnLine)
	}
}

// reservedStart reports a character that cannot begin an unquoted text.
func (s *slipFinder) reservedStart(at int) bool {
	c := s.text[at]
	if strings.IndexByte("@`%*&!|>,]}", c) < 0 && !(c == '?' && at+1 < s.span.End && blank(s.text[at+1])) {
		return false
	}
	fix := "put quotes around the text"
	if c == '}' || c == ']' {
		fix = "take it out, or write the bracket that it closes"
	}
	s.slip("yaml-quote", at, at+1, fix, "a text without quotes cannot begin with `%c`", c)
	return true
}

// quoted scans a quoted text. It returns the offset behind it, and false when
// it reported a slip.
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
	closer := map[byte]string{'"': `"`, '\'': "'", '[': "]", '{': "}"}[s.text[at]]
	s.slip("yaml-unclosed", at, at+1, "write `"+closer+"` where it ends", "this `%c` is not closed", s.text[at])
}

// afterValue checks what follows a quoted or bracketed value that ends at end.
func (s *slipFinder) afterValue(at, end int) {
	i := end
	for i < s.span.End && (s.text[i] == ' ' || s.text[i] == '\t') {
		i++
	}
	switch quoted := s.text[at] == '"' || s.text[at] == '\''; {
	case s.onlyComment(i):
		s.lineStart = s.next(i)
	case quoted && bytes.IndexByte(s.text[at:end], '\n') >= 0:
		s.unclosed(at) // it ran on to the opening quote of a later text
	case quoted:
		s.slip("yaml-quote", i, s.lineEnd(i), "put the quotes around all of it; a quote inside single quotes is written twice",
			"there is text after the closing quote")
	case s.text[i] == ']' || s.text[i] == '}':
		s.slip("yaml-quote", i, i+1, "take it out", "this `%c` closes nothing", s.text[i])
	default:
		s.slip("yaml-quote", i, s.lineEnd(i), "put quotes around all of it", "there is text after the closing bracket")
	}
}

// plain scans an unquoted text and its continuation lines.
func (s *slipFinder) plain(at int, firstOnLine bool) {
	column, ended := at-s.lineStart, false
	first := s.lineStart
	for i := at; ; {
		if colon := s.keyEnd(i); colon >= 0 {
			key := s.text[i:colon]
			switch {
			case i == at:
				s.slip("yaml-colon", colon, colon+1, "put quotes around the text", "a colon and a space are in a text without quotes")
			case firstOnLine && i-s.lineStart == column:
				s.lineStart = first
				s.noKey(at)
			case s.dash(i):
				s.misaligned(i, nil)
			case bytes.IndexByte(key, ' ') < 0:
				s.misaligned(i, nil)
			default:
				s.slip("yaml-colon", colon, colon+1, "put quotes around the text", "a colon and a space are in a text without quotes")
			}
			return
		}
		if ended {
			s.misaligned(i, nil)
			return
		}
		ended = bytes.Contains(s.text[i:s.lineEnd(i)], []byte(" #"))
		for s.lineStart = s.next(i); s.lineStart < s.span.End; s.lineStart = s.next(s.lineStart) {
			var ok bool
			if i, ok = s.indent(); s.failed.IsSet() {
				return
			} else if ok {
				break
			} else if i < s.lineEnd(s.lineStart) {
				ended = true // a comment ends the text
			}
		}
		if s.lineStart >= s.span.End || i-s.lineStart <= s.top().column {
			return
		}
	}
}
