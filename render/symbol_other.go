package render

// otherSymbols are prohibitions, the stop octagon and the safety alert.
var otherSymbols = map[string]symbol{
	"P003": {"no open flame", prohibition, `
		fill B 468 560 64 300 0
		fill M 500 530 C 420 530 390 470 410 400 C 425 350 480 320 480 180 C 560 240 600 330 605 400 C 608 470 570 530 500 530 Z`},

	"P028": {"no gloves", prohibition, `
		line84 M 330 500 L 320 330 M 435 480 L 430 225 M 540 480 L 545 225 M 640 500 L 655 320
		fill M 288 490 L 682 490 L 690 600 L 660 690 L 310 690 Z
		line92 M 640 620 L 800 470
		fill B 300 728 370 110 20`},

	"stop": {"stop", octagon, `
		line62 M 262 425 C 250 370 130 370 130 435 C 130 500 265 490 265 560 C 265 630 135 630 122 572
		line62 M 315 388 L 485 388 M 400 388 L 400 615
		line62 E 592 500 82 115
		line62 M 728 615 L 728 388 L 800 388 C 900 388 900 520 800 520 L 728 520`},

	"alert": {"safety alert", warning, exclamation},

	"alert-danger":  {"safety alert on DANGER", alertDanger, exclamationHole},
	"alert-warning": {"safety alert on WARNING", alertWarning, exclamationHole},
	"alert-caution": {"safety alert on CAUTION", alertCaution, exclamationHole},
}

const (
	exclamation = `
		fill M 435 375 C 435 300 565 300 565 375 L 538 650 C 533 695 467 695 462 650 Z
		fill O 500 770 64`
	exclamationHole = `
		hole M 435 375 C 435 300 565 300 565 375 L 538 650 C 533 695 467 695 462 650 Z
		hole O 500 770 64`
)
