package deck

import (
	"fmt"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/card"
	"benchwright/render"
)

// The words of a time limit.
const (
	wordWithin     = "Done within"
	wordCount      = "Bench clock, at most"
	wordFromWhen   = "From when"
	wordMissed     = "If it is missed"
	wordStartedAt  = "Started at"
	wordClockStart = "Start"
	wordDoneBy     = "Done by"
	wordSameTime   = "Done by the same time of day"
)

func wordLater(days int64) string {
	if days == 1 {
		return wordSameTime + ", the next day."
	}
	return fmt.Sprintf("%s, %d days later.", wordSameTime, days)
}

func wordLatestEnd(within string) string { return "Latest end, " + within + " from the start" }
func wordClockExample(start, row, end string) string {
	return "Between two rows take the earlier start. Started at " + start + ": row " + row + ", done by " + end + "."
}

// timed builds the content for work that must be finished within a time: the
// time, a box for the start, and the latest end for each start, so that
// nothing is added up at the bench.
func (b *builder) timed(t *card.Timed) []render.Element {
	s := render.Setting{Label: wordWithin, Value: t.Within.Text, Unit: t.Within.Unit.Symbol}
	s.Lines = append(s.Lines, labeled(wordFromWhen, t.From)...)
	switch {
	case t.Days > 0:
		s.Lines = append(s.Lines, strong(wordLater(t.Days)))
	case t.Short:
		s.Label = wordCount
	}
	s.Lines = append(s.Lines, labeled(wordMissed, t.IfMissed)...)
	if !t.Short {
		s.Boxes = []string{wordStartedAt}
	}
	out := []render.Element{b.technical(t.At, s)}
	if t.Ends != nil {
		out = append(out, b.table(t.At, wordLatestEnd(b.value(*t.Within)), ends(t.Ends)))
	}
	return out
}

// ends prints the latest ends in three pairs of columns, read downward.
func ends(c *bench.Clock) render.Table {
	const pairs = 3
	var t render.Table
	for range pairs {
		t.Head = append(t.Head, plain(wordClockStart), plain(wordDoneBy))
		t.Align = append(t.Align, render.Right, render.Right)
	}
	down := (len(c.Rows) + pairs - 1) / pairs
	for y := range down {
		var cells [][]render.Run
		for x := range pairs {
			if i := x*down + y; i < len(c.Rows) {
				cells = append(cells, plain(clockTime(c, c.Rows[i].Start)), strong(clockTime(c, c.Rows[i].End)))
			} else {
				cells = append(cells, nil, nil)
			}
		}
		t.Rows = append(t.Rows, cells)
	}
	r := c.Rows[1]
	t.Under = plain(wordClockExample(clockTime(c, r.Start+1), clockTime(c, r.Start), clockTime(c, r.End)))
	return t
}

// clockTime prints minutes as read on a clock: ":05" by the minute hand,
// "8:30" by the day.
func clockTime(c *bench.Clock, minutes int) string {
	if !c.Hours {
		return fmt.Sprintf(":%02d", minutes)
	}
	return fmt.Sprintf("%d:%02d", minutes/60, minutes%60)
}

// timedRows returns its row of the record.
func (b *builder) timedRows(t *card.Timed) []recordRow {
	if t.Short {
		return nil
	}
	return []recordRow{{at: t.At, what: wordStartedAt, limits: lower(wordWithin) + " " + b.value(*t.Within), kind: rowKind{left: true, initials: true}}}
}
