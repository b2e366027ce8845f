package check

import (
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
)

// The fix says what a wrench must hold, and names a size where one suits.
func TestNeed(t *testing.T) {
	for _, c := range []struct{ limits, want string }{
		{"330 to 370 N·m", "add a wrench whose range holds 330 to 370 N·m, such as one of 100 to 500 N·m"},
		{"1 to 2 N·m", "add a wrench whose range holds 1 to 2 N·m, such as one of 0.4 to 2 N·m"},
		{"0.3 to 0.4 N·m", "add a wrench whose range holds 0.3 to 0.4 N·m, such as one of 0.1 to 0.5 N·m"},
		{"400 ±20 N·m", "add a wrench whose range holds 380 to 420 N·m, such as one of 100 to 500 N·m"},
		{"10.1 to 10.2 N·m", "add a wrench whose range holds 10.1 to 10.2 N·m, with graduations of 0.1 N·m or finer, such as one of 4 to 20 N·m"},
		{"0.2 to 2 N·m", "add a wrench whose range holds 0.2 to 2 N·m"},
		{"-2 to 0 N·m", ""}, // it is no torque, which is the message
		{"max 2 N·m", "add a wrench that holds max 2 N·m to the shop"},
	} {
		text := testFront + "### Turn\n\n```torque\nfastener: pinion-nut\nlimits: " + c.limits + "\nsource: m\n```\n"
		m := cardOf(t, testShop, text, "")
		list := &diag.List{}
		wrenches(&pass{Card: m.card, msgs: list})
		got := ""
		for _, d := range list.Sorted() {
			if d.Slug == "wrench-none" {
				got += strings.ReplaceAll(d.Fix, "\u00a0", " ")
			}
		}
		if got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.limits, got, c.want)
		}
	}
}
