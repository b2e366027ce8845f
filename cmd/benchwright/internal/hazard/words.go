package hazard

// A cause is the words that imply one hazard. A narrower cause stands before a
// wider one, whose words it takes: a slide hammer is no hammer.
//
// Patterns are regular expressions in a shorthand: a blank is any white space,
// "-" a hyphen, a blank or nothing, THE what stands before a noun, FEW up to
// two words of the sentence, SOME up to five. They match whole words of a
// text in lower case. What implies is the first group, or else all of it.
type cause struct {
	id    string
	stems []string // letters of which a text holds at least one, or it is passed over
	words []string
	not   []string // phrases that hold such words and mean something else
}

var causes = []cause{
	{
		id:    "slide-hammer",
		stems: []string{"hammer"},
		words: []string{`(?:slide|sliding|slap)-hammers?`},
	},
	{
		id:    "dry-ice",
		stems: []string{"ice", "liquid", "snow"},
		words: []string{
			`dry-ice`,
			`liquid-(?:nitrogen|air)`,
			`(?:co2|co₂|carbon-dioxide) snow`,
		},
	},
	{
		id:    "air-bearing",
		stems: []string{"air", "blow"},
		words: []string{
			`(compressed-air|shop-air|air-(?:gun|line|hose|nozzle)|blow(?:s|ing)?)[^.;!?|]*\b(?:bearings?|rollers?)`,
			`(?:bearings?|rollers?)\b[^.;!?|]*\bwith ((?:compressed-|shop-)?air(?:-(?:gun|line|hose|nozzle))?)`,
		},
		not: []string{
			`bearing-(?:bores?|housings?|seats?|caps?|carriers?|retainers?|pockets?|nuts?|covers?)`,
			`dead-blow`,
		},
	},
	{
		id:    "air-clean",
		stems: []string{"air", "blow", "blew"},
		words: []string{
			`(?:compressed|shop)-air`,
			`air-(?:gun|line|hose|nozzle)s?`,
			`blow-guns?`,
			`bl(?:ow|ows|ew|own|owing) (?:out|off|through|away|clear|clean|dry)`,
			`(blow(?:s|ing)?) (?:THESOME|it |them )(?:out|off|clear|clean|dry)`,
		},
		not: []string{`dead-blow`},
	},
	{
		id:    "air-test",
		stems: []string{"press", "leak"},
		words: []string{
			`(?:pressure|leak)-test(?:s|ed|ing)?`,
			`pressuri[sz](?:e|es|ed|ing)`,
			`air-pressure`,
		},
	},
	{
		id:    "flame",
		stems: []string{"torch", "oxy", "burner", "flame"},
		words: []string{
			`(?:blow-?|gas-|propane-|oxy-?acetylene-|heating-)?torch(?:es|ed|ing)?`,
			`oxy-(?:acetylene|propane)`,
			`(?:gas|propane)-burners?`,
			`(?:open |naked |gas )?flames?`,
		},
		not: []string{
			`(?:pocket|hand|led|electric|inspection|pen)-torch(?:es)?`,
			`torch-light`,
			`flame-(?:harden(?:ed|ing|s)?|proof|arresters?|cut)`,
			`no (?:open |naked )?flames?|keep (?:open |naked )?flames?`,
		},
	},
	{
		id:    "hot",
		stems: []string{"oven", "hot", "heat", "warm"},
		words: []string{
			`ovens?`,
			`hot-plates?`,
			`hot-air`,
			`heat-guns?`,
			`(?:bearing|induction)-heaters?`,
			`(heat|heats|heating|warm|warms|warming) (?:THE|it |them |up )`,
			`(heated) (?:to|up|in|on)`,
			`(hot) FEW(?:parts?|bearings?|housings?|races?|gears?|rings?|hubs?|metal|oil|surfaces?|cones?|covers?)`,
			`(?:is|are|still|while|when|once) (hot)`,
		},
		not: []string{
			`heat-treat(?:ed|ing|ment|ments|s)?`,
			`heat-(?:proof|resistant|shields?|sinks?|checks?|marks?|numbers?)`,
			`hot-(?:rolled|forged|dip|dipped|worked)`,
		},
	},
	{
		id:    "cold",
		stems: []string{"freez", "chill"},
		words: []string{
			`(?:deep-)?freezers?`,
			`(freez(?:e|es|ing)) (?:THE|it |them )`,
			`freez(?:e|er|ing)-spray`,
			`(chill(?:s|ed|ing)?) (?:THE|it |them |to |in )`,
			`chilled`,
		},
		not: []string{
			`chilled-(?:cast-)?iron`,
			`anti-freeze`,
		},
	},
	{
		id:    "press",
		stems: []string{"press", "puller", "push", "forcing", "jack", "separator", "splitter"},
		words: []string{
			`(?:arbou?r|hydraulic|bench|shop|screw|bearing|wheel|hand)-press(?:es)?`,
			`(?:in|into|on|under|with|by|of|at) (?:the|a|an|your) ((?:\pL+-)?press)`,
			`press-(?:ram|bed|table|gauge|plates?|tools?)`,
			`press(?:es|ed|ing)? (?:out|in|into|on|onto|off|home|apart|together|through)`,
			`(press(?:es|ing)?) (?:THESOME|it |them )(?:out|in|into|on|onto|off|home|apart|together|from|through)`,
			`pullers?`,
			`(?:turn|tighten|wind|run) (?:up )?THE((?:push|forcing|jacking|jack)-screws?)`,
			`bearing-(?:separators?|splitters?)`,
		},
		not: []string{
			`drill-press(?:es)?|press-brakes?`,
			`press-work|press-fit(?:s|ted)?`,
			`puller-(?:grooves?|holes?|threads?|slots?)`,
			`press(?:es|ed|ing)? (?:and hold )?(?:THE)?FEW(?:buttons?|switch(?:es)?|keys?|pedals?|levers?|triggers?|plungers?|knobs?|start|stop|reset|zero)`,
			`press(?:es|ed|ing)? (?:THE|it |them )?SOME(?:by hand|(?:your |both |a |two )?(?:thumbs?|fingers?|fingertips?|palms?))`,
			`(?:by hand|with (?:your |both |a |two )?(?:thumbs?|fingers?)), press`,
		},
	},
	{
		id:    "ring",
		stems: []string{"snap", "retaining", "clip", "spring"},
		words: []string{
			`(?:snap|retaining)-rings?`,
			`circlips?`,
			`(?:compress|release|unhook|unload|stretch)(?:es|s|ed|ing)? (?:THE)?FEWsprings?`,
		},
		not: []string{`(?:snap-ring|circlip|retaining-ring)-(?:grooves?|slots?|lands?|shoulders?)`},
	},
	{
		id:    "bar",
		stems: []string{"bar", "lever", "multiplier", "pry", "pri"},
		words: []string{
			`(?:breaker|holding|reaction|cheater|pinch|pry)-bars?`,
			`torque-multipliers?`,
			`(?:tyre|tire|pry)-levers?`,
			`pr(?:y|ies|ied|ying)`,
			`(pris(?:e|es|ed|ing)) (?:THE|it |them |out |off |up |apart )`,
			`(lever(?:s|ed|ing)?) (?:THESOME|it |them )(?:out|off|up|apart|away)`,
		},
	},
	{
		id:    "strike",
		stems: []string{"hammer", "drift", "chisel", "punch", "strik", "stak", "driv", "knock"},
		words: []string{
			`(?:sledge|ball-pein|steel|copper|brass)-hammers?`,
			`hammer(?:s|ed|ing)?`,
			`(?:a|the|your|soft|brass|bronze|copper|alumini?um|steel) (drifts?)`,
			`(drift(?:s|ed|ing)?) (?:THE|it |them |out )`,
			`chisel(?:s|led|ed|ling|ing)?`,
			`(?:pin|drift|cent(?:re|er)|prick|taper|staking)-punch(?:es)?`,
			`(strik(?:e|es|ing)) (?:THE|it |them |on )`,
			`(stak(?:e|es|ing)) (?:THE|it |them )`,
			`(?:^|[.;:,|] |then |and )(driv(?:e|es|ing)|knock(?:s|ed|ing)?) (?:THESOME|it |them )(?:out|in|into|on|onto|off|home|through|from)`,
		},
		not: []string{
			`(?:punch|hammer|chisel)-marks?|hammer-(?:finish|action)`,
			`(?:rubber|plastic|nylon|rawhide|wooden|soft-?faced?|dead-blow) (?:hammer|mallet)s?`,
			`drift (?:of|in|from) `,
		},
	},
	{
		id:    "hanging",
		stems: []string{"hoist", "crane", "sling", "chain"},
		words: []string{
			`(?:chain-|lever-)?hoist(?:s|ed|ing)?`,
			`(?:engine-|jib-)?cranes?`,
			`slings?`,
			`chain-(?:falls?|blocks?)`,
		},
		not: []string{`oil-slings?`},
	},
	{
		id:    "turning",
		stems: []string{"power", "start", "turn", "switch", "/min", "rpm", "run", "motor", "machine", "engine"},
		words: []string{
			`under power`,
			`\d+-(?:rpm|r/min|rev/min)`,
			`(?:run|runs|running) (?:in )?THEFEW(?:drive|motor|rig|unit|gearbox|gears|shaft|machine|engine|pump)`,
			`(?:start|starts|starting) THEFEW(?:motor|rig|machine|engine)`,
			`(?:switch|turn) (?:on )?(?:the )?FEW(?:motor|rig|machine)(?: on)?`,
		},
		not: []string{`(?:rated|limited|geared|marked) (?:for|at|to|as) \d+-(?:rpm|r/min|rev/min)`},
	},
	{
		id:    "mesh",
		stems: []string{"gears", "train", "mesh", "hand"},
		words: []string{
			`(?:turn|rotat|roll|spin|work)(?:s|e|es|ing|ning)? (?:THE)?FEW(?:gears|gear-train|mesh)`,
			`((?:turn|rotat|roll|spin)(?:s|e|es|ing|ning)?) (?:THE)?FEW(?:gear|pinion) SOMEby hand`,
		},
	},
	{
		id: "solvent",
		stems: []string{"solvent", "acetone", "brake", "spirit", "naphtha", "kerosene", "paraffin",
			"petrol", "gasoline", "thinner", "degreas", "isoprop"},
		words: []string{
			`solvents?`,
			`acetone`,
			`brake-clean(?:er)?`,
			`(?:mineral|white|methylated)-spirits?`,
			`naphtha`,
			`kerosene`,
			`paraffin oil`,
			`petrol|gasoline`,
			`(?:paint|lacquer)-thinners?`,
			`degreas(?:e|es|ed|er|ers|ing)`,
			`isopropyl(?:-alcohol)?|isopropanol`,
		},
		not: []string{
			`solvent-(?:proof|resistant|free)`,
			`water-based (?:degreasers?|cleaners?)`,
		},
	},
	{
		id:    "oil",
		stems: []string{"oil", "drain"},
		words: []string{
			`(?:used|old|waste|dirty|spent) (?:gear-|drain-)?oil`,
			`drain(?:s|ing)? (?:off )?(?:the |all )?FEW(?:oil|sump|lubricant)`,
			`drain(?:s|ing)? THE(?:drive|gearbox|case|unit|hub|housing)`,
			`spilled oil|oil spills?`,
		},
		not: []string{`used-oil (?:filters?|drums?)`},
	},
	{
		id:    "sharp",
		stems: []string{"shim", "burr", "swarf", "razor", "kni", "sharp"},
		words: []string{
			`shim-stock`,
			`burrs?`,
			`deburr(?:s|ed|ing)?`,
			`swarf`,
			`razor-blades?`,
			`(?:box-|utility-|trimming-)?kni(?:fe|ves)`,
			`sharp-edges?`,
		},
		not: []string{`burr-free|free (?:of|from) burrs?`},
	},
	{
		id:    "chemical",
		stems: []string{"lock", "retaining", "sealant", "gasket", "epoxy", "anaerobic"},
		words: []string{
			`thread-lock(?:er|ers|ing)?(?:-compound)?`,
			`retaining-compound`,
			`(?:liquid-)?sealants?`,
			`gasket-(?:maker|compound)`,
			`epoxy`,
			`anaerobic`,
		},
		not: []string{`(?:old|dry|dried|cured|dead) (?:thread-locker|sealant|epoxy)`},
	},
}

// forbidden is a command not to do a thing, to its sentence's end; within are
// the words that make it a command to do the thing, but only so far.
var forbids = []string{"not", "n't", "never", "without", "instead"}

const (
	forbidden = `(?:do not|don't|never|must not|without|instead of)[^.;!?]*`
	within    = `above|over|until|unless|before|more than|longer than|further than|past|yet`
)
