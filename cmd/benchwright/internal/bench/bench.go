// Package bench holds the computations of the trade as pure functions, one
// file a computation: exact rationals in, exact rationals out, or a precision
// that is stated. Each names its symbols, units and source, and is tested
// against published values.
package bench
