package render

// head is a face from the front with its shoulders, for what is worn on it.
const head = `
		fill E 500 400 178 225
		fill M 150 850 C 170 720 300 690 410 660 L 410 560 L 590 560 L 590 660 C 700 690 830 720 850 850 C 640 1030 360 1030 150 850 Z`

// mandatorySymbols are blue discs.
var mandatorySymbols = map[string]symbol{
	"M001": {"general mandatory action", mandatory, `
		fill M 415 230 C 415 120 585 120 585 230 L 552 600 C 546 660 454 660 448 600 Z
		fill O 500 780 85`},

	"M002": {"read the manual", mandatory, `
		fill O 500 235 105
		fill M 250 560 C 250 420 340 370 500 370 C 660 370 750 420 750 560 L 750 700 L 250 700 Z
		gap36 M 500 560 L 200 490 L 200 790 L 500 860 L 800 790 L 800 490 Z
		fill M 500 560 L 200 490 L 200 790 L 500 860 L 800 790 L 800 490 Z
		gap30 M 500 560 L 500 860
		gap26 M 260 580 L 440 622 M 260 650 L 440 692 M 260 720 L 440 762
		gap26 M 740 580 L 560 622 M 740 650 L 560 692 M 740 720 L 560 762`},

	"M003": {"wear ear protection", mandatory, head + `
		gap90 M 290 400 C 270 90 730 90 710 400
		line44 M 290 400 C 270 90 730 90 710 400
		gap40 B 235 310 110 200 50
		fill B 235 310 110 200 50
		gap40 B 655 310 110 200 50
		fill B 655 310 110 200 50`},

	"M004": {"wear eye protection", mandatory, head + `
		gap40 M 300 370 L 700 370
		gap30 B 345 320 140 110 45
		hole B 345 320 140 110 45
		gap30 B 515 320 140 110 45
		hole B 515 320 140 110 45`},

	"M008": {"wear safety footwear", mandatory, `
		fill M 300 190 L 560 190 L 560 480 C 620 560 800 560 820 690 L 820 710 L 300 710 Z
		fill M 290 745 L 825 745 L 825 800 L 480 800 L 480 775 L 450 800 L 290 800 Z
		gap24 M 430 300 L 560 300 M 440 370 L 560 370 M 450 440 L 560 440`},

	"M009": {"wear protective gloves", mandatory, `
		line84 M 330 500 L 320 330 M 435 480 L 430 225 M 540 480 L 545 225 M 640 500 L 655 320
		fill M 288 490 L 682 490 L 690 600 L 660 690 L 310 690 Z
		line92 M 640 620 L 800 470
		fill B 300 728 370 110 20`},

	"M013": {"wear a face shield", mandatory, head + `
		gap40 M 290 290 L 710 290 L 700 560 C 690 690 310 690 300 560 Z
		fill M 290 290 L 710 290 L 700 560 C 690 690 310 690 300 560 Z
		gap26 B 285 225 430 75 20
		fill B 285 225 430 75 20`},

	"M014": {"wear head protection", mandatory, head + `
		hole M 215 390 L 785 390 L 785 320 L 215 320 Z
		gap60 M 275 320 C 275 60 725 60 725 320 L 790 320 L 790 365 L 210 365 L 210 320 Z
		fill M 275 320 C 275 60 725 60 725 320 L 790 320 L 790 365 L 210 365 L 210 320 Z
		gap26 M 450 130 L 450 300 M 550 130 L 550 300`},

	"M016": {"wear a mask", mandatory, head + `
		gap24 M 325 400 L 400 470 M 675 400 L 600 470 M 340 540 L 400 560 M 660 540 L 600 560
		gap30 M 500 400 C 590 420 640 450 640 500 C 640 590 590 630 500 640 C 410 630 360 590 360 500 C 360 450 410 420 500 400 Z`},

	"M017": {"wear a respirator", mandatory, head + `
		gap30 M 500 400 C 580 420 620 480 600 560 C 580 640 420 640 400 560 C 380 480 420 420 500 400 Z
		gap36 O 330 580 95
		fill O 330 580 95
		gap36 O 670 580 95
		fill O 670 580 95`},

	"M021": {"disconnect before working on it", mandatory, `
		line60 M 120 620 L 300 620
		fill M 280 500 L 400 500 C 440 500 460 530 460 560 L 460 680 C 460 710 440 740 400 740 L 280 740 Z`},
}
