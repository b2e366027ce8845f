package calc

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var adapter = computation{
	name:  "adapter",
	about: "what to set on a torque wrench that drives through an adapter",
	options: []option{
		{name: "torque", example: "100 in-lb", about: "the torque at the fastener, or its limits", needed: true},
		{name: "length", example: "12 in", about: "the wrench, from the center of its drive to the center of its grip", needed: true},
		{name: "adapter", example: "6 in", about: "the adapter, from the center of the drive to the center of the fastener", needed: true},
		{name: "angle", example: "0°", about: "between adapter and handle, ° or deg; 0° in line, 90° square, 180° pointing back", needed: true},
		{name: "marks", example: "5 in-lb", about: "one graduation of the wrench"},
		{name: "range", example: "30 to 150 in-lb", about: "its lowest and highest graduation"},
		{name: "accuracy", example: "4 %", about: "its accuracy, of the reading"},
	},
	example: `--torque "100 in-lb" --length "12 in" --adapter "6 in" --angle 0° --marks "5 in-lb"`,
	work:    adapterSheet,
}

const adapterSource = "NAVEDTRA 14315 ch. 3; TM 1-1500-204-23-9 fig. 8-16."

func adapterSheet(a *answers) *sheet {
	torque := a.band("torque", quantity.Torque)
	length, extension := a.positive("length", quantity.Length), a.positive("adapter", quantity.Length)
	angle := a.value("angle", quantity.Angle)
	degrees := angle.In(degree).Value
	w := a.wrench(torque.Unit)
	w.Length = &length
	if a.has("range") || a.has("accuracy") {
		a.need("marks")
	}
	for _, x := range []*big.Rat{torque.Low, torque.Target()} {
		if a.ok() && x != nil && x.Sign() <= 0 {
			a.wrong("torque", "this must be above 0: write it as in `%s`", a.example("torque"))
		}
	}
	if !a.ok() {
		return nil
	}
	u := w.Scale.Unit
	s := a.sheet("Torque wrench with an adapter", "What to set so that the fastener gets its torque. It holds for a pull at the center of the grip.")
	s.formula("S = T × L / (L + E × cos θ)")
	s.band("T", "torque at the fastener", torque, u)
	s.value("L", "drive to grip", length, length.Unit)
	s.value("E", "drive to fastener", extension, length.Unit)
	s.input("θ", "adapter against handle", s.num(degrees)+"°")
	if a.has("marks") {
		s.wrench(w)
	}
	e := extension.In(length.Unit).Value
	cos, lever := bench.Cos(degrees), bench.AdapterLever(length.Value, e, degrees)
	s.step("cos ", s.num(degrees), "° ", s.equals(cos))
	s.step("L + E × cos θ = ", s.num(length.Value), " + ", s.num(e), " × ", s.bracket(cos), " ", s.equalsIn(lever, length.Unit))
	s.source(adapterSource)
	through := &bench.Adapter{Length: extension, Angle: degrees}
	if lever.Sign() <= 0 {
		s.refuse("The adapter points back as far as the wrench is long, or farther: it leaves no lever. Turn it, or take a longer wrench.")
		return s
	}
	back := func(setting *big.Rat) *big.Rat {
		t, _ := bench.AdapterTorque(setting, length.Value, e, degrees)
		return t
	}
	in := torque.In(u)
	set := func(t *big.Rat) *big.Rat {
		x, _ := bench.SetAdapter(t, length.Value, e, degrees)
		s.step("S = ", s.num(t), " × ", s.num(length.Value), " / ", s.num(lever), " ", s.equalsIn(x, u))
		return x
	}
	gives := func(mark *big.Rat) string {
		return w.Scale.Print(mark, s.mark) + " on the wrench gives " + s.amount(back(mark), u) + " at the fastener."
	}
	if torque.Form == quantity.Bare {
		x := set(in.Nominal.Value)
		s.result("The setting is ", s.rounded(x, u), ".")
		if a.has("marks") {
			s.besideMarks(x, w.Scale, gives)
		}
		s.result("Pull at the center of the grip.")
		return s
	}
	for _, t := range []*big.Rat{in.Low, in.High} {
		if t != nil {
			set(t)
		}
	}
	if !a.has("marks") {
		limits, _ := through.Setting(in, &length)
		s.result("Set between the limits ", s.span(limits), ".")
		s.result("Pull at the center of the grip.")
		return s
	}
	if mark := s.setting(torque, through, w); mark != nil {
		s.result(gives(mark), " That lies inside the limits.")
		s.result("Pull at the center of the grip.")
	}
	return s
}

// besideMarks names the marks on both sides of a setting that has no limits.
func (s *sheet) besideMarks(x *big.Rat, scale quantity.Scale, gives func(*big.Rat) string) {
	down, up := scale.Floor(x), scale.Ceil(x)
	low, high := scale.Ends()
	if low != nil && down.Cmp(low) < 0 || high != nil && up.Cmp(high) > 0 {
		s.refuse("It is off the scale of the wrench. Take another wrench.")
		return
	}
	for _, mark := range distinct(down, up) {
		if mark.Sign() > 0 {
			s.result(gives(mark))
		}
	}
	if down.Cmp(up) != 0 {
		s.result("One torque has no limits: which mark to take, the manual's limits decide.")
	}
}
