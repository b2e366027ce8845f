package diag

import "strings"

// Nearest returns the name that word is most likely a typing error of, "" if
// none is near: at most one edit for every three runes. A swap of two
// neighbors counts as one edit. Ties go to the first name.
func Nearest(word string, names []string) string {
	best, least := "", len([]rune(word))/3+1
	for _, n := range names {
		if d := Distance(strings.ToLower(word), strings.ToLower(n), least); d < least {
			best, least = n, d
		}
	}
	return best
}

// Distance returns the number of insertions, deletions, changes and swaps of
// neighbors that turn a into b, or any number ≥ limit if it is at least limit.
func Distance(a, b string, limit int) int {
	x, y := []rune(a), []rune(b)
	if d := len(x) - len(y); d >= limit || -d >= limit {
		return limit
	}
	var before, last []int
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(x); i++ {
		before, last, row = last, row, make([]int, len(y)+1)
		row[0] = i
		for j := 1; j <= len(y); j++ {
			change := 1
			if x[i-1] == y[j-1] {
				change = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return row[len(y)]
}
