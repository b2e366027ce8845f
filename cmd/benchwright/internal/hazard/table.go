package hazard

// table is every hazard that a tool, a block or a word can imply. The comment
// over a row names where its measures come from. Air pressure is converted
// inward: 30 psi is 206.8 kPa, so the metric figure is 206.
var table = []Hazard{
	// 29 CFR 1910.252(a), fire prevention and fire watch; closed cavities,
	// cleaners and bearings: common practice.
	{
		ID: "flame", Name: "Torch", Signal: Warning,
		Symbols: []string{"W017", "W021", "W016", "M009", "M013"},
		Hazard:  "A torch lights oil and solvent, heats closed cavities and makes poison fumes.",
		Result:  "Burns, fire, poisoning.",
		Avoid: []string{
			"Degrease with a chlorine-free cleaner and let it dry.",
			"Take seals, O-rings and paint out of the heat.",
			"Vent every closed cavity.",
			"Never put a flame on a bearing.",
			"Keep an extinguisher at hand.",
			"Watch for fire for 30 minutes after the last flame.",
		},
		Rule: "29 CFR 1910.252(a)",
	},
	// Common practice; the pacemaker warning is the one that makers of
	// induction heaters give.
	{
		ID: "hot", Name: "Hot parts", Signal: Warning,
		Symbols: []string{"W017", "M009"},
		Hazard:  "Parts from an oven, hot plate, induction heater or hot-air gun look cold.",
		Result:  "Burns.",
		Avoid: []string{
			"Wear dry heat-proof gloves.",
			"Mark the part HOT.",
			"Keep people with a pacemaker away from an induction heater.",
		},
	},
	// Common practice.
	{
		ID: "cold", Name: "Chilled parts", Signal: Warning,
		Symbols: []string{"W010", "M009", "M004"},
		Hazard:  "A chilled part freezes to skin, and ice cracks off it.",
		Result:  "Cold burns, ice in the eyes.",
		Avoid: []string{
			"Wear dry insulated gloves.",
			"Wear eye protection.",
			"Wipe off the frost.",
			"Oil the part at once.",
		},
	},
	// Common practice.
	{
		ID: "dry-ice", Name: "Dry ice and liquid nitrogen", Signal: Warning,
		Symbols: []string{"W010", "M009", "M004"},
		Hazard:  "Dry ice and liquid nitrogen drive out the air, freeze skin and burst closed vessels.",
		Result:  "Suffocation, cold burns, flying pieces.",
		Avoid: []string{
			"Open the doors before you start.",
			"Never use it in a closed room.",
			"Never close the vessel.",
			"Wear insulated gloves and eye protection.",
		},
	},
	// 29 CFR 1910.212, guarding of machines.
	{
		ID: "press", Name: "Press and puller", Signal: Warning,
		Symbols: []string{"W019", "W024", "M004"},
		Hazard:  "Parts under a press or a puller can burst or fly out.",
		Result:  "Crushed hands, metal in the eyes.",
		Avoid: []string{
			"Support the part square.",
			"Fit the guard.",
			"Stand to one side.",
			"Release the load before you touch anything.",
		},
		Rule: "29 CFR 1910.212",
	},
	// 29 CFR 1910.242(a), hand tools in safe condition and use.
	{
		ID: "slide-hammer", Name: "Slide hammer", Signal: Warning,
		Symbols: []string{"W024", "M004"},
		Hazard:  "The weight of a slide hammer runs into its stop.",
		Result:  "Pinched or crushed hand.",
		Avoid: []string{
			"Put one hand around the middle of the weight.",
			"Keep the other hand clear of the rod and the stop.",
			"Wear eye protection.",
		},
		Rule: "29 CFR 1910.242(a)",
	},
	// 29 CFR 1910.133, eye protection; the choice of hammer: common practice.
	{
		ID: "strike", Name: "Striking hardened parts", Signal: Warning,
		Symbols: []string{"M004"},
		Hazard:  "Hardened steel chips when it is struck.",
		Result:  "Steel chips in the eyes.",
		Avoid: []string{
			"Wear eye protection.",
			"Use a soft drift or a dead-blow hammer.",
			"Never strike a race or a gear with steel.",
		},
		Rule: "29 CFR 1910.133",
	},
	// Common practice.
	{
		ID: "ring", Name: "Snap rings and springs", Signal: Warning,
		Symbols: []string{"M004"},
		Hazard:  "A snap ring or a spring under load can fly off.",
		Result:  "Eye injury.",
		Avoid: []string{
			"Wear eye protection.",
			"Use the pliers that fit the ring.",
			"Hold your other hand over the ring.",
			"Keep your face to one side.",
		},
	},
	// 23 kg is the load constant, for ideal conditions, of the Applications
	// Manual for the Revised NIOSH Lifting Equation, NIOSH 94-110, 1994.
	{
		ID: "lift", Name: "Lifting", Signal: Warning,
		Symbols: []string{"W015"},
		Hazard:  "A heavy part strains the back and can drop.",
		Result:  "Back injury, crushed feet.",
		Avoid: []string{
			"Read the mass before you lift.",
			"Above 23 kg or the shop's lower limit, use a hoist or a second person.",
		},
		Rule: "NIOSH lifting equation",
	},
	// 29 CFR 1910.242(b): less than 30 psi, chip guard, protective equipment.
	{
		ID: "air-clean", Name: "Compressed air", Signal: Warning,
		Symbols: []string{"M004"},
		Hazard:  "Compressed air throws chips, and it goes through skin.",
		Result:  "Eye injury, air in the blood.",
		Avoid: []string{
			"Wear eye protection.",
			"Keep the air below 206 kPa (30 psi).",
			"Use a nozzle with a chip guard.",
			"Never point the air at skin.",
		},
		Rule: "29 CFR 1910.242(b)",
	},
	// Common practice.
	{
		ID: "air-bearing", Name: "Air on a bearing", Signal: Warning,
		Symbols: []string{"M004"},
		Hazard:  "A bearing that is spun with air bursts and throws its rollers.",
		Result:  "Rollers in the face and eyes.",
		Avoid: []string{
			"Let the bearing drip dry.",
			"Hold both rings still.",
			"Never spin a bearing with air.",
		},
	},
	// 29 CFR 1910.1200, the data sheet and its flash point.
	{
		ID: "solvent", Name: "Solvent", Signal: Warning,
		Symbols: []string{"W021", "M009", "M004"},
		Hazard:  "Solvent burns, and its vapor fills a closed space.",
		Result:  "Fire, dizziness, damaged skin and eyes.",
		Avoid: []string{
			"Open the doors or run the fan.",
			"Keep flames and sparks away.",
			"Wear gloves and eye protection.",
			"Read the flash point on the data sheet.",
		},
		Rule: "29 CFR 1910.1200",
	},
	// 40 CFR 279, used oil and its drums.
	{
		ID: "oil", Name: "Used oil", Signal: Caution,
		Symbols: []string{"W011", "M009"},
		Hazard:  "Used oil harms skin and makes the floor slippery.",
		Result:  "Skin disease, falls.",
		Avoid: []string{
			"Wear gloves.",
			"Wipe up spills at once.",
			"Put the oil into the labeled drum.",
		},
		Rule: "40 CFR 279",
	},
	// 29 CFR 1910.147, lock-out before hands go in.
	{
		ID: "turning", Name: "Turning shaft", Signal: Danger,
		Symbols: []string{"W089", "P028", "M021"},
		Hazard:  "A turning shaft takes hold of gloves, sleeves and hair.",
		Result:  "Loss of a hand, death.",
		Avoid: []string{
			"Keep the guard shut.",
			"Take your gloves off.",
			"Tie back hair and sleeves.",
			"Lock the rig off before you touch it.",
		},
		Rule: "29 CFR 1910.147",
	},
	// Common practice.
	{
		ID: "air-test", Name: "Pressure test with air", Signal: Warning,
		Symbols: []string{"W029", "M004"},
		Hazard:  "Air under pressure can shoot out a seal or a plug.",
		Result:  "Eye injury, broken bones.",
		Avoid: []string{
			"Use a regulator and a relief valve.",
			"Never go above the highest pressure on this card.",
			"Stand clear of seals and plugs.",
			"Vent the unit before you loosen anything.",
		},
	},
	// 29 CFR 1910.184, slings.
	{
		ID: "hanging", Name: "Suspended load", Signal: Warning,
		Symbols: []string{"W015", "M008", "M014"},
		Hazard:  "A suspended load can drop or swing.",
		Result:  "Crushed feet, head injury, death.",
		Avoid: []string{
			"Use a rated sling.",
			"Never stand under the load.",
			"Keep everybody else away.",
		},
		Rule: "29 CFR 1910.184",
	},
	// Common practice.
	{
		ID: "sharp", Name: "Sharp edges", Signal: Caution,
		Symbols: []string{"W022", "M009"},
		Hazard:  "Shim stock and burrs are sharp.",
		Result:  "Cut fingers.",
		Avoid: []string{
			"Wear gloves.",
			"Deburr the edges.",
			"Never run a finger along an edge.",
		},
	},
	// Common practice.
	{
		ID: "mesh", Name: "Gears turned by hand", Signal: Warning,
		Symbols: []string{"W024"},
		Hazard:  "Turning gears draw fingers into the mesh.",
		Result:  "Crushed fingers.",
		Avoid: []string{
			"Turn from the shaft end.",
			"Keep other people's hands out.",
		},
	},
	// Common practice.
	{
		ID: "bar", Name: "Bars and holders", Signal: Warning,
		Symbols: []string{"W024", "M004"},
		Hazard:  "A bar or a holder under load can swing or slip.",
		Result:  "Crushed hands, broken fingers, eye injury.",
		Avoid: []string{
			"Put the holder against a solid stop.",
			"Pull the bar, never push it.",
			"Never put a pipe on a torque wrench.",
		},
	},
	// 29 CFR 1910.1200, the data sheet.
	{
		ID: "chemical", Name: "Threadlocker and sealant", Signal: Caution,
		Symbols: []string{"M009"},
		Hazard:  "Threadlocker and sealant can make skin allergic for life.",
		Result:  "Skin allergy.",
		Avoid: []string{
			"Wear gloves.",
			"Read the data sheet.",
		},
		Rule: "29 CFR 1910.1200",
	},
}
