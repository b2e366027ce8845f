package deck

import (
	"fmt"
	"slices"
	"strings"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/render"
)

// The fixed words of a card are constants and functions named word…, so that
// they can be read in one go and kept in one voice: plain, short, sentence
// case, in the terms of the trade. Capitals are for signal words and for what
// stops the work. Here are the words of every card, and of plain readings and
// torques; other blocks have theirs at the head of their files.
const (
	wordLayOut    = "Lay-out"
	wordSteps     = "Steps"
	wordLookUp    = "Look-up"
	wordRecord    = "Record"
	wordStrip     = "Record strip"
	wordDraft     = "DRAFT"
	wordNone      = "none"
	wordEnd       = "END OF CARD"
	wordEndStrip  = "END OF STRIP"
	wordReadFirst = "Read the whole card before you start. First lay out everything listed here."
	wordDefer     = "This card does not replace training. Where the maker's manual, your local code or your supervisor asks for more, do more."
	wordSignals   = "DANGER, WARNING, CAUTION: people can be hurt, the gravest first. NOTICE: the work can be damaged. (Words as in ANSI Z535.6, symbols as in ISO 7010.)"

	wordTime   = "Time"
	wordPeople = "People"
	wordSkill  = "Skill"
	wordCall   = "Call"
	wordMethod = "Method"

	wordHazards     = "Hazards of this card"
	wordGeneral     = "W001"
	wordConditions  = "Before you start"
	wordTools       = "Tools"
	wordFlats       = "Sizes across flats"
	wordWear        = "To wear"
	wordParts       = "Parts to have"
	wordConsumables = "Consumables"
	wordStops       = "Safe to stop"
	wordRenew       = "Always new"
	wordAgain       = "Used again"
	wordNoPlace     = "At hand"
	wordApart       = "\u00a0· " // it never begins a line

	wordTake      = "Take"
	wordOn        = "On the"
	wordAssemble  = "Assemble"
	wordTakeApart = "Take apart"
	wordHoldStill = "Hold still"

	wordTorque     = "Tighten to"
	wordSet        = "Set"
	wordSetPasses  = "Set for each pass"
	wordLeftHand   = "LEFT-HAND THREAD."
	wordTo         = "to"
	wordAtMost     = "max"
	wordAtLeast    = "at least"
	wordAccept     = "Accept"
	wordWriteDown  = "Write down"
	wordExpect     = "Expect"
	wordBelow      = "Below"
	wordAbove      = "Above"
	wordGuarded    = "Narrowed for the gauge's uncertainty."
	wordTip        = "Tip"
	wordWrenchSide = "the bolt head" // common practice: the hand of a thread is named as seen from the wrench
	wordHold       = "STOP. HOLD POINT"
	wordSignature  = "Signature"
	wordDate       = "Date"

	wordStep       = "Step"
	wordWork       = "What"
	wordLimits     = "Limits"
	wordDone       = "Done"
	wordAsFound    = "As found"
	wordAsLeft     = "As left"
	wordExpectRow  = "expect"
	wordByTable    = "by the table"
	wordReadings   = "Readings"
	wordReading    = "Reading"
	wordTicks      = "Check off each step when it is done"
	wordInstrument = "Instrument"
	wordInitials   = "Initials"
	wordJob        = "Job"
	wordSerial     = "Serial number"
	wordName       = "Name"
)

var verbs = map[card.Verb]string{card.Take: wordTake, card.Assemble: wordAssemble, card.TakeApart: wordTakeApart, card.HoldStill: wordHoldStill}

// What only the card's own text tells to take.
const (
	wordChalk    = "Chalk"
	wordPaintPen = "Paint pen"
	wordClock    = "Clock"
)

// wordAnd lists names: "", "a", "a and b", "a, b and c".
func wordAnd(names []string) string {
	n := len(names)
	if n < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
}

// wears has, by symbol and hazard, the equipment to wear if the common kind is
// not enough.
var wears = map[string]map[string]string{
	"M009": {"hot": "Heat-proof gloves", "flame": "Heat-proof gloves", "cold": "Insulated gloves", "dry-ice": "Insulated gloves"},
}

var uses = map[procedure.Use]string{
	procedure.Lowest:  "Use the lowest reading.",
	procedure.Each:    "Every reading must be within limits.",
	procedure.Average: "Use the average.",
}

var threads = map[string]string{
	"dry":          "Thread dry and clean.",
	"oiled":        "Thread oiled.",
	"threadlocker": "Threadlocker on the thread.",
	"anti-seize":   "Anti-seize on the thread.",
}

func wordRule(hazard, rule string) string { return hazard + " (" + rule + ")" }
func wordSourced(text, source string) string {
	if source == "" {
		return text
	}
	return text + " (" + source + ")"
}
func wordOld(number, old string) string          { return number + " (old " + old + ")" }
func wordFlat(size string) string                { return size + " socket or wrench" }
func wordKey(size string) string                 { return size + " hexagon bit or key" }
func wordMade(as string) string                  { return "= " + as }
func wordHeld(what string) string                { return "on " + what }
func wordHoldRow(sees string) string             { return "Hold point: " + sees }
func wordManual(written string) string           { return "manual: " + written }
func wordSeenFrom(where string) string           { return "seen from " + where }
func wordToTighten(seen string) string           { return "to tighten, " + seen }
func wordQuantity(count int) string              { return fmt.Sprintf("qty\u00a0%d", count) }
func wordSerials(variant, serials string) string { return variant + ", serials " + serials }
func wordOutside(call string) string {
	if call == "" {
		return "Outside this, read again."
	}
	return "Outside this, read again. Outside again, call the " + call + "."
}
func wordNoLimits(because string) string     { return sentence("No limits: " + lower(because)) }
func wordWho(who string) string              { return "Work stops until the " + who + " has signed." }
func wordSees(sees string) string            { return sentence("To see: " + lower(sees)) }
func wordBefore(before string) string        { return sentence("Before " + before) }
func wordFinished(card, title string) string { return card + " finished: " + title }
func wordAfterStep(step int) string          { return fmt.Sprintf("After step\u00a0%d", step) }
func wordWhile(what string) string           { return sentence("Tighten while " + what) }
func wordLock(how string) string             { return "Lock it: " + strings.TrimSuffix(how, ".") }
func wordTolerance(percent string) string    { return "The shop's tolerance is ±" + percent + "\u00a0%." }

func wordSpreadRow(low, high string) string {
	return "Example: lowest reading " + low + ", highest allowed " + high + "."
}
func wordZeroLowest(gauge, most string) string {
	return "Zero the " + gauge + " at the lowest reading. Highest: at most " + most + "."
}
func wordApartBy(limits, most string) string { return limits + ", spread max\u00a0" + most }
func wordApartRow(limits string) string      { return limits + ", spread by the table" }
func wordSpread(of string) string            { return "Maximum spread: " + of }
func wordForStep(step int, what string) string {
	return fmt.Sprintf("For step\u00a0%d. %s", step, what)
}
func wordSee(what string, step int) string {
	return fmt.Sprintf("See the %s for step\u00a0%d on look-up page\u00a0%s.", what, step, render.FaceOf)
}
func wordAndOver(v string) string { return v + " up" }

func wordByMark(mark string) string {
	return "Read the " + mark + ". The table gives what to accept for it."
}
func wordMarkRow(mark, value, accept string) string { return mark + " " + value + ": accept " + accept }
func wordManualTable(nominal, tolerance, step string, shorter bool) string {
	way := "longer"
	if shorter {
		way = "shorter"
	}
	return "manual: " + nominal + " ±" + tolerance + ", each plus mark " + step + " " + way
}
func wordTilt(angle string) string {
	return "Set the lever at " + angle + " to the surface: the limits are for this tilt."
}

const (
	wordBelowRow   = "Below its row"
	wordAboveRow   = "Above its row"
	wordSpreadToo  = "Maximum spread: by the table."
	wordSpreadLow  = "Lowest"
	wordSpreadHigh = "Highest"
	wordTable      = "table"
	wordFigure     = "figure"
	wordPictures   = "pictures"
)

func wordGo(step int, back bool) string {
	if back {
		return fmt.Sprintf("Go to step\u00a0%d, then come back.", step)
	}
	return fmt.Sprintf("Go on from step\u00a0%d.", step)
}

// steps prints a list of steps in short: "step 3", "steps 3, 7–9".
func steps(list []int) string {
	n := slices.Clone(list)
	slices.Sort(n)
	n = slices.DeleteFunc(slices.Compact(n), func(i int) bool { return i == 0 })
	if len(n) == 0 {
		return ""
	}
	var parts []string
	for i := 0; i < len(n); {
		j := i
		for j+1 < len(n) && n[j+1] == n[j]+1 {
			j++
		}
		switch {
		case j == i:
			parts = append(parts, fmt.Sprint(n[i]))
		case j == i+1:
			parts = append(parts, fmt.Sprint(n[i]), fmt.Sprint(n[j]))
		default:
			parts = append(parts, fmt.Sprintf("%d–%d", n[i], n[j]))
		}
		i = j + 1
	}
	word := "steps"
	if len(n) == 1 {
		word = "step"
	}
	return word + "\u00a0" + strings.Join(parts, ", ")
}
