package check

import (
	"slices"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/unit"
)

// seats asks of a part that is put in its seat which way around it goes and how
// to tell that it is fully seated.
func seats(p *pass) {
	each(p, func(_ *card.Step, f *card.Fit) {
		if !f.Direction.In() {
			return
		}
		if part := f.Part.Part; part != nil {
			key, fix := "", ""
			switch {
			case part.Kind == unit.Seal && f.Lip == "":
				key, fix = "which way the lip of `"+part.ID+"` faces", "add `lip:`, such as `lip: to the oil`"
			case part.Kind == unit.Race && f.Orientation == "":
				key, fix = "the orientation of `"+part.ID+"`", "add `orientation:`, such as `orientation: thick edge down`"
			}
			if key != "" {
				p.msgs.Report("orientation-missing", f.Fit.Part.At, fix, "nothing says %s", key)
			}
		}
		if f.HomeSign == "" && f.Depth == nil && f.Seat != procedure.Flush {
			p.msgs.Report("key-missing", f.At, "add `home:` with the sign that the hand can see, hear or feel; or `seat: flush`, or `seat:` with a depth", "nothing says how to know that the part is home")
		}
	})
}

// heat checks that heated parts may get as hot as stated.
func heat(p *pass) {
	each(p, func(_ *card.Step, f *card.Fit) {
		w := f.Heat
		if w == nil {
			return
		}
		for _, m := range append([]card.Member{w.Part, w.Other}, w.InTheHeat...) {
			p.maxHeat(m)
		}
		for _, m := range w.InTheHeat {
			if m.Part != nil && m.MaxHeat() == nil {
				p.msgs.Report("limits-missing", m.At.At, "add `max-heat:` and `max-heat-source:` to it in the unit", "nothing says how hot `%s` may get", m.At.Name).Basis = diag.OnUnit
			}
		}
		mark := p.Shop.Mark()
		const fix = "press it in place of heating it, or chill the other part; a part that stands more says so in the unit with `max-heat:`, `max-heat-source:` and, for a bearing, `max-heat-because:`"
		switch l := w.Limit; {
		case w.Cap == nil && w.Need != nil || w.Cap == nil && w.StatedLimit != nil && w.StatedLimit.Band.High == nil:
			p.msgs.Report("limits-missing", f.Heat.Method.At, "add `max-heat:` and `max-heat-source:` to what is heated, in the unit", "nothing says how hot it may get at most").Basis = diag.OnUnit
		case w.Cap != nil && w.Need != nil && w.Need.Cmp(w.Cap.Highest) > 0:
			p.msgs.Report("heat-above-cap", w.Method.At, fix, "the fit needs %s, and `%s` may get no hotter than %s", w.NeedDegrees(mark), w.Cap.At.Name, w.Cap.Degrees(mark))
		case w.StatedLimit != nil && w.TooHot(w.StatedLimit.Band.Low, w.StatedLimit.Band.Unit), w.StatedLimit != nil && l != nil && w.TooHot(l.Band.High, l.Band.Unit):
			p.msgs.Report("heat-above-cap", w.StatedLimit.At, fix, "`%s` goes above %s, the most for `%s`", w.StatedLimit.Band.Written, w.Cap.Degrees(mark), w.Cap.At.Name)
		}
	})
}

// maxHeat asks for a reason and a source if the unit lets a rolling bearing
// get hotter than usual.
func (p *pass) maxHeat(m card.Member) {
	part := m.Part
	if part == nil || part.MaxHeat == nil || !part.Rolling() || part.HeatBecause != "" && part.HeatSource != "" {
		return
	}
	if part.MaxHeat.In(celsius).Value.Cmp(bench.BearingCap) > 0 {
		d := p.msgs.Report("heat-above-cap", m.At.At, "add `max-heat-because:` and `max-heat-source:` to it in the unit, or let it get 120 °C hot and no more",
			"the unit lets the rolling bearing `%s` get %s hot, without a reason and a source", part.ID, part.MaxHeat.Unit.After(part.MaxHeat.Text))
		d.Related = append(d.Related, related(part.Node.KeyPlace("max-heat"), "it is stated here"))
	}
}

// flames refuses an open flame on a bearing.
func flames(p *pass) {
	each(p, func(_ *card.Step, f *card.Fit) {
		if f.Heat == nil {
			return
		}
		rolling := slices.ContainsFunc(append([]card.Member{f.Heat.Part}, f.Heat.InTheHeat...), func(m card.Member) bool { return m.Part != nil && m.Part.Rolling() })
		for _, i := range f.Heat.With {
			if rolling && slices.Contains(i.Hazards, "flame") {
				p.msgs.Report("flame-on-bearing", toolPlace(f.Heat.Method, i.ID), "heat it in an oven, on a hot plate, in oil or by induction", "`%s` is an open flame, and it would heat a bearing", i.ID)
			}
		}
	})
}

// toolPlace returns the place where a method names a tool.
func toolPlace(m *procedure.Method, id string) source.Place {
	for _, n := range m.With {
		if n.Name == id {
			return n.At
		}
	}
	return m.At
}

// thermometers warns of an infrared thermometer on bare metal, and of parts
// that come apart only while one is hotter if no time is stated.
func thermometers(p *pass) {
	each(p, func(s *card.Step, f *card.Fit) {
		for _, w := range f.Warmths() {
			if w.Gauge != nil && w.Gauge.Infrared {
				p.msgs.Report("infrared-on-metal", w.GaugePlace(), "check it with a contact thermometer or a temperature stick", "`%s` is an infrared thermometer: on bare metal it reads low", w.Gauge.ID)
			}
			timed := slices.ContainsFunc(s.Items, func(i card.Item) bool { _, ok := i.(*card.Timed); return ok })
			if w.Fast && !timed {
				p.msgs.Report("fast-untimed", w.Method.At, "add a `timed` block to the step: how long the hand has, and what to do when it is too late",
					"the two parts expand nearly alike, so the fit is loose only while one is hotter, and no time is stated")
			}
		}
	})
}
