package check

import "testing"

func TestLiftedParts(t *testing.T) {
	lifted := func(name string) []string { return say("hazard-uncovered [" + name + "]") }
	const own = "```caution\nlevel: warning\ncovers: [lift]\nhazard: It weighs 40 kg.\nresult: A hurt back.\navoid: Sling it.\n```\n\n"
	var trials []trial
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Lift the rotor out.", lifted("rotor")},
		{"Carry the Rotor to the bench.", lifted("Rotor")},
		{"Wipe the seat. Set the old rotor on the stand.", lifted("rotor")},
		{"When the nut is off, lift the bare rotor off.", lifted("rotor")},
		{"Take off the rotor.", lifted("rotor")},
		{"Take the rotor and its key out.", lifted("rotor")},
		{"Put the rotor in the case. Lift the rotor cage on.", lifted("rotor")}, // once a step
		{"Slide the rotor cage onto the shaft.", lifted("rotor cage")},
		{"Lower the rotor, then hold it.", lifted("rotor")},
		// another thing
		{"Lift the rotor cover off.", nil},
		{"Take the rotor bolts out.", nil},
		{"Set rotor bolt 3 to 5 N·m.", nil},
		{"Lift the cover of the rotor.", nil},
		{"Pull the race off the rotor.", nil},
		{"Set the dial on the rotor.", nil},
		{"Put oil on the rotor.", nil},
		{"Lay the key in, rotor end up.", nil},
		// no lifting
		{"Do not lift the rotor.", nil},
		{"Turn the rotor once.", nil},
		{"Look at the rotor. Lift the lamp.", nil},
		{"The rotor is heavy.", nil},
		{"Let the rotor cool.", nil},
		{"If you lift the rotor, call the shop lead.", nil},
		// covered
		{"Lift the rotor out.\n\n" + own, nil},
		{"Lift the rotor out.\n\n```tool\nuse: hoist\n```", nil},
		{"Lift the rotor out.\n\n```fit\npart: rotor\nout-of: pinion-race\npress: {force: max 4 kN, source: m}\n```", nil},
	} {
		trials = append(trials, trial{prose(c.text), c.want})
	}
	try(t, liftedParts, trials)

	// A callout for lifting is not idle where a part is lifted, by words or by a block.
	try(t, idleCovers, []trial{
		{prose("Lift the rotor out.\n\n" + own), nil},
		{prose("Lift the rotor cover off.\n\n" + own), say("covers-idle [lift]")},
		{prose("Wait.\n\n" + own + "```fit\npart: rotor\nout-of: pinion-race\npress: {force: max 4 kN, source: m}\n```"), nil},
		{prose("Wait.\n\n" + own + "```fit\npart: pinion-nut\ninto: rotor\npress: {force: max 4 kN, source: m}\n```"), say("covers-idle [lift]")},
	})
}
