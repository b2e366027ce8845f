package hazard

import (
	"strings"
	"testing"
)

// Sentences as procedures hold them; the words that imply stand between « ».
var sentences = []struct{ text, ids string }{
	{"«Warm» the bore with a «torch».", "hot flame"},
	{"Play the «gas flame» round the boss.", "flame"},
	{"Put the race in the «oven» for 20 minutes.", "hot"},
	{"«Heat» the housing to 100 °C.", "hot"},
	{"When the hub is «heated» to 90 °C, lift it off.", "hot"},
	{"Do not «heat» the housing above 120 °C.", "hot"},
	{"Hang the «hot» gear bearing on the hook.", "hot"},
	{"Leave the race in the «freezer» overnight.", "cold"},
	{"«Chill» the pin for one hour.", "cold"},
	{"Pack the race in «dry ice».", "dry-ice"},
	{"Pour the «liquid nitrogen» over it.", "dry-ice"},
	{"«Press» the race out of the housing.", "press"},
	{"«Press» the new bearing home.", "press"},
	{"«Press in» the seal.", "press"},
	{"Set the shaft up in the «arbor press».", "press"},
	{"Put the housing under the «press».", "press"},
	{"Draw the bearing with the two-jaw «puller».", "press"},
	{"Turn the «push screw».", "press"},
	{"The race is «pressed into» the cover.", "press"},
	{"Draw the race with the «slide hammer».", "slide-hammer"},
	{"Tap the race home with a brass «drift».", "strike"},
	{"Tap it with a «hammer».", "strike"},
	{"«Drive» the dowel out from the back.", "strike"},
	{"Turn the shaft, then «knock» the pin through.", "strike"},
	{"«Stake» the nut collar into the slot.", "strike"},
	{"Take the «snap ring» out of its groove.", "ring"},
	{"Open the «circlip».", "ring"},
	{"«Compress the return spring».", "ring"},
	{"«Blow out» the oil way with compressed air.", "air-clean"},
	{"«Blow» the threads dry.", "air-clean"},
	{"Dry the bearing with «air».", "air-bearing"},
	{"Use «compressed air» to dry the rollers.", "air-bearing"},
	{"Wash the parts in «solvent».", "solvent"},
	{"«Degrease» the threads.", "solvent"},
	{"Wipe the face with «brake cleaner».", "solvent"},
	{"«Drain the gear oil» into the drum.", "oil"},
	{"«Drain the drive».", "oil"},
	{"«Run the drive» at no load.", "turning"},
	{"Hold it at «300 rpm».", "turning"},
	{"«Start the rig».", "turning"},
	{"«Pressurize» the case to 20 kPa.", "air-test"},
	{"«Leak-test» the case.", "air-test"},
	{"Take the weight on the «hoist».", "hanging"},
	{"Put the «sling» round the neck.", "hanging"},
	{"Cut a new shim from «shim stock».", "sharp"},
	{"Stone off the «burrs».", "sharp"},
	{"«Roll the gears» through one turn.", "mesh"},
	{"«Turn» the pinion round by hand.", "mesh"},
	{"Fit the «breaker bar».", "bar"},
	{"«Pry» the cover up at the two lugs.", "bar"},
	{"«Lever» the cover off.", "bar"},
	{"Put two drops of «threadlocker» on the bolts.", "chemical"},
	{"Run a bead of «sealant» round the face.", "chemical"},
	{"«DRY ICE» IS DELIVERED ON MONDAYS.", "dry-ice"},
	{"Put the race in the «oven» and the pin in the «freezer».", "hot cold"},
	{"Take the «snap ring» out, then «press» the shaft out.", "ring press"},

	// Nothing is implied.
	{"", ""},
	{"Press the button.", ""},
	{"Press and hold the green start button for 3 s.", ""},
	{"Press the zero key of the indicator.", ""},
	{"Press the seal in with both thumbs.", ""},
	{"Press the O-ring into its groove by hand.", ""},
	{"Second-year apprentice; press work supervised.", ""},
	{"Check the press fit of the race.", ""},
	{"Look for colours of heat treatment.", ""},
	{"The gear is flame-hardened.", ""},
	{"Look into the bore with a pocket torch.", ""},
	{"Stamp the pack's thickness on the tag.", ""},
	{"Torque the nut.", ""},
	{"Turn the pinion five turns with the cord and the spring scale.", ""},
	{"Lift the cartridge out.", ""},
	{"Take the pinion pusher apart.", ""},
	{"Wipe the thread of the push screw.", ""},
	{"Turn the drive by hand.", ""},
	{"Bolt the drive to the test rig.", ""},
	{"Look for punch marks beside the slot.", ""},
	{"If the zero drifts, set it again.", ""},
	{"Listen for a knock.", ""},
	{"The drive stands in the bench fixture.", ""},
	{"Put the thinner shim between the thick ones.", ""},
	{"Do not use a torch.", ""},
	{"Never dry a bearing with compressed air.", ""},
	{"Do not strike the race; push it by hand.", ""},
	{"Keep flames away.", ""},
	{"Tap the race home with a rubber mallet.", ""},
	{"Expressed in newton metres, the impression is small.", ""},
	{"Hammerfest and Ovenden are towns.", ""},
	{"Peel off the old sealant.", ""},
	{"Spring scale, 0 to 100 N.", ""},
	{"Check the snap ring groove for wear.", ""},
	{"Work until the shaft runs free.", ""},
	{"Bar chart.", ""},
}

func plain(marked string) string { return strings.NewReplacer("«", "", "»", "").Replace(marked) }

func TestImplied(t *testing.T) {
	for _, c := range sentences {
		plain := plain(c.text)
		got := Implied(plain)
		ids := strings.Fields(c.ids)
		if len(got) != len(ids) {
			t.Errorf("%q implies %q, want %q", plain, slugs(got), c.ids)
			continue
		}
		rest, offset := c.text, 0
		for i, m := range got {
			before, after, _ := strings.Cut(rest, "«")
			marked, tail, _ := strings.Cut(after, "»")
			start := offset + len(before)
			end := start + len(marked)
			rest, offset = tail, end
			if m.ID != ids[i] || m.Start != start || m.End != end {
				t.Errorf("%q: %s at %q, want %s at %q", plain, m.ID, plain[m.Start:m.End], ids[i], plain[start:end])
			}
		}
	}
}

// A hazard is named once a text, at its first word.
func TestImpliedOnce(t *testing.T) {
	got := Implied("Use the puller. Then set the puller aside. Press the race home.")
	if slugs(got) != "press" || got[0].Start != 8 {
		t.Errorf("got %v", got)
	}
}

// Every pattern belongs to a row, and every row has words but the one that a
// part's mass implies.
func TestCauses(t *testing.T) {
	have := map[string]bool{}
	for _, c := range causes {
		if _, ok := Find(c.id); !ok {
			t.Errorf("words for %s, which is no row", c.id)
		}
		have[c.id] = true
	}
	for _, id := range IDs() {
		if have[id] == (id == "lift") {
			t.Errorf("%s: words %v", id, have[id])
		}
	}
}

// passedOver returns words that imply a hazard and hold none of its stems.
func passedOver(text string) (id, words string) {
	text = lower(text)
	for i, c := range causes {
		for _, w := range compiled()[i].words.FindAllString(text, -1) {
			if !holdsAny(w, c.stems) {
				return c.id, w
			}
		}
	}
	for _, w := range prohibition().FindAllString(text, -1) {
		if !holdsAny(w, forbids) {
			return "a prohibition", w
		}
	}
	return "", ""
}

// The stems, which are there for speed, hide no words of the list.
func TestStems(t *testing.T) {
	for _, c := range sentences {
		if id, w := passedOver(plain(c.text)); id != "" {
			t.Errorf("%s: %q holds none of the stems", id, w)
		}
	}
}

// Offsets stay inside the text and on its bytes, whatever it holds.
func FuzzImplied(f *testing.F) {
	f.Add("Put the race in the oven — 90 °C, \u2028never by torch")
	f.Add("||press the|torch\x00\xff hammer")
	for _, c := range sentences {
		f.Add(plain(c.text))
	}
	f.Fuzz(func(t *testing.T, text string) {
		if id, w := passedOver(text); id != "" {
			t.Fatalf("%s: %q holds none of the stems", id, w)
		}
		for _, m := range Implied(text) {
			if m.Start < 0 || m.End > len(text) || m.Start >= m.End {
				t.Fatalf("%q: match %v", text, m)
			}
		}
	})
}

// A step in which nothing is implied, though it holds some of the stems.
func BenchmarkImplied(b *testing.B) {
	text := "Wipe the four slots of the ring retainer. Set the four-lug socket square in the slots. " +
		"Turn the retainer until it is free, then unscrew it by hand and put it in tray 2. Look for bruised slots."
	for b.Loop() {
		Implied(text)
	}
}
