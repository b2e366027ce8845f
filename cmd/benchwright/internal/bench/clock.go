package bench

import "math/big"

// A ClockRow is a start and the latest end, in whole minutes past the hour or
// past midnight.
type ClockRow struct{ Start, End int }

// A Clock is a table of latest ends: who starts between two rows takes the
// earlier one. Where Hours is false the rows go once around the minute hand, else
// once around the day.
type Clock struct {
	Hours bool
	Rows  []ClockRow
}

// LatestEnds returns the table for a time in minutes: by 2 min under a quarter
// of an hour, by 5 min under an hour, by 30 min under 4 h and by 60 min up to
// 12 h. It is nil for less than 5 min, which is counted, and for more than 12 h,
// which comes round the clock again. An end is never later than the time
// allows: what is left of a minute is cut off. The steps are ours.
func LatestEnds(within *big.Rat) *Clock {
	at := func(minutes int64) bool { return within.Cmp(big.NewRat(minutes, 1)) < 0 }
	var c Clock
	round, step := 60, 5
	switch {
	case at(5):
		return nil
	case at(15):
		step = 2
	case at(60):
	case at(4 * 60):
		c.Hours, round, step = true, 24*60, 30
	case within.Cmp(big.NewRat(12*60, 1)) <= 0:
		c.Hours, round, step = true, 24*60, 60
	default:
		return nil
	}
	whole := int(new(big.Int).Quo(within.Num(), within.Denom()).Int64())
	for start := 0; start < round; start += step {
		c.Rows = append(c.Rows, ClockRow{start, (start + whole) % round})
	}
	return &c
}

// WholeDays returns how many days a time in minutes is; ok is false where it is
// no whole number of them. After whole days the clock shows the same again.
func WholeDays(within *big.Rat) (days int64, ok bool) {
	d := new(big.Rat).Quo(within, big.NewRat(24*60, 1))
	return d.Num().Int64(), d.IsInt() && d.Sign() > 0 && d.Num().IsInt64()
}
