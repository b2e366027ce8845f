package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// The words of a contact pattern.
const (
	wordToe     = "toe"
	wordHeel    = "heel"
	wordTopLand = "top"
	wordRoot    = "root"
	wordRight   = "Right: "
	wordGoOn    = "Go on."
	wordOrder   = "Depth first (B, C), backlash last (D, E)."
	wordTickIt  = "Mark what you see."
)

// rights describes the positions of a correct pattern.
var rights = map[unit.PatternPosition]string{unit.Central: "in the middle.", unit.TowardToe: "a little toward the toe.", unit.TowardHeel: "a little toward the heel."}

// faults names the wrong patterns.
var faults = map[unit.Fault]string{unit.High: "High: ", unit.Low: "Low: ", unit.Toe: "Toe: ", unit.Heel: "Heel: "}

// found describes the positions of a wrong pattern that is only recorded.
var found = map[unit.Fault]string{unit.High: "near the top of the tooth.", unit.Low: "near the root of the tooth.", unit.Toe: "near the small end.", unit.Heel: "near the large end."}

func wordPattern(gears string, side unit.Side) string {
	return fmt.Sprintf("Contact pattern of the %s, %s side", gears, side)
}

// wordReadSide names the flank to look at. If the unit has its own words for
// the drive side, the coast side is called the other one.
func wordReadSide(side unit.Side, drives string) string {
	other := map[string]string{unit.Convex: unit.Concave, unit.Concave: unit.Convex}[drives]
	switch {
	case other == "" && side == unit.Drive:
		return "The drive side of the gear tooth: " + drives
	case other == "":
		return "The coast side of the gear tooth. The drive side is " + drives
	case side == unit.Coast:
		drives = other
	}
	return fmt.Sprintf("The %s side of the gear tooth: the %s one", side, drives)
}

func wordChange(pack string, thicker bool) string {
	if thicker {
		return "thicker " + pack + "."
	}
	return "thinner " + pack + "."
}

func wordByManual(change string) string { return "Manual: " + change }

func wordToStep(step int, back bool) string {
	if back {
		return fmt.Sprintf("Step\u00a0%d, then back here.", step)
	}
	return fmt.Sprintf("Go to step\u00a0%d.", step)
}

func wordAtMostTimes(n int, then string) string {
	if n == 1 {
		return "Correct it once, then check again. Still wrong: " + then
	}
	return fmt.Sprintf("Check again, at most %d times. Still wrong: %s", n, then)
}

// patches has the patch for each fault: center along the tooth from the toe,
// center up from the root, half its length, half its height, in thousandths.
var patches = map[unit.Fault][4]int{
	unit.High: {500, 830, 300, 125}, unit.Low: {500, 170, 300, 125}, unit.Toe: {205, 500, 160, 290}, unit.Heel: {795, 500, 160, 290},
}

// middles has the center of a correct pattern along the tooth, in thousandths
// from the toe.
var middles = map[unit.PatternPosition]int{unit.Central: 500, unit.TowardToe: 420, unit.TowardHeel: 580}

// pattern builds the pictures of a contact pattern and the correction for
// each.
func (b *builder) pattern(p *card.Pattern) []render.Element {
	if p.Contact == nil {
		return nil
	}
	out := render.Contact{Title: strong(wordReadSide(p.Side, p.Pair.DriveSide)), Toe: wordToe, Heel: wordHeel, Top: wordTopLand, Root: wordRoot,
		Source: plain(wordManual(p.Contact.Source))}
	right := render.ContactRow{Letter: "A", Do: [][]render.Run{withHead(wordRight, rights[p.Contact.RightPosition])},
		Along: middles[p.Contact.RightPosition], Up: 500, Half: 290, Height: 260}
	switch {
	case p.AsFound:
		out.Under = append(out.Under, plain(wordTickIt))
	default:
		right.Do = append(right.Do, plain(wordGoOn))
		if (p.Go[unit.High] != nil || p.Go[unit.Low] != nil) && (p.Go[unit.Toe] != nil || p.Go[unit.Heel] != nil) {
			out.Under = append(out.Under, plain(wordOrder))
		}
		if p.MaxRepeats > 0 && p.Then != "" {
			out.Under = append(out.Under, plain(wordAtMostTimes(p.MaxRepeats, p.Then)))
		}
	}
	out.Rows = append(out.Rows, right)
	for i, f := range unit.Faults {
		at := patches[f]
		row := render.ContactRow{Letter: string(rune('B' + i)), Along: at[0], Up: at[1], Half: at[2], Height: at[3]}
		if p.AsFound {
			row.Do = append(row.Do, withHead(faults[f], found[f]))
		} else {
			c := p.Contact.Corrections[f]
			change, br := wordChange(lower(c.Pack.Name), c.Thicker), p.Branches[f].Text
			switch {
			case br == "":
				row.Do = append(row.Do, withHead(faults[f], change))
			case p.Go[f] != nil:
				row.Do = append(row.Do, withHead(faults[f], change), plain(br))
			default: // whoever is called decides; the correction must not read as an instruction
				row.Do = append(row.Do, withHead(faults[f], br), plain(wordByManual(change)))
			}
		}
		if to := p.Go[f]; to != nil {
			row.Do = append(row.Do, []render.Run{{Text: wordToStep(to.Number, p.Branches[f].Back), Link: card.Anchor(to.Number)}})
		}
		out.Rows = append(out.Rows, row)
	}
	return []render.Element{b.table(p.At, wordPattern(lower(p.Pair.Name), p.Side), out)}
}

// withHead returns a text behind a bold name on the same line.
func withHead(name, text string) []render.Run { return append(strong(name), plain(text)...) }

// patternRows returns its row of the record: which picture it was.
func (b *builder) patternRows(p *card.Pattern) []recordRow {
	if p.Pair == nil {
		return nil
	}
	r := recordRow{at: p.At, what: wordPattern(lower(p.Pair.Name), p.Side), kind: rowKind{initials: true}, limits: "A"}
	if p.AsFound {
		r.kind.found, r.limits = true, ""
	} else {
		r.kind.left = true
	}
	return []recordRow{r}
}
