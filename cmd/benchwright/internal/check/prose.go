package check

import (
	"slices"
	"strings"
)

// maxWords is the maximum length of an instruction (after DOE-STD-1029 and
// ASD-STE100 as public copies show them).
const maxWords = 20

// longSentences warns of an instruction that is too long to remember on the
// way from the card to the work.
func longSentences(p *pass) {
	if !p.english() {
		return
	}
	for _, s := range p.Steps() {
		for _, i := range p.instructions(s) {
			if n := len(i.words); n > maxWords {
				d := p.msgs.Report("prose-long", i.place(), "cut it into two sentences, one action each", "this instruction has %d words, and %d are the most", n, maxWords)
				d.Label = "a new sentence about here"
				d.At = i.text.place(i.words[maxWords].from, i.words[maxWords].to)
			}
		}
	}
}

// verbs are the actions of bench work.
var verbs = strings.Fields(`
	add align apply assemble attach back bend blow bolt break bring brush carry centre center change check clamp clean
	close coat compare cool count cover cut deburr degrease dip disassemble disconnect dismantle drain draw drill drive
	drop dry engage file fill find fit fold follow free get give grease grip hang heat hold inspect insert install
	keep lay leave level lift look loosen lower lubricate mark mask measure mount move note oil open paint pick place plug
	point pour press prise protect pull push put raise read record refit release remove renew repeat replace reset
	rest rinse rock rotate rub scrap scrape screw seat select separate set slide slip spin split spread stake stand start
	stop strip support swing tag take tap tape test tie tighten tilt torque touch transfer turn undo unscrew unwind
	wash watch wear weigh wind wipe withdraw write zero`)

func isVerb(w string) bool { return slices.Contains(verbs, w) }

// nounVerbs are the verbs that are also nouns: the bolt, the key.
var nounVerbs = strings.Fields(`
	bolt brush clamp cover drain drill drive file fit grease grip level mark mask measure mount note oil paint pick plug
	point press record rest scrap screw seat slide spread stake stand stop strip support tag tape tap test tie torque`)

// afterNoun are words that follow such a noun but not the verb, which has its
// object first: "and bolt in tray 2", "and bolt the cover".
var afterNoun = strings.Fields("and at behind beside between by for from in into is are of on onto or to under with")

// isNoun reports whether words[n], behind "and", is another noun of a list
// rather than a second action. In doubt it is a noun.
func isNoun(words []word, n int) bool {
	if words[n-1].text != "and" || !slices.Contains(nounVerbs, words[n].text) {
		return false
	}
	return words[n].comma || n+1 == len(words) || slices.Contains(afterNoun, words[n+1].text)
}

// twoActions warns of a second action behind "and", "then" or a comma.
func twoActions(p *pass) {
	if !p.english() {
		return
	}
	for _, s := range p.Steps() {
		for _, i := range p.instructions(s) {
			main := mainClause(i)
			if main >= len(i.words) || !isVerb(i.words[main].text) {
				continue
			}
			for n := main + 1; n < len(i.words); n++ {
				w := i.words[n]
				before := i.words[n-1]
				joined := before.text == "and" || before.text == "then"
				if !joined || !isVerb(w.text) || n+1 == len(i.words) && before.text == "and" && !i.words[n-2].comma {
					continue
				}
				if n+1 < len(i.words) && i.words[n+1].text == "of" {
					continue // "dry and free of oil" is a condition
				}
				if isNoun(i.words, n) {
					continue
				}
				if simultaneous(i.words[main:]) {
					break
				}
				d := p.msgs.Report("prose-two-actions", i.text.place(w.from, w.to), "begin a new sentence with `"+capital(w.text)+"`", "this sentence has two actions: `%s` and `%s`", i.words[main].text, w.text)
				d.Label = "the second action"
				break
			}
		}
	}
}

// simultaneous reports whether two actions are meant to happen at the same
// time.
func simultaneous(words []word) bool {
	return slices.ContainsFunc(words, func(w word) bool { return w.text == "while" || w.text == "together" || w.text == "same" })
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// mainClause returns the index of the word where the action of a sentence
// begins: after the comma if it begins with a condition.
func mainClause(s sentence) int {
	if len(s.words) == 0 || !isCondition(s.words[0].text) {
		return 0
	}
	for n, w := range s.words {
		if w.comma {
			return n + 1
		}
	}
	return len(s.words)
}

func isCondition(w string) bool { return slices.Contains(conditions, w) }

var conditions = []string{"if", "when", "while", "unless", "until", "after", "before", "once"}

// lateConditions warns of a condition that follows its action: by then the
// action has been done.
func lateConditions(p *pass) {
	if !p.english() {
		return
	}
	for _, s := range p.Steps() {
		for _, i := range p.instructions(s) {
			if len(i.words) < 3 || !isVerb(i.words[0].text) {
				continue
			}
			// "Check if …" asks a question: its condition is the object.
			for n := 2; n < len(i.words); n++ {
				w := i.words[n]
				if w.text != "if" && w.text != "when" && w.text != "unless" {
					continue
				}
				p.msgs.Report("prose-condition-late", i.text.place(w.from, w.to), "put the condition first, then a comma, then the action",
					"the condition comes after its action")
				break
			}
		}
	}
}

// vague are words that leave the amount to the reader.
var vague = []string{"approximately", "as required", "as necessary", "as needed", "if necessary", "if required", "if needed",
	"sufficient", "sufficiently", "slowly", "adequate", "adequately", "properly", "correctly", "roughly", "carefully", "firmly", "securely", "appropriate"}

// vagueWords warns of vague words, unless the sentence gives a number or a
// sign to look for.
func vagueWords(p *pass) {
	if !p.english() {
		return
	}
	for _, s := range p.Steps() {
		for _, i := range p.instructions(s) {
			if slices.ContainsFunc(i.words, func(w word) bool { return isNumber(firstField(w.text)) || w.text == "until" }) {
				continue
			}
			lower := strings.ToLower(i.text.text[i.from:i.to])
			for _, v := range vague {
				if at := indexWord(lower, v); at >= 0 {
					p.msgs.Report("prose-vague", i.text.place(i.from+at, i.from+at+len(v)), "give a number, or a sign to look for", "`%s` leaves the amount to the reader", v)
					break
				}
			}
		}
	}
}

func firstField(s string) string {
	f, _, _ := strings.Cut(s, " ")
	return f
}

// indexWord returns the index of w in s where no letter adjoins it, or -1.
func indexWord(s, w string) int {
	letter := func(i int) bool { return i >= 0 && i < len(s) && s[i] >= 'a' && s[i] <= 'z' }
	for from := 0; ; {
		i := strings.Index(s[from:], w)
		if i < 0 {
			return -1
		}
		i += from
		if !letter(i-1) && !letter(i+len(w)) {
			return i
		}
		from = i + 1
	}
}
