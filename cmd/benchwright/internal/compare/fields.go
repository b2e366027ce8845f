package compare

// A field says what a change in a field of a deck's content is called and what
// it means. One that is passed over says why; every field of every content
// stands here, which a test holds: a field that is forgotten would let a change
// slip through.
type field struct {
	what  string
	class Class  // "" takes that of its element: safety for technical, wording for prose
	with  string // a field that stands beside each line: the unit behind a figure
	yes   string // what is said where it is set, of one that is set or not; "yes" if left out
	whole bool   // its things are one line: their order and number matter together
	skip  string // why it is passed over; "" for a field that is compared
}

const (
	twice   = "another field says the same"
	counted = "steps and actions are numbered by themselves"
	looks   = "how it looks, not what it says"
	held    = "the identity of its element, compared there"
)

var fields = map[string]field{
	"Stage.Title": {skip: "compared with the stages"},
	"Step.Number": {skip: counted},
	"Step.Title":  {skip: "compared with the steps"},

	"Text.Role":    {skip: "a text with another role is another text"},
	"Text.Runs":    {what: "text", class: Wording},
	"List.Ordered": {skip: looks},
	"List.Items":   {what: "list", class: Wording},

	"Table.Head":   {what: "table head"},
	"Table.Rows":   {what: "table"},
	"Table.Align":  {skip: looks},
	"Table.Marked": {skip: "its rows say whether a pack stays"},
	"Table.Large":  {skip: looks},
	"Table.Fine":   {skip: looks},
	"Table.Grid":   {skip: looks},
	"Table.Ruled":  {skip: looks},
	"Table.Under":  {what: "table"},

	"Listing.Title":   {skip: held},
	"Listing.None":    {skip: "its rows say so"},
	"Listing.Columns": {skip: "fixed words"},
	"Listing.Rows":    {what: "list", class: Method},
	"Listing.Signs":   {skip: "its rows say so"},
	"Facts.Rows":      {what: "facts", class: Method},

	"Hazards.Title": {skip: held},
	"Hazards.None":  {skip: "its rows say so"},
	"Hazards.Rows":  {what: "hazard", class: Safety},

	"Callout.Signal":     {skip: twice},
	"Callout.Word":       {what: "signal word", class: Safety},
	"Callout.Symbols":    {what: "signs", class: Safety, whole: true},
	"Callout.Hazard":     {what: "hazard", class: Safety},
	"Callout.Result":     {what: "what can happen", class: Safety},
	"Callout.Avoid":      {what: "how to avoid it", class: Safety},
	"Callout.Short":      {what: "as before", class: Wording, yes: "in short, as before"},
	"Callout.AvoidFirst": {skip: looks},

	"Tools.Rows": {what: "tool", class: Method},

	"Setting.Title":    {what: "fastener", class: Safety},
	"Setting.Tools":    {what: "tool", class: Method},
	"Setting.Label":    {skip: "the figure comes with it"},
	"Setting.Value":    {what: "set", class: Safety, with: "Unit"},
	"Setting.Unit":     {skip: twice},
	"Setting.Source":   {what: "limits and source", class: Safety},
	"Setting.Passes":   {what: "passes", class: Safety, whole: true},
	"Setting.Lines":    {what: "condition", class: Safety},
	"Setting.Actions":  {what: "action", class: Safety, whole: true},
	"Setting.First":    {skip: counted},
	"Setting.Turn":     {what: "direction", class: Safety},
	"Setting.SeenFrom": {what: "seen from", class: Safety},
	"Setting.Boxes":    {what: "record", class: Method, whole: true},
	"Setting.BoxUnit":  {skip: twice},

	"Order.Shape":   {what: "layout of the fasteners", class: Safety},
	"Order.Numbers": {what: "tightening order", class: Safety, whole: true},
	"Order.Lines":   {what: "tightening order", class: Safety},

	"Reading.Title":     {what: "reading", class: Safety},
	"Reading.Tools":     {what: "gauge", class: Method},
	"Reading.Low":       {skip: twice},
	"Reading.High":      {skip: twice},
	"Reading.Label":     {what: "reading", class: Safety},
	"Reading.Value":     {what: "accept", class: Safety, with: "Unit"},
	"Reading.Unit":      {skip: twice},
	"Reading.Source":    {what: "limits and source", class: Safety},
	"Reading.Boxes":     {what: "record", class: Method, whole: true},
	"Reading.BoxUnit":   {what: "unit of measure of the record", class: Safety},
	"Reading.Use":       {what: "which reading counts", class: Safety},
	"Reading.Lines":     {what: "condition", class: Safety},
	"Reading.IfLow":     {what: "below the limits", class: Safety},
	"Reading.IfHigh":    {what: "above the limits", class: Safety},
	"Reading.LowLabel":  {skip: twice},
	"Reading.HighLabel": {skip: twice},
	"Reading.Plain":     {skip: twice},

	"Pack.Above":  {what: "pack lies between", class: Safety},
	"Pack.Below":  {what: "pack lies between", class: Safety},
	"Pack.Layers": {what: "pack", whole: true},
	"Pack.Total":  {what: "pack"},
	"Pack.Lines":  {what: "pack"},

	"Cord.Drum":  {what: "drum", class: Safety},
	"Cord.Cord":  {what: "cord", class: Safety},
	"Cord.Pull":  {what: "pull", class: Safety},
	"Cord.Lines": {what: "condition", class: Safety},

	"Hold.Title":  {skip: held},
	"Hold.Who":    {what: "who signs", class: Safety},
	"Hold.Sees":   {what: "what is seen", class: Safety},
	"Hold.Before": {what: "before what", class: Safety},
	"Hold.Boxes":  {what: "record", class: Method, whole: true},

	"Picture.Name":    {skip: "the picture itself is compared"},
	"Picture.Data":    {what: "picture", class: Method},
	"Picture.Alt":     {skip: "it is not printed"},
	"Picture.Caption": {what: "caption", class: Wording},
	"Picture.Spots":   {what: "numbers on the picture", class: Method, whole: true},

	"Contact.Title":  {what: "contact pattern", class: Safety},
	"Contact.Toe":    {skip: "fixed words"},
	"Contact.Heel":   {skip: "fixed words"},
	"Contact.Top":    {skip: "fixed words"},
	"Contact.Root":   {skip: "fixed words"},
	"Contact.Rows":   {what: "contact pattern", class: Safety},
	"Contact.Under":  {what: "contact pattern", class: Safety},
	"Contact.Source": {what: "source", class: Safety},

	"Indicator.Radius": {what: "place of the dial", class: Safety},
	"Indicator.Locked": {what: "locked gear", class: Safety},
	"Indicator.Reach":  {skip: "it follows from the radius"},
	"Indicator.Square": {what: "stem normal to the flank", class: Safety},
	"Indicator.Pinion": {what: "pinion is turned", class: Safety},
	"Indicator.Lines":  {what: "condition", class: Safety},

	"Records.Title":    {skip: "fixed words"},
	"Records.Step":     {skip: "fixed words"},
	"Records.What":     {skip: "fixed words"},
	"Records.Readings": {skip: "fixed words"},
	"Records.Tail":     {what: "record", class: Method, whole: true},
	"Records.Rows":     {what: "record", class: Method},
	"Ticks.Title":      {skip: "fixed words"},
	"Ticks.Numbers":    {skip: counted},
	"End.Text":         {skip: "fixed words"},
}

// names are what the elements of a step are called.
var names = map[string]string{
	"Text": "text", "List": "list", "Table": "table", "Listing": "list", "Facts": "facts", "Hazards": "hazards",
	"Callout": "caution", "Tools": "tools", "Setting": "torque", "Order": "tightening order", "Reading": "reading",
	"Pack": "shim pack", "Cord": "cord", "Hold": "hold point", "Picture": "picture", "Contact": "contact pattern",
	"Indicator": "indicator", "Records": "record", "Ticks": "ticks", "End": "end", "Stage": "stage", "Step": "step",
}
