package check

import "testing"

// What is left loose is tightened in the same block or in a later step.
func TestSequences(t *testing.T) {
	const loose = "fastener: pinion-nut\nlimits: nut-torque\nthread: dry\nback-off: until loose"
	const again = "fastener: pinion-nut\nlimits: nut-torque\nthread: dry"
	try(t, sequences, []trial{
		{block("torque", loose), say("torque-sequence [until loose]")},
		{block("torque", again) + block("torque", loose), say("torque-sequence [until loose]")},
		{block("torque", loose) + block("torque", "fastener: ring\nlimits: nut-torque"), say("torque-sequence [until loose]")},
		{block("torque", loose) + block("torque", again), nil},
		{block("torque", loose+"\nagain: nut-torque\nthen-turn: 90°\nalign: loosen only"), nil},
		{block("torque", again+"\nback-off: 30°\nalign: loosen only"), nil},
		{block("torque", again+"\nback-off: 30°\nthen-turn: 90°"), say("torque-sequence [90°]")},
	})
}

// A torque that its own reading ends needs no limits of its own.
func TestUntilNeedsNoLimits(t *testing.T) {
	const reading = "### Step {#read}\n\n```measurement\nof: Lash\nlimits: lash\ngauge: dial-indicator\n```\n\n"
	for _, until := range []string{"lash", "read"} {
		steps := block("torque", "fastener: pinion-nut\nuntil: "+until) + reading
		try(t, limits, []trial{{steps, nil}})
		try(t, sleeveReadings, []trial{{steps, nil}})
		try(t, reasons, []trial{{steps, say("why-missing [Step]")}})
	}
	try(t, limits, []trial{{block("torque", "fastener: pinion-nut"), say("limits-missing [torque]")}})
	try(t, sleeveReadings, []trial{{block("torque", "fastener: pinion-nut\nuntil: lash"), say("until-unread [lash]")}})
}
