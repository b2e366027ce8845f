package compose

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"benchwright/render"
	"benchwright/render/typeface"
)

// A Span is text of one look on one line.
type Span struct {
	Text string
	Font typeface.Font
	code bool
	gone bool // struck through
	link string
	x    int // from the line's start
	W    int
}

// A Para is a paragraph broken into lines.
type Para struct {
	Hand  Hand
	Lines [][]Span
	Width int // of the longest line
}

// Height returns the height of all lines.
func (p Para) Height() int { return len(p.Lines) * p.Hand.Lead }

// codePad is the ground that a Code run has left and right of its text, in
// thousandths of the em.
const codePad = 130

// A word is a piece of a paragraph at whose start a line may break. Widths are
// in thousandths of the em, so that nothing is rounded before the line stands.
type word struct {
	frags []frag
	space int // before it, where it does not start a line
	width int
}

// A frag is a piece of a word in one look.
type frag struct {
	text  string
	font  typeface.Font
	code  bool
	gone  bool
	link  string
	open  bool // a Code run begins here
	close bool // and ends here
	width int
}

// Stands returns what is drawn for a rune. The faces have no ⌀, and drawings
// use Ø for it as well. Every breaking space becomes a space, and the narrow
// no-break space the plain one.
func Stands(r rune) rune {
	switch {
	case r == '⌀':
		return 'Ø'
	case r != '\u00A0' && r != '\u202F' && (unicode.IsSpace(r) || r < ' '):
		return ' '
	case r == '\u202F':
		return '\u00A0'
	}
	return r
}

// Clean returns text that is set without breaking. A character that no face has
// is reported and left out.
func (c *Compositor) Clean(s string) string {
	return strings.Map(func(r rune) rune {
		if r = Stands(r); typeface.Advance(typeface.Bold, r) == typeface.Missing {
			c.Problem(render.Problem{Kind: render.MissingGlyph, Text: string(r)})
			return -1
		}
		return r
	}, s)
}

// heavier returns the face of a run of weight w in text of face f.
func heavier(f typeface.Font, w render.Weight) typeface.Font {
	return max(f, typeface.Font(min(w, render.Bold)))
}

// parse takes runs apart where a line may break: at a space, after a dash, and
// after a hyphen between letters. A no-break space is never broken at, nor is
// a hyphen before a figure (MD-48) or inside a name.
func (c *Compositor) parse(runs []render.Run, f typeface.Font) []word {
	var all []word
	var cur word
	space, any := 0, false
	end := func() {
		if len(cur.frags) > 0 {
			all = append(all, cur)
		}
		cur = word{}
	}
	for _, run := range runs {
		font := heavier(f, run.Weight)
		text := c.Clean(run.Text)
		if run.Code {
			text = strings.Trim(text, " ")
		}
		first, start := true, 0 // of the run, and of its current piece
		for i, r := range text {
			if r == ' ' {
				if any {
					end()
					space = typeface.Advance(font, ' ')
				}
				continue
			}
			a := typeface.Advance(font, r)
			if len(cur.frags) == 0 {
				cur.space, space = space, 0
			}
			any = true
			n := len(cur.frags)
			if first || n == 0 {
				cur.frags = append(cur.frags, frag{font: font, code: run.Code, gone: run.Struck, link: run.Link, open: run.Code && first})
				if run.Code && first {
					cur.width += codePad
				}
				n++
				start = i
			}
			first = false
			g := &cur.frags[n-1]
			g.text = text[start : i+utf8.RuneLen(r)]
			g.width += a
			cur.width += a
			if !run.Code && breaksAfter(text, i, r) {
				end()
			}
		}
		if run.Code && !first {
			last := &cur
			if len(cur.frags) == 0 {
				last = &all[len(all)-1]
			}
			last.frags[len(last.frags)-1].close = true
			last.width += codePad
		}
	}
	end()
	return all
}

// breaksAfter reports whether a line may end after the rune r at text[i:].
func breaksAfter(text string, i int, r rune) bool {
	before, _ := utf8.DecodeLastRuneInString(text[:i])
	after, _ := utf8.DecodeRuneInString(text[i+utf8.RuneLen(r):])
	switch r {
	case '-', '‐': // a word of its own on either side: right-angle, not V-blocks
		return letters(text[:i], true) > 2 && letters(text[i+utf8.RuneLen(r):], false) > 2
	case '—':
		return unicode.IsLetter(after)
	case '–', '/':
		return unicode.IsLetter(before) && unicode.IsLetter(after)
	}
	return false
}

// letters returns how many letters, up to three, a text ends or begins with.
func letters(text string, end bool) int {
	n := 0
	for len(text) > 0 && n < 3 {
		r, size := utf8.DecodeRuneInString(text)
		if end {
			r, size = utf8.DecodeLastRuneInString(text)
		}
		if !unicode.IsLetter(r) {
			break
		}
		if n++; end {
			text = text[:len(text)-size]
		} else {
			text = text[size:]
		}
	}
	return n
}

// Set breaks runs to width, ragged right. The first line starts indent to the
// right. A word wider than the measure is a Problem and is broken where it
// must.
func (c *Compositor) Set(runs []render.Run, h Hand, width, indent int) Para {
	p := Para{Hand: h}
	var line []word
	used := 0 // of the line, in thousandths
	room := func() int {
		w := width
		if len(p.Lines) == 0 {
			w -= indent
		}
		return max(w, 0) * 1000 / h.Size
	}
	flush := func() {
		if len(line) == 0 {
			return
		}
		at := 0
		if len(p.Lines) == 0 {
			at = indent
		}
		spans, end := spell(line, h.Size, at)
		p.Lines = append(p.Lines, spans)
		p.Width = max(p.Width, end)
		line, used = nil, 0
	}
	for _, w := range c.parse(runs, h.Font) {
		if len(line) > 0 && used+w.space+w.width > room() {
			flush()
		}
		if len(line) == 0 && len(p.Lines) == 0 && indent > 0 && w.width > room() {
			p.Lines = append(p.Lines, nil) // nothing fits beside what is indented for
		}
		if w.width > room() && len(line) == 0 {
			c.Problem(render.Problem{Kind: render.WordTooWide, Text: w.String()})
		}
		for len(line) == 0 && w.width > room() {
			var head word
			head, w = w.split(room())
			line, used = []word{head}, head.width
			if len(w.frags) == 0 {
				break
			}
			flush()
		}
		if len(w.frags) == 0 {
			continue
		}
		if len(line) > 0 {
			used += w.space
		}
		used += w.width
		line = append(line, w)
	}
	flush()
	return p
}

// Balanced is Set with lines of nearly equal length. A title of two lines reads
// better so than with one word alone on the second.
func (c *Compositor) Balanced(runs []render.Run, h Hand, width int) Para {
	p := c.Set(runs, h, width, 0)
	if len(p.Lines) < 2 || len(p.Lines) > 3 {
		return p
	}
	narrow := width / 2
	for step := width / 4; step > 500; step /= 2 {
		if q := c.quietly(runs, h, narrow); q != nil && len(q.Lines) == len(p.Lines) {
			p, narrow = *q, narrow-step
		} else {
			narrow += step
		}
	}
	return p
}

// Narrowest returns the least width that sets runs on so many lines.
func (c *Compositor) Narrowest(runs []render.Run, h Hand, lines int) int {
	least, whole := c.Extent(runs, h)
	width := max(least, whole/lines)
	for width < whole {
		if p := c.quietly(runs, h, width); p != nil && len(p.Lines) <= lines {
			break
		}
		width += h.Size / 8
	}
	return min(width, whole)
}

// quietly sets runs without reporting. It returns nil if a word is too wide.
func (c *Compositor) quietly(runs []render.Run, h Hand, width int) *Para {
	quiet := Compositor{Style: c.Style}
	p := quiet.Set(runs, h, width, 0)
	for _, q := range quiet.Problems {
		if q.Kind == render.WordTooWide {
			return nil
		}
	}
	return &p
}

// Extent returns the width of the widest word of runs, and the width of runs on
// one line.
func (c *Compositor) Extent(runs []render.Run, h Hand) (least, whole int) {
	sum := 0
	for i, w := range c.parse(runs, h.Font) {
		least = max(least, scaledUp(w.width, h.Size))
		if i > 0 {
			sum += w.space
		}
		sum += w.width
	}
	return least, scaledUp(sum, h.Size)
}

// scaledUp returns a scaled length, rounded up, for a width that something must fit into.
func scaledUp(thousandths, size int) int { return (thousandths*size + 999) / 1000 }

// spell turns the words of a line into spans, beginning at x. It also returns
// where the line ends.
func spell(line []word, size, at int) ([]Span, int) {
	var spans []Span
	pen := 0
	x := func() int { return at + typeface.Scaled(pen, size) }
	extend := func(text string, width int) {
		last := &spans[len(spans)-1]
		pen += width
		last.Text += text
		last.W = x() - last.x
	}
	for i, w := range line {
		lead := i > 0 && w.space > 0
		for _, f := range w.frags {
			fresh := Span{Font: f.font, code: f.code, gone: f.gone, link: f.link}
			same := len(spans) > 0 && spans[len(spans)-1].like(fresh) && !f.open
			if lead {
				// The space goes with the plain one of its neighbors, so
				// that copied text has it and no ground reaches under it.
				switch {
				case same || len(spans) > 0 && spans[len(spans)-1].plain():
					extend(" ", w.space)
				case fresh.plain():
					fresh.Text, fresh.x = " ", x()
					pen += w.space
				default:
					pen += w.space
				}
				lead = false
			}
			if f.open {
				pen += codePad
			}
			if !same {
				if fresh.Text == "" {
					fresh.x = x()
				}
				spans = append(spans, fresh)
			}
			extend(f.text, f.width)
			if f.close {
				pen += codePad
			}
		}
	}
	return spans, x()
}

func (s Span) plain() bool { return !s.code && !s.gone && s.link == "" }
func (s Span) like(t Span) bool {
	return s.Font == t.Font && s.code == t.code && s.gone == t.gone && s.link == t.link
}

// split takes as much of w as fits room, at least one rune, off its front.
func (w word) split(room int) (head, tail word) {
	head.space = w.space
	for i, f := range w.frags {
		cut := f
		cut.text, cut.width, cut.close = "", 0, false
		if f.open {
			head.width += codePad
		}
		for at, r := range f.text {
			a := max(typeface.Advance(f.font, r), 0)
			if head.width+a > room && (len(head.frags) > 0 || cut.text != "") {
				if cut.text != "" {
					head.frags = append(head.frags, cut)
				}
				rest := f
				rest.text, rest.width, rest.open = f.text[at:], f.width-cut.width, false
				tail.frags = append([]frag{rest}, w.frags[i+1:]...)
				for _, t := range tail.frags {
					tail.width += t.width
					if t.close {
						tail.width += codePad
					}
				}
				return head, tail
			}
			cut.text += string(r)
			cut.width += a
			head.width += a
		}
		if cut.close = f.close; f.close {
			head.width += codePad
		}
		head.frags = append(head.frags, cut)
	}
	return head, tail
}

// String returns the word's text.
func (w word) String() string {
	var b strings.Builder
	for _, f := range w.frags {
		b.WriteString(f.text)
	}
	return b.String()
}
