package bench

import (
	"math/big"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// The torques are those of the textbook checks of TighteningTorque, and those
// torques with a slip made in them.
func TestJudgeTorque(t *testing.T) {
	m12, half := mm(t, "12", "1.75"), un(t, "1/2", "13")
	for _, c := range []struct {
		torque  string
		duty    Duty
		th      Thread
		class   string
		finding TightnessFinding
		slips   string // units meant, or places
	}{
		{"82 N·m", Clamp, m12, "8.8", TightOrdinary, ""},
		{"75 lbf·ft", Clamp, half, "5", TightOrdinary, ""},
		{"75 lbf·in", Clamp, half, "5", TightLow, "lbf·ft"},
		{"900 lbf·ft", Clamp, half, "5", TightAbove, "lbf·in"},
		{"110 N·m", Clamp, m12, "8.8", TightHigh, ""}, // a tenth would be as odd,
		{"100 lbf·ft", Clamp, m12, "8.8", TightAbove, "N·m"},
		{"30 N·m", Clamp, m12, "8.8", TightLow, "lbf·ft"},
		{"8.2 N·m", Clamp, m12, "8.8", TightLow, "+1"},
		{"820 N·m", Clamp, m12, "8.8", TightAbove, "-1"},
		{"8200 N·m", Clamp, m12, "8.8", TightAbove, ""},
		{"30 N·m", BearingNut, m12, "8.8", TightOrdinary, ""},
		{"820 N·m", BearingNut, m12, "8.8", TightAbove, "-1"},
		{"820 N·m", Plug, m12, "8.8", TightAbove, "-1"},
		{"75 to 85 N·m", Clamp, m12, "8.8", TightOrdinary, ""},
		{"110 to 120 N·m", Clamp, m12, "8.8", TightAbove, ""},   // 93.7 to 102.2 %
		{"26 to 40 N·m", Clamp, m12, "8.8", TightLow, "lbf·ft"}, // 30.04 % at the low end
		{"25 to 40 N·m", Clamp, m12, "8.8", TightLow, ""},       // 28.9 %: the slip would not fix it
		{"max 20 N·m", Clamp, m12, "8.8", TightLow, ""},
		{"at least 60 N·m", Clamp, m12, "8.8", TightOrdinary, ""},
	} {
		proof, _, _ := c.th.ProofLoad(c.class)
		j, ok := JudgeTorque(band(t, c.torque), c.duty, c.th, num(t, "0.20"), proof)
		var slips []string
		for _, s := range j.Slips {
			switch s.Places {
			case 0:
				slips = append(slips, s.Meant.Unit.Symbol)
			case 1:
				slips = append(slips, "+1")
			default:
				slips = append(slips, "-1")
			}
			if meant := s.Meant.Nominal; s.Places != 0 && meant.Value.Cmp(num(t, "82")) != 0 {
				t.Errorf("%s: %s is meant, want 82", c.torque, meant.Value)
			}
		}
		got := strings.Join(slips, " ")
		if !ok || j.Finding != c.finding || got != c.slips {
			t.Errorf("%s, duty %d: finding %d, slips %q, want %d, %q", c.torque, c.duty, j.Finding, got, c.finding, c.slips)
		}
	}
}

func TestJudgeTorqueRefuses(t *testing.T) {
	m12, k, proof := mm(t, "12", "1.75"), num(t, "0.2"), num(t, "48900")
	for why, ok := range map[string]func() bool{
		"to yield":      func() bool { _, ok := JudgeTorque(band(t, "900 N·m"), ToYield, m12, k, proof); return ok },
		"no K":          func() bool { _, ok := JudgeTorque(band(t, "82 N·m"), Clamp, m12, nil, proof); return ok },
		"no proof load": func() bool { _, ok := JudgeTorque(band(t, "82 N·m"), Clamp, m12, k, nil); return ok },
		"no thread":     func() bool { _, ok := JudgeTorque(band(t, "82 N·m"), Clamp, Thread{}, k, proof); return ok },
		"no torque":     func() bool { _, ok := JudgeTorque(band(t, "82 N"), Clamp, m12, k, proof); return ok },
		"no numbers": func() bool {
			_, ok := JudgeTorque(quantity.Band{Unit: newtonMeter}, Clamp, m12, k, proof)
			return ok
		},
	} {
		if ok() {
			t.Errorf("%s: judged", why)
		}
	}
}

// The edges: 30, 90 and 100 % are still good, and a hair beyond is not.
func TestJudgeTorqueEdges(t *testing.T) {
	m12, k, proof := mm(t, "12", "1.75"), num(t, "0.2"), num(t, "48900")
	for _, c := range []struct {
		share   string
		finding TightnessFinding
	}{
		{"0.2999999", TightLow}, {"0.3", TightOrdinary}, {"0.9", TightOrdinary},
		{"0.9000001", TightHigh}, {"1", TightHigh}, {"1.0000001", TightAbove},
	} {
		torque := m12.TighteningTorque(k, new(big.Rat).Mul(proof, num(t, c.share)))
		j, ok := JudgeTorque(quantity.Band{Low: torque, High: torque, Unit: newtonMeter}, Clamp, m12, k, proof)
		if !ok || j.Finding != c.finding || j.Most.Cmp(num(t, c.share)) != 0 || j.Least.Cmp(j.Most) != 0 {
			t.Errorf("%s: finding %d, share %v", c.share, j.Finding, j.Most)
		}
		// An open side is judged by the other.
		want := c.finding
		for _, b := range []quantity.Band{{Form: quantity.Max, High: torque, Unit: newtonMeter}, {Form: quantity.Min, Low: torque, Unit: newtonMeter}} {
			if one, ok := JudgeTorque(b, Clamp, m12, k, proof); !ok || one.Finding != want {
				t.Errorf("%s, open to one side: finding %d, want %d", c.share, one.Finding, want)
			}
		}
		for _, s := range j.Slips {
			if again, _ := JudgeTorque(s.Meant, Clamp, m12, k, proof); again.Finding != TightOrdinary {
				t.Errorf("%s: a slip that fixes nothing", c.share)
			}
		}
	}
}
