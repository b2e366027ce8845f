package svg

// arguments is how many numbers each command of path data takes.
var arguments = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

// path draws path data (SVG 1.1, 8.3). It stops at what it cannot read and
// reports false; the scanner stands there.
func (p *pen) path(s *scanner) bool {
	var command byte   // as written
	var last byte      // the command before, as a capital
	var cx, cy float64 // the control point before, for S and T
	for s.blanks(); !s.done(); s.apart() {
		if len(p.pieces) > MaxPoints {
			return true // which the caller finds
		}
		from := s.at
		if c := s.peek(); letter(c) {
			if _, ok := arguments[c&^0x20]; !ok {
				return false
			}
			command = c
			s.at++
			s.blanks()
		} else if command == 0 || command|0x20 == 'z' {
			return false
		}
		verb, relative := command&^0x20, command >= 'a'
		if len(p.pieces) == 0 && verb != 'M' {
			s.at = from
			return false
		}
		if last == 'Z' && verb != 'M' && verb != 'Z' {
			p.move(p.x, p.y)
		}
		var v [7]float64
		for i := range arguments[verb] {
			if i > 0 {
				s.apart()
			}
			var ok bool
			if verb == 'A' && (i == 3 || i == 4) {
				var set bool
				if set, ok = s.flag(); set {
					v[i] = 1
				}
			} else {
				v[i], ok = s.number()
			}
			if !ok {
				return false
			}
		}
		if relative {
			p.relative(verb, &v)
		}
		switch verb {
		case 'M':
			p.move(v[0], v[1])
			command ^= 'M' ^ 'L' // more pairs are lines
		case 'L':
			p.line(v[0], v[1])
		case 'H':
			p.line(v[0], p.y)
		case 'V':
			p.line(p.x, v[0])
		case 'C':
			cx, cy = v[2], v[3]
			p.curve(v[0], v[1], cx, cy, v[4], v[5])
		case 'S':
			x1, y1 := p.x, p.y
			if last == 'C' || last == 'S' {
				x1, y1 = mul(2, p.x)-cx, mul(2, p.y)-cy
			}
			cx, cy = v[0], v[1]
			p.curve(x1, y1, cx, cy, v[2], v[3])
		case 'Q':
			cx, cy = v[0], v[1]
			p.quad(cx, cy, v[2], v[3])
		case 'T':
			if last == 'Q' || last == 'T' {
				cx, cy = mul(2, p.x)-cx, mul(2, p.y)-cy
			} else {
				cx, cy = p.x, p.y
			}
			p.quad(cx, cy, v[0], v[1])
		case 'A':
			p.arc(v[0], v[1], v[2], v[3] == 1, v[4] == 1, v[5], v[6])
		case 'Z':
			p.close()
		}
		last = verb
		if verb == 'Z' {
			s.blanks()
			if s.peek() == ',' {
				return false
			}
		}
	}
	return true
}

// relative turns what is counted from where the pen stands into places.
func (p *pen) relative(verb byte, v *[7]float64) {
	switch verb {
	case 'H':
		v[0] += p.x
	case 'V':
		v[0] += p.y
	case 'A':
		v[5] += p.x
		v[6] += p.y
	default:
		for i := 0; i < arguments[verb]; i += 2 {
			v[i] += p.x
			v[i+1] += p.y
		}
	}
}
