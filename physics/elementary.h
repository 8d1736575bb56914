#pragma once
// exp, log and friends that give the same bits on every processor: libm's differ with and without FMA.
// Built with -ffp-contract=off; only +, -, *, / and sqrt (all IEEE 754 exact-rounded) are used inside.

namespace halfdrop::elementary {

/// e^x. Relative error below 4e-16 for |x| <= 700; 0 below -745, infinity above 709.78.
double exp(double x);
/// Natural logarithm of x > 0. Error below 4e-16 relative or absolute, whichever is larger. log(0) =
/// -infinity.
double log(double x);
/// 10^x, relative error below 4e-16 for |x| <= 300, and log10 x, error below 8e-16 relative to the result.
double exp10(double x);
double log10(double x);
/// x^(1/3) for x >= 0, relative error below 1e-15.
double cube_root(double x);
/// arccos on [0, 1], radians, absolute error below 3e-8 (Abramowitz and Stegun 4.4.46).
double acos(double x);

}  // namespace halfdrop::elementary
