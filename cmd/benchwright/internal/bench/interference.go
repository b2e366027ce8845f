package bench

import (
	"math/big"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Interference returns the least and the most interference of a fit, in µm:
// how much larger the shaft is than the hole. Below zero it is clearance. Rows of
// the tables that no formula checks are errors.
func Interference(hole, shaft quantity.Tolerance) (least, most *big.Rat, err error) {
	if !hole.Hole() || shaft.Hole() || hole.Size == nil || shaft.Size == nil || hole.Size.Cmp(shaft.Size) != 0 {
		return nil, nil, quantity.ErrToleranceForm
	}
	if !hole.Checked() || !shaft.Checked() {
		return nil, nil, quantity.ErrToleranceRow
	}
	holeLow, holeHigh, err := hole.Deviations()
	if err != nil {
		return nil, nil, err
	}
	shaftLow, shaftHigh, err := shaft.Deviations()
	if err != nil {
		return nil, nil, err
	}
	return shaftLow.Sub(shaftLow, holeHigh), shaftHigh.Sub(shaftHigh, holeLow), nil
}
