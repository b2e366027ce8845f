package syntax

import "bytes"

// brackets checks the { } or [ ] that begins at offset at. It returns the
// offset behind the closing bracket, and false when it reported a slip.
func (s *slipFinder) brackets(at int) (int, bool) {
	type bracket struct {
		at       int
		hasColon bool // the key of the current pair has its colon
	}
	var open []bracket
	mayBegin, ended := true, false // a value may begin here; a quoted or bracketed value has just ended
	for i := at; i < s.span.End; {
		c := s.text[i]
		top := len(open) - 1
		switch {
		case c == '\n':
			i++
			if s.leavesBrackets(i) {
				s.unclosed(open[top].at)
				return i, false
			}
		case blank(c):
			i++
		case c == '#' && blank(s.text[i-1]):
			end := s.lineEnd(i)
			if bytes.IndexByte(s.text[i:end], closingBracket(s.text[open[top].at])) >= 0 {
				s.slip("yaml-unclosed", i, end, "put quotes around the text", "YAML takes everything from ` #` on as a comment, the closing bracket with it")
				return i, false
			}
			i = end
		case c == ']' || c == '}':
			if c != closingBracket(s.text[open[top].at]) {
				s.slip("yaml-unclosed", i, i+1, "write `"+string(rune(closingBracket(s.text[open[top].at])))+"`",
					"`%c` does not close `%c`", c, s.text[open[top].at])
				return i, false
			}
			i++
			if open = open[:top]; top == 0 {
				return i, true
			}
			mayBegin, ended = false, true
		case c == ',':
			i++
			open[top].hasColon = false
			mayBegin, ended = true, false
		case c == ':' && (ended || i+1 >= s.span.End || blank(s.text[i+1]) || bytes.IndexByte([]byte(",[]{}"), s.text[i+1]) >= 0):
			if open[top].hasColon {
				s.slip("yaml-colon", i, i+1, "put quotes around the text, or a comma before the next key", "there is a second colon in one pair")
				return i, false
			}
			i++
			open[top].hasColon = true
			mayBegin, ended = true, false
		case ended:
			s.slip("yaml-malformed", i, s.word(i).End, "write a comma before it", "a comma is missing here")
			return i, false
		case c == '[' || c == '{':
			if !mayBegin {
				s.slip("yaml-quote", i, i+1, "put quotes around the text", "there is a bracket in a text without quotes")
				return i, false
			}
			open = append(open, bracket{at: i})
			if len(open) > maxDepth {
				s.tooDeep(i)
				return i, false
			}
			i++
		case mayBegin && (c == '"' || c == '\''):
			end, ok := s.quoted(i)
			if !ok {
				return i, false
			}
			i = end
			mayBegin, ended = false, true
		case mayBegin && s.reservedStart(i):
			return i, false
		default:
			mayBegin = false
			i++
		}
	}
	s.unclosed(open[len(open)-1].at)
	return s.span.End, false
}

// leavesBrackets reports whether the line that begins at i is a key or an item
// of an enclosing block level. If so, every bracket must have been closed
// before it.
func (s *slipFinder) leavesBrackets(i int) bool {
	at := i
	for at < s.span.End && s.text[at] == ' ' {
		at++
	}
	return at-i <= s.top().column && (s.keyEnd(at) >= 0 || s.dash(at))
}

// closingBracket returns the bracket that closes open.
func closingBracket(open byte) byte {
	if open == '[' {
		return ']'
	}
	return '}'
}
