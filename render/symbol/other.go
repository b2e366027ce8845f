package symbol

// otherSymbols are prohibitions, the stop octagon and the safety alert.
var otherSymbols = map[string]symbol{
	"P003": {"no open flame", prohibition, `
		line62 M 290 770 L 570 475
		fill M 590 500 C 510 500 465 435 495 365 C 512 320 580 290 575 160 C 660 220 705 305 705 380 C 705 450 665 500 590 500 Z
		hole M 592 490 C 548 485 535 448 552 412 C 566 385 588 372 592 325 C 630 365 648 402 642 435 C 637 468 622 488 592 490 Z`},

	"P028": {"no gloves", prohibition, `
		line71 M 332 492 L 323 349 M 420 475 L 416 261 M 508 475 L 512 261 M 592 492 L 605 341
		fill M 297 484 L 627 484 L 634 576 L 609 652 L 315 652 Z
		line77 M 592 593 L 727 467
		fill B 307 684 311 92 17`},

	"stop": {"stop", octagon, `
		line54 M 240 428 C 228 375 122 378 122 437 C 122 500 240 492 240 560 C 240 622 126 622 114 570
		line54 M 313 390 L 439 390 M 376 390 L 376 610
		line54 E 590 500 73 111
		line54 M 743 610 L 743 390 L 796 390 C 895 390 895 515 796 515 L 743 515`},

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
