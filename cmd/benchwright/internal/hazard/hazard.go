// Package hazard holds the hazards of bench work as data: what can happen, how
// bad, what to do about it, which ISO 7010 symbols stand beside it, and which
// words of a text imply it. It decides nothing about a card; it answers.
//
// Signal words carry the meaning that ANSI Z535.6 gives them. The regulation
// of a row is a U.S. example: local rules come before it, and a shop may put
// its own in its place.
package hazard

import "strings"

// A Signal is a signal word. A higher one is worse; zero is no signal word.
type Signal uint8

// The signal words, from the mildest to the worst.
const (
	Notice  Signal = iota + 1 // damage to the work, not to people
	Caution                   // could result in minor or moderate injury
	Warning                   // could result in death or serious injury
	Danger                    // will result in death or serious injury if not avoided
)

var words = [...]string{Notice: "NOTICE", Caution: "CAUTION", Warning: "WARNING", Danger: "DANGER"}

// Word returns the word as it is printed, in capitals; "" for none.
func (s Signal) Word() string {
	if int(s) < len(words) {
		return words[s]
	}
	return ""
}

// String returns the word as it is written in a procedure, "warning".
func (s Signal) String() string { return strings.ToLower(s.Word()) }

// People reports whether the word is about people: a NOTICE is about the work
// alone, and so it may leave out the result and has no warning triangle.
func (s Signal) People() bool { return s >= Caution && s <= Danger }

// ParseSignal reads a signal word as it is written in a procedure: "danger",
// "warning", "caution", "notice".
func ParseSignal(word string) (Signal, bool) {
	for s := Notice; s <= Danger; s++ {
		if s.String() == word {
			return s, true
		}
	}
	return 0, false
}

// A Hazard is one row of the table. Its three texts are stored apart and are
// printed in the order hazard, result, avoid, unless the shop puts the command
// first.
type Hazard struct {
	ID      string   // "press"
	Name    string   // for the lay-out page: "Press and puller"
	Signal  Signal   // the least word that a callout for it may have
	Symbols []string // ISO 7010 codes, the warning first
	Hazard  string   // what can happen: one sentence, no command
	Result  string   // what it does to people; no command
	Avoid   []string // what to do: one command a sentence, never empty
	Rule    string   // the U.S. regulation, "29 CFR 1910.212"; "" for common practice
}

// Find returns the row of that id.
func Find(id string) (*Hazard, bool) {
	for i := range table {
		if table[i].ID == id {
			return &table[i], true
		}
	}
	return nil, false
}

// IDs returns every id in the table's order.
func IDs() []string {
	ids := make([]string, len(table))
	for i := range table {
		ids[i] = table[i].ID
	}
	return ids
}
