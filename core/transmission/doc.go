// Package transmission computes the transmission loss of a build-up of one to
// four leaves with any boards, gaps, frames and fixings.
package transmission
