package syntax

import "bytes"

// brackets goes through the { } or [ ] that begins at and returns its end.
func (s *slipFinder) brackets(at int) (int, bool) {
	type bracket struct {
		at    int
		colon bool // the pair it is in has its colon
	}
	var open []bracket
	fresh, done := true, false // a value may begin here; a value in quotes or brackets has ended
	for i := at; i < s.span.End; {
		c := s.text[i]
		top := len(open) - 1
		switch {
		case c == '\n':
			i++
			if s.leaves(i) {
				s.unclosed(open[top].at)
				return i, false
			}
		case blank(c):
			i++
		case c == '#' && blank(s.text[i-1]):
			end := s.lineEnd(i)
			if bytes.IndexByte(s.text[i:end], shutter(s.text[open[top].at])) >= 0 {
				s.slip("yaml-unclosed", i, end, "put quotes round the text", "YAML takes everything from ` #` on as a comment, the closing bracket with it")
				return i, false
			}
			i = end
		case c == ']' || c == '}':
			if c != shutter(s.text[open[top].at]) {
				s.slip("yaml-unclosed", i, i+1, "write `"+string(rune(shutter(s.text[open[top].at])))+"`",
					"`%c` does not close `%c`", c, s.text[open[top].at])
				return i, false
			}
			i++
			if open = open[:top]; top == 0 {
				return i, true
			}
			fresh, done = false, true
		case c == ',':
			i++
			open[top].colon = false
			fresh, done = true, false
		case c == ':' && (done || i+1 >= s.span.End || blank(s.text[i+1]) || bytes.IndexByte([]byte(",[]{}"), s.text[i+1]) >= 0):
			if open[top].colon {
				s.slip("yaml-colon", i, i+1, "put quotes round the text, or a comma before the next key", "a second colon stands in one pair")
				return i, false
			}
			i++
			open[top].colon = true
			fresh, done = true, false
		case done:
			s.slip("yaml-malformed", i, s.word(i).End, "write a comma before it", "a comma is missing here")
			return i, false
		case c == '[' || c == '{':
			if !fresh {
				s.slip("yaml-quote", i, i+1, "put quotes round the text", "a bracket stands in a text without quotes")
				return i, false
			}
			open = append(open, bracket{at: i})
			if len(open) > maxDepth {
				s.tooDeep(i)
				return i, false
			}
			i++
		case fresh && (c == '"' || c == '\''):
			end, ok := s.quoted(i)
			if !ok {
				return i, false
			}
			i = end
			fresh, done = false, true
		case fresh && s.begins(i):
			return i, false
		default:
			fresh = false
			i++
		}
	}
	s.unclosed(open[len(open)-1].at)
	return s.span.End, false
}

// leaves reports whether the line that begins at i is a key or an item of a
// level that is open, so that no bracket can still be open there.
func (s *slipFinder) leaves(i int) bool {
	at := i
	for at < s.span.End && s.text[at] == ' ' {
		at++
	}
	return at-i <= s.top().column && (s.keyEnd(at) >= 0 || s.dash(at))
}

// shutter returns the bracket that closes open.
func shutter(open byte) byte {
	if open == '[' {
		return ']'
	}
	return '}'
}
