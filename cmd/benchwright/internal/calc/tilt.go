package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var tilt = computation{
	name:  "tilt",
	about: "lever indicator at an angle: what a reading is, or limits on the dial",
	options: []option{
		{name: "reading", example: "0.20 mm", about: "what the dial shows"},
		{name: "limits", example: "0.15 to 0.25 mm", about: "the limits of the true movement, to be put on the dial"},
		{name: "angle", example: "20°", about: "between the lever and the surface", needed: true},
		{name: "marks", example: "0.01 mm", about: "one graduation of the dial"},
	},
	example: `--reading "0.20 mm" --angle 20°`,
	work:    tiltSheet,
}

func tiltSheet(a *answers) *sheet {
	from := a.either(true, "reading", "limits")
	angle := a.angle("angle")
	reading := a.value("reading", quantity.Length)
	limits := a.limits("limits", quantity.Length)
	scale := a.scale(reading.Unit)
	if from == "limits" {
		scale = a.scale(limits.Unit)
	}
	if !a.ok() {
		return nil
	}
	s := a.sheet("Lever indicator at an angle", "A tilted lever shows too much, never too little.")
	cos := bench.Cos(angle)
	s.source(s.local("Geometry; published factors 10° 0.98, 20° 0.94, 30° 0.87 (common practice)."))
	s.input("θ", "lever against the surface", s.num(angle)+"°")
	s.step("cos ", s.num(angle), "° ", s.equals(cos))
	movement, ok := bench.TrueMovement(reading.Value, angle)
	if !ok {
		s.refuse("At this angle the lever shows nothing of use. Set it flatter.")
		return s
	}
	if from == "reading" {
		s.formula("true = reading × cos θ")
		s.value("", "reading", reading, reading.Unit)
		s.step("true = ", s.num(reading.Value), " × ", s.num(cos), " ", s.equalsIn(movement, reading.Unit))
		s.result("The true movement is ", s.rounded(movement, reading.Unit), ".")
		return s
	}
	s.formula("on the dial = limit / cos θ")
	s.band("", "limits", limits, scale.Unit)
	dial := bench.Scaled(limits, new(big.Rat).Inv(cos), scale.Unit)
	for _, l := range limitsOf(limits.In(scale.Unit), dial) {
		s.step(l.name(": "), s.num(l.given), " / ", s.num(cos), " ", s.equalsIn(l.worked, scale.Unit))
	}
	if a.has("marks") {
		s.marks("graduations, dial", scale)
		s.inward(dial, scale, "")
	} else {
		s.result(s.span(dial), " on the dial")
	}
	return s
}
