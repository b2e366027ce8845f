package bench

import "math/big"

// TrueMovement returns the movement that a lever indicator measures while it
// shows reading, its lever tilted by an angle to the surface:
//
//	true = reading·cos θ
//
// The result is in the unit of the reading and as exact as Cos; the angle is in
// degrees, from 0 to under 90, where ok is false outside. A tilted lever shows
// too much, never too little. Source: geometry, and the published factors 10°
// 0.98, 20° 0.94, 30° 0.87 (common practice).
func TrueMovement(reading, angle *big.Rat) (movement *big.Rat, ok bool) {
	if !tiltable(angle) {
		return nil, false
	}
	return new(big.Rat).Mul(reading, Cos(angle)), true
}

// TiltedReading returns what a tilted lever indicator shows of a movement, the
// inverse of TrueMovement: movement ÷ cos θ. With it limits are put on the dial.
func TiltedReading(movement, angle *big.Rat) (reading *big.Rat, ok bool) {
	if !tiltable(angle) {
		return nil, false
	}
	return new(big.Rat).Quo(movement, Cos(angle)), true
}

func tiltable(angle *big.Rat) bool {
	return angle.Sign() >= 0 && angle.Cmp(big.NewRat(90, 1)) < 0 && Cos(angle).Sign() > 0
}
