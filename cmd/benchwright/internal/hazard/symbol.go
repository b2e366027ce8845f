package hazard

// A Symbol is one safety sign of ISO 7010.
type Symbol struct {
	Code    string // "W024"
	Meaning string // what it says, in our words: "Crushing of hands"
	Worn    string // what it tells to put on: "gloves"; "" for any other
}

// symbols are the codes that a card may carry. Meanings are ours after the
// referents of ISO 7010; P003 is from memory. W026 is battery charging, so
// moving gears are W089.
var symbols = []Symbol{
	{"W001", "Take care", ""},
	{"W010", "Low temperature", ""},
	{"W011", "Slippery floor", ""},
	{"W012", "Electricity", ""},
	{"W015", "Load overhead", ""},
	{"W016", "Poison", ""},
	{"W017", "Hot surface", ""},
	{"W019", "Crushing", ""},
	{"W021", "Flammable", ""},
	{"W022", "Sharp", ""},
	{"W023", "Corrosive", ""},
	{"W024", "Crushing of hands", ""},
	{"W029", "Pressurized cylinder", ""},
	{"W038", "Sudden loud noise", ""},
	{"W089", "Moving gears", ""},
	{"M001", "Do as the card says", ""},
	{"M002", "Read the manual", ""},
	{"M003", "Wear ear protection", "ear protection"},
	{"M004", "Wear eye protection", "eye protection"},
	{"M008", "Wear safety footwear", "safety footwear"},
	{"M009", "Wear gloves", "gloves"},
	{"M013", "Wear a face shield", "a face shield"},
	{"M014", "Wear head protection", "head protection"},
	{"M016", "Wear a mask", "a mask"},
	{"M017", "Wear a respirator", "a respirator"},
	{"M021", "Disconnect first", ""},
	{"P003", "No open flame", ""},
	{"P028", "No gloves", ""},
}

// Symbols returns every symbol that a card may carry, in the order of their
// codes within a shape. The table is shared: callers must not change it.
func Symbols() []Symbol { return symbols }

// FindSymbol returns the symbol of an ISO 7010 code. A code that it does not
// know is to be refused: a card carries no symbol whose meaning is not settled.
func FindSymbol(code string) (Symbol, bool) {
	for _, s := range symbols {
		if s.Code == code {
			return s, true
		}
	}
	return Symbol{}, false
}

// contrary are the pairs that cannot both be obeyed. Among the symbols here it
// is one alone: to wear gloves and to wear none. Mask with respirator and
// goggles with face shield are more than is needed, not the contrary.
var contrary = [][2]string{{"M009", "P028"}}

// Contradict looks for a symbol of a and a symbol of b that cannot both be
// obeyed. It returns the first such pair, x from a and y from b. To examine
// one set, give it twice.
func Contradict(a, b []string) (x, y string, ok bool) {
	for _, x := range a {
		for _, y := range b {
			for _, c := range contrary {
				if c == [2]string{x, y} || c == [2]string{y, x} {
					return x, y, true
				}
			}
		}
	}
	return "", "", false
}
